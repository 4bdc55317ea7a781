using System.IO.Compression;
using System.Security;
using System.Text;

namespace RecipeLint.Tests.Importing;

/// <summary>Packs workbooks as spreadsheets do, or as somebody would who means harm.</summary>
internal sealed class WorkbookMaker
{
    private const string Main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
    private const string Relations = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

    private readonly List<(string Name, string State, string Xml)> _sheets = [];
    private readonly List<string> _shared = [];

    /// <summary>Formats of cell styles: number of the style is the place in this list.</summary>
    public string Styles { get; set; } = "<cellXfs><xf numFmtId=\"0\"/><xf numFmtId=\"14\"/><xf numFmtId=\"10\"/></cellXfs>";

    /// <summary>A sheet of cells: a text, a number, or XML of a cell that begins with "&lt;c".</summary>
    public WorkbookMaker Sheet(string name, string[][] rows, string state = "visible", string after = "", string hiddenRow = "")
    {
        var xml = new StringBuilder($"<worksheet xmlns=\"{Main}\"><sheetData>");
        for (var r = 0; r < rows.Length; r++)
        {
            xml.Append($"<row r=\"{r + 1}\"{(hiddenRow == $"{r + 1}" ? " hidden=\"1\"" : "")}>");
            for (var c = 0; c < rows[r].Length; c++)
            {
                var at = $"{(char)('A' + c)}{r + 1}";
                var cell = rows[r][c];
                xml.Append(
                    cell.Length == 0 ? ""
                    : cell.StartsWith("<c", StringComparison.Ordinal) ? cell.Replace("<c", $"<c r=\"{at}\"", StringComparison.Ordinal)
                    : double.TryParse(cell, System.Globalization.CultureInfo.InvariantCulture, out _) ? $"<c r=\"{at}\"><v>{cell}</v></c>"
                    : $"<c r=\"{at}\" t=\"s\"><v>{Shared(cell)}</v></c>");
            }

            xml.Append("</row>");
        }

        return Raw(name, xml.Append("</sheetData>").Append(after).Append("</worksheet>").ToString(), state);
    }

    public WorkbookMaker Raw(string name, string xml, string state = "visible")
    {
        _sheets.Add((name, state, xml));
        return this;
    }

    /// <summary>The parts of a small workbook as XML, with something of everything that is read.</summary>
    public static IReadOnlyDictionary<string, string> Exemplar { get; } = new WorkbookMaker
    {
        Styles = "<numFmts><numFmt numFmtId=\"164\" formatCode=\"0.0\"/></numFmts><cellXfs><xf numFmtId=\"0\"/><xf numFmtId=\"164\"/></cellXfs>",
    }.Sheet(
        "A",
        [["substance", "amount", "note"], ["KNO3", "<c t=\"inlineStr\"><is><r><t>1 g</t></r><rPh sb=\"0\" eb=\"1\"><t>x</t></rPh></is></c>", "<c s=\"1\"><f>B2*2</f><v>2</v></c>"]],
        after: "<mergeCells><mergeCell ref=\"C2:C3\"/></mergeCells>",
        hiddenRow: "2").Parts().ToDictionary();

    public byte[] Pack() => Packed(Parts());

    /// <summary>The small workbook with one part replaced.</summary>
    public static byte[] PackWith(string part, string xml) => Packed(Exemplar.Select(p => p.Key == part ? KeyValuePair.Create(part, xml) : p));

    private IEnumerable<KeyValuePair<string, string>> Parts()
    {
        var list = string.Concat(_sheets.Select((s, i) =>
            $"<sheet name=\"{SecurityElement.Escape(s.Name)}\" sheetId=\"{i + 1}\" state=\"{s.State}\" r:id=\"rId{i + 1}\"/>"));
        yield return new("xl/workbook.xml", $"<workbook xmlns=\"{Main}\" xmlns:r=\"{Relations}\"><sheets>{list}</sheets></workbook>");
        var targets = string.Concat(_sheets.Select((_, i) => $"<Relationship Id=\"rId{i + 1}\" Type=\"sheet\" Target=\"worksheets/sheet{i + 1}.xml\"/>"));
        yield return new("xl/_rels/workbook.xml.rels", $"<Relationships>{targets}</Relationships>");
        yield return new("xl/styles.xml", $"<styleSheet xmlns=\"{Main}\">{Styles}</styleSheet>");
        yield return new("xl/sharedStrings.xml", $"<sst xmlns=\"{Main}\">{string.Concat(_shared.Select(t => $"<si><t xml:space=\"preserve\">{SecurityElement.Escape(t)}</t></si>"))}</sst>");
        for (var i = 0; i < _sheets.Count; i++)
        {
            yield return new($"xl/worksheets/sheet{i + 1}.xml", _sheets[i].Xml);
        }
    }

    private static byte[] Packed(IEnumerable<KeyValuePair<string, string>> parts)
    {
        using var memory = new MemoryStream();
        using (var zip = new ZipArchive(memory, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var (name, text) in parts)
            {
                using var writer = new StreamWriter(zip.CreateEntry(name).Open(), new UTF8Encoding(false));
                writer.Write("<?xml version=\"1.0\" encoding=\"UTF-8\"?>");
                writer.Write(text);
            }
        }

        return memory.ToArray();
    }

    private int Shared(string text)
    {
        _shared.Add(text);
        return _shared.Count - 1;
    }
}
