using System.Text;
using System.Text.RegularExpressions;
using RecipeLint.Tests.Importing;

namespace RecipeLint.Tests.Reliability.Bounds;

/// <summary>Tables for 'import' at their bounds: rows, columns and cells of a text, and every element and attribute of the parts of a workbook.</summary>
internal static partial class TableInputs
{
    private const int LargestText = 18_000_000;

    public static IEnumerable<BoundedInput> Texts()
    {
        const string Head = "substance;amount;part\n";
        yield return Text("rows", "alike", BoundKind.List, Head + Repeat("KNO3;1 g;A\n", BoundedInput.Entries));
        yield return Text("rows", "each of its own part", BoundKind.List, Head + string.Concat(Numbered().Select(i => $"KNO3;1 g;P{i}\n")));
        yield return Text("rows", "each of its own substance", BoundKind.List, Head + string.Concat(Numbered().Select(i => $"salt {i};{i} g;A\n")));
        yield return Text("rows", "without a place", BoundKind.List, Head + Repeat(";;;;;;;x\n", BoundedInput.Entries));
        yield return Text("rows", "up to the size", BoundKind.List, Head + Repeat("KNO3;1 g;A\n", LargestText / 11));
        yield return Text("columns", "alike", BoundKind.List, Repeat("substance;", BoundedInput.Entries) + "amount\n" + Repeat("1;", BoundedInput.Entries) + "2\n");
        yield return Text("columns", "200, each of its own, 500 rows", BoundKind.List, string.Join(';', Numbered().Take(198).Select(i => $"c{i}")) + ";substance;amount\n" + Repeat(Repeat("x;", 198) + "KNO3;1 g\n", 500));
        yield return Text("lines", "blank", BoundKind.List, Head + new string('\n', LargestText / 10) + "KNO3;1 g;A\n");
        yield return Text("quotes", "many", BoundKind.List, Head + Repeat("\"\";", 100) + Repeat("\"\"\"\";", BoundedInput.Entries) + "\n");
        foreach (var (name, text) in BoundedInput.Texts)
        {
            yield return Text("cell", name, BoundKind.Text, $"{Head}{text};1 g;A\n");
            yield return Text("amount", name, BoundKind.Text, $"{Head}KNO3;{text};A\n");
            yield return Text("amount", name + ", 1,900", BoundKind.Text, $"{Head}KNO3;{text[..1900]};A\n");
            yield return Text("heading", name, BoundKind.Text, $"substance;amount;{text}\nKNO3;1 g;A\n");
            yield return Text("part", name + ", 1,900", BoundKind.Text, $"{Head}KNO3;1 g;{text[..1900]}\n");
        }

        foreach (var number in BoundedInput.Numbers)
        {
            yield return Text("amount", number, BoundKind.Number, $"substance;amount (g)\nKNO3;{number}\n");
        }
    }

    /// <summary>Each element of each part ten thousand times, each attribute and each text of 100 kB or an extreme number.</summary>
    public static IEnumerable<BoundedInput> Workbooks()
    {
        foreach (var (part, xml) in WorkbookMaker.Exemplar)
        {
            foreach (Match element in Element().Matches(xml))
            {
                var name = element.Groups["name"].Value;
                var whole = Whole(xml, element);
                var count = Math.Clamp(40_000_000 / whole.Length, 1, BoundedInput.Entries);
                yield return Book(part, name, "many", BoundKind.List, xml.Insert(element.Index, Repeat(whole, count)));
                foreach (Match attribute in Attribute().Matches(element.Value))
                {
                    var at = element.Index + attribute.Groups["value"].Index;
                    foreach (var value in BoundedInput.Numbers.Append(new string('x', BoundedInput.TextLength)).Append("A1:XFD1048576"))
                    {
                        yield return Book(
                            part, $"{name}/@{attribute.Groups["key"].Value}", value.Length > 40 ? $"{value.Length} characters" : value, value.Length > 40 ? BoundKind.Text : BoundKind.Number, xml.Remove(at, attribute.Groups["value"].Length).Insert(at, value));
                    }
                }
            }
        }

        // Merged cells over all rows, as many as rows that hold something.
        var rows = string.Concat(Numbered().Select(i => $"<row r=\"{i + 1}\"><c r=\"A{i + 1}\" t=\"inlineStr\"><is><t>{(i == 0 ? "substance" : "KNO3")}</t></is></c><c r=\"B{i + 1}\"><v>{i}</v></c></row>"));
        var merges = string.Concat(Numbered().Select(i => $"<mergeCell ref=\"A{i + 1}:A1048576\"/>"));
        yield return Book("xl/worksheets/sheet1.xml", "mergeCell", "over all rows", BoundKind.List, $"<worksheet><sheetData>{rows}</sheetData><mergeCells>{merges}</mergeCells></worksheet>");
    }

    private static IEnumerable<int> Numbered() => Enumerable.Range(0, BoundedInput.Entries);

    private static BoundedInput Text(string place, string variant, BoundKind kind, string text) =>
        new("table", place, variant, kind, new Dictionary<string, byte[]> { ["t.csv"] = Encoding.UTF8.GetBytes(text) }, "import", "t.csv", "--separator", ";", "--dry-run");

    private static BoundedInput Book(string part, string place, string variant, BoundKind kind, string xml) =>
        new("workbook", $"{part[(part.LastIndexOf('/') + 1)..]} {place}", variant, kind, new Dictionary<string, byte[]> { ["t.xlsx"] = WorkbookMaker.PackWith(part, xml) }, "import", "t.xlsx", "--dry-run");

    /// <summary>The element with what stands in it.</summary>
    private static string Whole(string xml, Match start)
    {
        if (start.Value.EndsWith("/>", StringComparison.Ordinal))
        {
            return start.Value;
        }

        var end = $"</{start.Groups["name"].Value}>";
        return xml[start.Index..(xml.IndexOf(end, start.Index, StringComparison.Ordinal) + end.Length)];
    }

    private static string Repeat(string text, int count) => new StringBuilder(text.Length * count).Insert(0, text, count).ToString();

    [GeneratedRegex("<(?<name>[a-zA-Z:]+)[^>]*>", RegexOptions.CultureInvariant)]
    private static partial Regex Element();

    [GeneratedRegex("(?<key>[a-zA-Z0-9:]+)=\"(?<value>[^\"]*)\"", RegexOptions.CultureInvariant)]
    private static partial Regex Attribute();
}
