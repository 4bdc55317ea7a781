using System.Globalization;
using System.IO.Compression;
using System.Security;
using System.Text;
using System.Text.Json;
using RecipeLint.Recipes.Importing;
using RecipeLint.Recipes.Importing.Tables;

namespace RecipeLint.Fuzz;

/// <summary>Tables as people keep them, and as somebody damages them: through the readers, and through 'import' into files that are then checked.</summary>
internal static class TableRuns
{
    private const string Main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
    private const string Relations = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

    private static readonly string[] _headings =
    [
        .. ColumnWords.All, .. ColumnWords.WaterKeys, "Amount (g)", "amount (mg)", "value (mg/L)", "Salt", "Weight", "Tank", "Ca", "Mg", "SO4", "HCO3", "Cl (mg/L)", "", "substance", "amount", "substance", "amount", "part", "=1+1", "\u202e",
    ];

    private static readonly System.Buffers.SearchValues<char> _toQuote = System.Buffers.SearchValues.Create(";,\t|\"\n\r");

    private static readonly string[] _parts = ["Part A", "part a", "A", "B", "../B", "CON", "nul.txt", "ü", "a/b", "", ".", "..", "\u0001", "Trace", "TRACE", "trace "];

    /// <summary>The readers of tables alone.</summary>
    public static Execution Tables(Random random)
    {
        var isBook = random.Next(3) == 0;
        var bytes = isBook ? Packed(random) : Csv(random, Rows(random));
        return new Execution(() => isBook ? Convert.ToBase64String(bytes) : Corpus.Text(bytes), () =>
        {
            var reading = isBook ? Recipes.Importing.Tables.Workbook.Read(bytes) : TextTable.Read(bytes, random.Next(2) == 0 ? null : ',');
            if (reading.Fault is { } fault ? fault.Length is 0 or > 500 : reading.Tables.Any(t => t.Rows.Any(r => r.Number < 1 || r.Cells.Any(c => c.Text is null || c.Text.Any(char.IsControl)))))
            {
                throw new BrokenPromiseException("a table with rows from nowhere, control characters, or a fault without words");
            }
        });
    }

    public static Execution Text(Random random) => Import(random, "t.csv", Csv(random, Rows(random)));

    public static Execution Workbook(Random random) => Import(random, "t.xlsx", Packed(random));

    private static Execution Import(Random random, string name, byte[] bytes)
    {
        var files = new Dictionary<string, byte[]>(StringComparer.Ordinal) { [name] = bytes };
        List<string> arguments = ["import", name, "--dry-run"];
        void Some(string option, string value)
        {
            if (random.Next(3) == 0)
            {
                arguments.Add(option + "=" + value);
            }
        }

        Some("--makes", Words.Pick(random, "1 L", "2 L", "Part A=2 L", Words.Quantity(random)));
        Some("--dose", Words.Pick(random, "1:100", Words.Quantity(random)));
        Some("--decimal", Words.Pick(random, "comma", "point"));
        Some("--map", Words.Pick(random, _headings) + "=" + Words.Pick(random, "substance", "amount in g", "value in mg/L", "ignore", "Ca", "part", "note", "x", ""));
        Some("--separator", Words.Pick(random, ";", ",", "tab", "|", "a", "\"", ""));
        Some("--heading-row", Words.Pick(random, "1", "2", "0", "-1", "2147483647"));
        Some("--name", Words.Pick(random, _parts));
        Some("--sheet", Words.Pick(random, "S1", "S2", "x"));
        if (random.Next(4) == 0)
        {
            arguments.Add("--fill-down");
        }

        if (random.Next(6) == 0)
        {
            files["m.json"] = Mapping(random);
            arguments.Add("--mapping=m.json");
        }

        var answers = random.Next(4) == 0 ? Targets.Answers(random) : "";
        if (answers.Length > 0)
        {
            arguments.Add("--ask");
        }

        return new Execution(
            () => ProgramRun.Shown(files, [.. arguments]) + answers + (name == "t.xlsx" ? Convert.ToBase64String(bytes) : ""),
            () => ThenChecked(ProgramRun.Run(files, answers, [.. arguments])));
    }

