using System.CommandLine;
using System.Globalization;
using RecipeLint.Recipes.Importing;
using RecipeLint.Recipes.Importing.Tables;
using RecipeLint.Reports;
using RecipeLint.Shell;

namespace RecipeLint.Commands;

/// <summary>Makes stock or water files of a table kept as text or in a workbook. Never overwrites, never guesses.</summary>
internal static class ImportCommand
{
    public static Command Build(Surroundings world)
    {
        var options = new ImportOptions();
        var command = new Command(
            "import", "Make stock or water files of a table (.csv or .xlsx); what cannot be understood is kept and becomes a finding.");
        options.AddTo(command);
        command.SetAction(parsed => Run(world, options.Read(parsed)));
        return command;
    }

    private static int Run(Surroundings world, ImportAsked asked)
    {
        var mapping = asked.MappingFile is { } file ? ReadMapping(world, file) : Mapping.Empty;
        var columns = new Dictionary<string, ColumnMeaning>(mapping.Columns, StringComparer.Ordinal);
        foreach (var (heading, meaning) in asked.Columns)
        {
            columns[heading] = meaning;
        }

        if (asked.RememberIn is { } kept)
        {
            var full = Path.GetFullPath(kept, world.CurrentDirectory);
            NewFiles.Refuse(Path.GetDirectoryName(full)!, "", [Path.GetFileName(full)]);
        }

        var tables = Chosen(Read(world, asked.File, asked.Separator ?? mapping.Separator), asked);
        var read = tables
            .Select(t => (Table: t, Columns: ColumnMap.Of(t, columns, asked.HeadingRow) ?? throw NoHeadings(t, asked)))
            .ToList();
        var wishes = new ImportWishes
        {
            Source = Path.GetFileName(asked.File),
            Name = asked.Name ?? Path.GetFileNameWithoutExtension(asked.File),
            DecimalComma = asked.DecimalComma ?? mapping.DecimalComma,
            Makes = asked.Makes,
            MakesOfParts = asked.MakesOfParts,
            Dose = asked.Dose,
            HeadingRow = asked.HeadingRow,
            FillsDown = asked.FillsDown,
        };
        if (asked.Asks || world.InIsTerminal)
        {
            using var answers = new StreamReader(world.StandardInput());
            (read, wishes) = new ImportQuestions(answers, world.Out).Ask(read, wishes);
        }

        foreach (var (table, map) in read)
        {
            Refuse(table, map);
        }

        var result = read.TrueForAll(r => r.Columns.IsStock) ? StockImport.Of(read, wishes) : WaterImport.Of(read, wishes);
        if (result.Fault is { } fault)
        {
            throw new UsageException($"'{asked.File}': {fault}");
        }

        Write(world, asked, result, Remembered(read, wishes, tables[0].Separator));
        return ExitCodes.Clean;
    }

    private static Mapping Remembered(List<(Table Table, ColumnMap Columns)> read, ImportWishes wishes, char? separator)
    {
        var columns = new Dictionary<string, ColumnMeaning>(StringComparer.Ordinal);
        foreach (var column in read.SelectMany(r => r.Columns.Columns).Where(c => c.Meaning is not null))
        {
            columns[column.Heading] = column.Meaning!;
        }

        return new Mapping(columns, wishes.DecimalComma, separator);
    }

    private static void Write(Surroundings world, ImportAsked asked, ImportResult result, Mapping mapping)
    {
        if (asked.IsDryRun)
        {
            foreach (var file in result.Files)
            {
                world.Tell($"--- {file.Name}");
                foreach (var line in file.Text.TrimEnd('\n').Split('\n'))
                {
                    world.Out.WriteLine(Printable.Show(line));
                }
            }
        }
        else
        {
            var target = Path.GetFullPath(asked.Into, world.CurrentDirectory);
            var remembered = asked.RememberIn is { } file
                ? new WholeFile(Path.GetFullPath(file, world.CurrentDirectory), mapping.Write()) { IsNew = true }
                : null;
            NewFiles.Write(
                world, target, asked.Into == "." ? "" : asked.Into, [.. result.Files.Select(f => (f.Name, f.Text))], remembered);
            if (asked.RememberIn is { } kept)
            {
                world.Out.WriteLine($"wrote {Printable.Show(kept)}; next time: --mapping {Printable.Show(kept)}");
            }
        }

        var left = result.NotUnderstood == 0 ? "" : string.Create(
            CultureInfo.InvariantCulture,
            $"; {result.NotUnderstood} not understood, {(result.NotUnderstood == 1 ? "a finding" : "findings")} now");
        world.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{result.Understood} entries understood{left}."));
        if (!asked.IsDryRun)
        {
            world.Out.WriteLine($"Next: recipelint check {Printable.Show(asked.Into)}");
        }

        world.Out.Flush();
    }

