using System.CommandLine;
using RecipeLint.Recipes.Importing;
using RecipeLint.Shell;

namespace RecipeLint.Commands;

/// <summary>What was asked of an import.</summary>
internal sealed record ImportAsked(
    string File, string Into, IReadOnlyDictionary<string, ColumnMeaning> Columns, IReadOnlyList<string> Sheets,
    IReadOnlyDictionary<string, string> MakesOfParts)
{
    public string? MappingFile { get; init; }

    public string? RememberIn { get; init; }

    public int? HeadingRow { get; init; }

    public char? Separator { get; init; }

    public bool? DecimalComma { get; init; }

    public string? Makes { get; init; }

    public string? Dose { get; init; }

    public string? Name { get; init; }

    public bool FillsDown { get; init; }

    public bool Asks { get; init; }

    public bool IsDryRun { get; init; }
}

/// <summary>The options of 'import'.</summary>
internal sealed class ImportOptions
{
    private readonly Argument<string> _file = new("file") { Description = "The table: a text file (.csv) or a workbook (.xlsx)." };

    private readonly Option<string> _into = new("--into")
    {
        Description = "Folder to write the files into; made if it is not there. Nothing is overwritten.",
        DefaultValueFactory = _ => ".",
        HelpName = "folder",
    };

    private readonly Option<string[]> _map = new("--map")
    {
        Description = "What a column holds, such as \"Salt=substance\" or \"Weight=amount in g\": part, step, substance, amount, unit, "
            + "assay, strength, with, id, makes, dose; of a water sample, analyte, value, basis or an ion; note, ignore.",
        HelpName = "column=meaning",
    };

    private readonly Option<string?> _mapping = new("--mapping")
    {
        Description = "A file with what was said of such a table before.",
        HelpName = "file",
    };

    private readonly Option<string?> _remember = new("--remember")
    {
        Description = "Keep what was said of this table in a file, for '--mapping'.",
        HelpName = "file",
    };

    private readonly Option<string[]> _sheet = new("--sheet")
    {
        Description = "The sheet to read where a workbook has several; once for each. Several sheets are several parts.",
        HelpName = "name",
    };

    private readonly Option<int?> _headingRow = new("--heading-row")
    {
        Description = "The row that holds the headings; left out, the first with two cells.",
        HelpName = "number",
    };

    private readonly Option<string?> _separator = new("--separator")
    {
        Description = "What parts the cells of a text file, where it cannot be told: one character, or 'tab'.",
        HelpName = "character",
    };

    private readonly Option<string?> _decimal = new("--decimal")
    {
        Description = "The decimal sign of the table. Left out, numbers are written as they stand and unclear ones become findings.",
        HelpName = "comma|point",
    };

    private readonly Option<string[]> _makes = new("--makes")
    {
        Description = "What each part makes, such as \"2 L\", or one of them: \"Part A=2 L\".",
        HelpName = "volume",
    };

    private readonly Option<string?> _dose = new("--dose") { Description = "The dose of every part, such as 1:100.", HelpName = "dose" };

    private readonly Option<string?> _name = new("--name")
    {
        Description = "What the stock or water is called where no column tells; left out, as the file.",
        HelpName = "name",
    };

    private readonly Option<bool> _fillDown = new("--fill-down") { Description = "A part named once counts for the rows below it." };

    private readonly Option<bool> _ask = new("--ask")
    {
        Description = "Ask what is unclear even where no terminal is; answers come from standard input.",
    };

    private readonly Option<bool> _dryRun = new("--dry-run") { Description = "Show the files instead of writing them." };

    public ImportOptions()
    {
        _decimal.AcceptOnlyFromAmong("comma", "point");
    }

    public void AddTo(Command command)
    {
        command.Add(_file);
        foreach (var option in (Option[])
                 [
                     _into, _map, _mapping, _remember, _sheet, _headingRow, _separator, _decimal, _makes, _dose, _name, _fillDown, _ask,
                     _dryRun,
                 ])
        {
            command.Add(option);
        }
    }

    /// <exception cref="UsageException">An option cannot be used.</exception>
    public ImportAsked Read(ParseResult parsed)
    {
        var (makes, ofParts) = ReadMakes(parsed.GetValue(_makes) ?? []);
        return new ImportAsked(
            parsed.GetValue(_file)!,
            parsed.GetValue(_into)!,
            ReadColumns(parsed.GetValue(_map) ?? []),
            parsed.GetValue(_sheet) ?? [],
            ofParts)
        {
            MappingFile = parsed.GetValue(_mapping),
            RememberIn = parsed.GetValue(_remember),
            HeadingRow = parsed.GetValue(_headingRow),
            Separator = parsed.GetValue(_separator) switch
            {
                null => null,
                "tab" or "\\t" => '\t',
                [var one] when one is not '"' and not '\n' and not '\r' && !char.IsAsciiLetterOrDigit(one) => one,
                var other => throw new UsageException($"'--separator {other}' is no single sign; write ; or , or | or tab."),
            },
            DecimalComma = parsed.GetValue(_decimal) is { } sign ? sign == "comma" : null,
            Makes = makes,
            Dose = parsed.GetValue(_dose),
            Name = parsed.GetValue(_name),
            FillsDown = parsed.GetValue(_fillDown),
            Asks = parsed.GetValue(_ask),
            IsDryRun = parsed.GetValue(_dryRun),
        };
    }

    /// <summary>Headings may hold an equals sign, meanings do not: the last one parts them.</summary>
    private static Dictionary<string, ColumnMeaning> ReadColumns(string[] said)
    {
        var columns = new Dictionary<string, ColumnMeaning>(StringComparer.Ordinal);
        foreach (var text in said)
        {
            var at = text.LastIndexOf('=');
            var meaning = at > 0 ? ColumnMeaning.Read(text[(at + 1)..]) : null;
            columns[at > 0 ? text[..at].Trim() : ""] = meaning ?? throw new UsageException(
                $"'--map {text}' cannot be used; write \"COLUMN=MEANING\" with one of "
                    + $"{string.Join(", ", ColumnWords.All)}, or an ion such as Ca.");
        }

        return columns;
    }

    private static (string? All, Dictionary<string, string> OfParts) ReadMakes(string[] said)
    {
        string? all = null;
        var ofParts = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var text in said)
        {
            var at = text.LastIndexOf('=');
            if (at > 0)
            {
                ofParts[text[..at].Trim()] = text[(at + 1)..].Trim();
            }
            else
            {
                all = text.Trim();
            }
        }

        return (all, ofParts);
    }
}