    /// <summary>The files that came out are JSON of ours, and a check of them answers.</summary>
    private static void ThenChecked((int Code, string Output) answer)
    {
        if (answer.Code != 0)
        {
            return;
        }

        var made = new Dictionary<string, byte[]>(StringComparer.Ordinal);
        foreach (var part in answer.Output.Split("--- ").Skip(1).Where(p => p.Contains(".json\n{", StringComparison.Ordinal)))
        {
            var (head, end) = (part.IndexOf('\n', StringComparison.Ordinal), part.LastIndexOf("\n}", StringComparison.Ordinal));
            if (end > head && part.AsSpan()[..head].EndsWith(".json"))
            {
                made[part[..head]] = Encoding.UTF8.GetBytes(part[(head + 1)..(end + 2)] + "\n");
            }
        }

        foreach (var (path, text) in made)
        {
            using var parsed = JsonDocument.Parse(text);
            if (path.Contains('/', StringComparison.Ordinal) || path.Any(char.IsControl))
            {
                throw new BrokenPromiseException("import: a file of an odd name\n" + path);
            }
        }

        if (made.Count > 0 && ProgramRun.Run(made, "", ["check", "."]).Code is not (0 or 1))
        {
            throw new BrokenPromiseException("import: what it made cannot be checked");
        }
    }

    private static byte[] Mapping(Random random)
    {
        var bytes = new Mapping(new Dictionary<string, ColumnMeaning> { ["Salt"] = new("substance", null), ["Weight"] = new("amount", "g") }, true, ';').Write();
        return ShopMutator.Values(random, bytes, []);
    }

    private static List<string[]> Rows(Random random)
    {
        var width = random.Next(30) == 0 ? random.Next(1, 260) : random.Next(1, 8);
        var water = random.Next(4) == 0;
        var headings = Enumerable.Range(0, width).Select(i => i switch
        {
            0 when random.Next(4) > 0 => water ? "analyte" : "substance",
            1 when random.Next(4) > 0 => water ? "value" : "amount",
            _ => Words.Pick(random, _headings),
        }).ToArray();
        var rows = new List<string[]>();
        if (random.Next(6) == 0)
        {
            rows.Add([Words.Text(random, Words.Signs)]);
        }

        rows.Add(headings);
        for (var left = random.Next(40) == 0 ? random.Next(0, 900) : random.Next(0, 12); left > 0; left--)
        {
            rows.Add([.. headings.Take(random.Next(8) == 0 ? random.Next(0, width) : width).Select(h => Cell(random, h))]);
        }

        return rows;
    }

    private static string Cell(Random random, string heading) => random.Next(9) == 0 ? "" : heading switch
    {
        "substance" or "Salt" => Words.Pick(random, Words.Formulas),
        "part" or "sample" or "Tank" => Words.Pick(random, _parts),
        "amount" or "value" or "Weight" => random.Next(3) == 0 ? Words.Pick(random, Words.Numbers) : Words.Quantity(random),
        "unit" => Words.Pick(random, Words.Units),
        "analyte" => Words.Pick(random, "Ca", "Mg", "HCO3", "pH", "EC", "hardness", "alkalinity", "Na", "x"),
        "step" => Words.Pick(random, Words.Numbers),
        _ => random.Next(2) == 0 ? Words.Quantity(random) : Words.Text(random, Words.Pieces, Words.Signs, Words.Numbers),
    };

    private static byte[] Csv(Random random, List<string[]> rows)
    {
        var separator = Words.Pick(random, ";", ",", ",", "\t", "|");
        var text = new StringBuilder();
        foreach (var row in rows)
        {
            text.AppendJoin(separator, row.Select(c => random.Next(3) == 0 || c.AsSpan().ContainsAny(_toQuote) ? "\"" + c.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"" : c));
            text.Append(Words.Pick(random, "\n", "\n", "\r\n", "\r"));
        }

        var bytes = random.Next(12) switch
        {
            0 => Encoding.Unicode.GetPreamble().Concat(Encoding.Unicode.GetBytes(text.ToString())).ToArray(),
            1 => Encoding.Latin1.GetBytes(text.ToString()),
            2 => [0xEF, 0xBB, 0xBF, .. Encoding.UTF8.GetBytes(text.ToString())],
            _ => Encoding.UTF8.GetBytes(text.ToString()),
        };
        return random.Next(3) == 0 ? ShopMutator.Bytes(random, bytes) : bytes;
    }