    /// <exception cref="UsageException">The file cannot be read as a table.</exception>
    private static IReadOnlyList<Table> Read(Surroundings world, string file, char? separator)
    {
        var bytes = Bytes(world, file);
        if (Workbook.IsOlderForm(bytes))
        {
            throw new UsageException(
                $"'{file}' is a workbook of the older form, or locked with a password. "
                    + "Save it again as .xlsx without a password, or as .csv.");
        }

        var reading = Workbook.IsPacked(bytes) ? Workbook.Read(bytes) : TextTable.Read(bytes, separator);
        return reading.Fault is { } fault ? throw new UsageException($"'{file}' {fault}") : reading.Tables;
    }

    private static byte[] Bytes(Surroundings world, string file) => NamedFile.Read(world, file, "", TableBounds.FileSize);

    private static Mapping ReadMapping(Surroundings world, string file)
    {
        var (mapping, fault) = Mapping.Read(Bytes(world, file));
        return mapping ?? throw new UsageException($"'{file}' {fault}");
    }

    /// <summary>The sheets that are asked for; of a workbook that shows several, the user names them.</summary>
    private static List<Table> Chosen(IReadOnlyList<Table> tables, ImportAsked asked)
    {
        if (asked.Sheets.Count > 0)
        {
            return
            [
                .. asked.Sheets.Select(s => tables.FirstOrDefault(t => t.Name == s)
                    ?? throw new UsageException($"'{asked.File}' has no sheet '{s}'; it has {Names(tables)}.")),
            ];
        }

        var shown = tables.Where(t => !t.IsHidden && t.Rows.Count > 0).ToList();
        return shown switch
        {
            [var one] => [one],
            [] when tables.Any(t => t.IsHidden) => throw new UsageException(
                $"'{asked.File}' shows nothing: all its sheets are hidden ({Names(tables)}); name one with '--sheet'."),
            [] => throw new UsageException($"'{asked.File}' shows nothing: it is empty."),
            _ => throw new UsageException(
                $"'{asked.File}' has several sheets ({Names(shown)}); name those to read with '--sheet', once for each."),
        };
    }

    private static string Names(IReadOnlyList<Table> tables) =>
        string.Join(", ", tables.Take(8).Select(t => $"'{t.Name}'")) + (tables.Count > 8 ? " ..." : "");

    private static UsageException NoHeadings(Table table, ImportAsked asked) => new(
        asked.HeadingRow is { } row
            ? $"'{asked.File}' has nothing in row {row.ToString(CultureInfo.InvariantCulture)}."
            : $"'{asked.File}'{(table.Name.Length > 0 ? $", sheet '{table.Name}'," : "")} has no row with two cells, so no headings.");

    /// <exception cref="UsageException">Something has to be said first.</exception>
    private static void Refuse(Table table, ColumnMap map)
    {
        if (map.IsStock && map.IsWater)
        {
            throw new UsageException(
                "the table seems to hold both substances and values of an analysis; say with '--map \"COLUMN=ignore\"' what to leave out.");
        }

        if (map.Missing.Count > 0)
        {
            var open = map.Columns.Where(c => c.Meaning is null).Take(8).ToList();
            var sheet = table.Name.Length > 0 ? $" in sheet '{table.Name}'" : "";
            throw new UsageException(
                $"no column is known to hold the {string.Join(" or the ", map.Missing)}{sheet}. "
                + (open.Count == 0 ? "" : $"Say what each column holds, such as {Proposed(open, map)}. ")
                + $"Columns: {string.Join(", ", map.Columns.Take(12).Select(c => $"'{c.Heading}'"))}.");
        }
    }

    /// <summary>What the headings most likely mean, ready to be copied: one word for each column that has a usual one.</summary>
    private static string Proposed(List<Column> open, ColumnMap map)
    {
        var usual = open.Select(c => (c.Heading, Word: ColumnWords.Usual(c.Heading)))
            .Where(c => c.Word is not null && !map.Has(c.Word))
            .DistinctBy(c => c.Word)
            .Select(c => $"--map \"{c.Heading}={c.Word}{(c.Word == ColumnWords.Amount ? InUnit(c.Heading) : "")}\"")
            .ToList();
        return usual.Count > 0 ? string.Join(' ', usual) : $"--map \"{open[0].Heading}={map.Missing[0]}\"";
    }

    /// <summary>" in g" for a heading such as "Weight (g)".</summary>
    private static string InUnit(string heading)
    {
        var open = heading.LastIndexOfAny(['(', '[']);
        var unit = open < 0 ? "" : heading[(open + 1)..].Trim(')', ']', ' ');
        return unit is "g" or "kg" or "mg" or "mL" or "ml" or "L" or "l" ? " in " + unit : "";
    }
}