    private static byte[] Packed(Random random)
    {
        var sheets = Enumerable.Range(1, random.Next(6) == 0 ? 3 : 1).Select(i => Sheet(random, Rows(random))).ToList();
        using var memory = new MemoryStream();
        using (var zip = new ZipArchive(memory, ZipArchiveMode.Create, leaveOpen: true))
        {
            var list = string.Concat(sheets.Select((_, i) => $"<sheet name=\"S{i + 1}\" sheetId=\"{i + 1}\" state=\"{Words.Pick(random, "visible", "visible", "hidden")}\" r:id=\"rId{i + 1}\"/>"));
            Entry(random, zip, "xl/workbook.xml", $"<workbook xmlns=\"{Main}\" xmlns:r=\"{Relations}\"><workbookPr date1904=\"{random.Next(2)}\"/><sheets>{list}</sheets></workbook>");
            Entry(random, zip, "xl/_rels/workbook.xml.rels", $"<Relationships>{string.Concat(sheets.Select((_, i) => $"<Relationship Id=\"rId{i + 1}\" Type=\"sheet\" Target=\"{Words.Pick(random, "worksheets/", "worksheets/", "/xl/worksheets/", "../worksheets/")}sheet{i + 1}.xml\"/>"))}</Relationships>");
            Entry(random, zip, "xl/styles.xml", $"<styleSheet xmlns=\"{Main}\"><numFmts><numFmt numFmtId=\"164\" formatCode=\"{Words.Pick(random, "yyyy", "0%", "[red]0", "&quot;", "\\")}\"/></numFmts><cellXfs><xf numFmtId=\"0\"/><xf numFmtId=\"14\"/><xf numFmtId=\"10\"/><xf numFmtId=\"164\"/></cellXfs></styleSheet>");
            Entry(random, zip, "xl/sharedStrings.xml", $"<sst xmlns=\"{Main}\">{string.Concat(Words.Formulas.Select(t => $"<si><t>{t}</t></si>"))}</sst>");
            foreach (var (xml, i) in sheets.Select((s, i) => (s, i)))
            {
                Entry(random, zip, $"xl/worksheets/sheet{i + 1}.xml", xml);
            }
        }

        return random.Next(8) == 0 ? ShopMutator.Bytes(random, memory.ToArray()) : memory.ToArray();
    }

    private static string Sheet(Random random, List<string[]> rows)
    {
        var xml = new StringBuilder($"<worksheet xmlns=\"{Main}\"><sheetData>");
        for (var r = 0; r < rows.Count; r++)
        {
            xml.Append(CultureInfo.InvariantCulture, $"<row r=\"{(random.Next(20) == 0 ? Words.Pick(random, Words.Numbers) : $"{r + 1}")}\"{(random.Next(15) == 0 ? " hidden=\"1\"" : "")}>");
            for (var c = 0; c < Math.Min(rows[r].Length, 26); c++)
            {
                var at = random.Next(20) == 0 ? Words.Pick(random, "A1", "ZZZ9", "XFD1048576", "", "7", "$B$2", "A0") : $"{(char)('A' + c)}{r + 1}";
                var (text, style) = (SecurityElement.Escape(new string([.. rows[r][c].Where(x => x >= ' ' && !char.IsSurrogate(x))])), random.Next(5));
                xml.Append(random.Next(6) switch
                {
                    0 => $"<c r=\"{at}\" s=\"{style}\"><v>{text}</v></c>",
                    1 => $"<c r=\"{at}\" t=\"s\"><v>{random.Next(-1, 40)}</v></c>",
                    2 => $"<c r=\"{at}\" t=\"{Words.Pick(random, "b", "e", "str", "d", "x")}\"><f>{text}</f><v>{Words.Pick(random, Words.Numbers)}</v></c>",
                    3 => $"<c r=\"{at}\" t=\"n\" s=\"{style}\"><v>{Words.Pick(random, Words.Numbers)}</v></c>",
                    _ => $"<c r=\"{at}\" t=\"inlineStr\"><is><t>{text}</t><rPh sb=\"0\" eb=\"1\"><t>x</t></rPh></is></c>",
                });
            }

            xml.Append("</row>");
        }

        xml.Append("</sheetData>");
        if (random.Next(3) == 0)
        {
            xml.Append("<mergeCells>").Append(string.Concat(Enumerable.Range(0, random.Next(1, 6)).Select(_ =>
                $"<mergeCell ref=\"{Words.Pick(random, "A1:A1048576", "A2:A5", "B2:B3", "C9:A1", "A1", "A:A", "", "XFD1:XFD9")}\"/>"))).Append("</mergeCells>");
        }

        var whole = xml.Append("</worksheet>").ToString();
        return random.Next(4) == 0 ? Corpus.Text(ShopMutator.Bytes(random, Encoding.UTF8.GetBytes(whole))) : whole;
    }

    private static void Entry(Random random, ZipArchive zip, string name, string text)
    {
        if (random.Next(60) == 0)
        {
            return;
        }

        using var writer = new StreamWriter(zip.CreateEntry(name).Open(), new UTF8Encoding(false));
        writer.Write("<?xml version=\"1.0\" encoding=\"UTF-8\"?>");
        writer.Write(random.Next(60) == 0 ? "<!DOCTYPE a [<!ENTITY b SYSTEM \"file:///etc/passwd\">]>" + text : text);
    }
}
