using System.Globalization;
using System.IO.Compression;
using System.Xml;

namespace RecipeLint.Recipes.Importing.Tables;

/// <summary>
/// Reads the sheets of a workbook (Office Open XML, ECMA-376): values as they were last shown, never a formula, macro or link. Element
/// names are matched without their namespace, so that the strict form reads like the usual one.
/// </summary>
public static class Workbook
{
    private const string RelationNamespace = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
    private const string StrictRelationNamespace = "http://purl.oclc.org/ooxml/officeDocument/relationships";

    /// <summary>True for the first bytes of a packed file.</summary>
    public static bool IsPacked(ReadOnlySpan<byte> bytes) => bytes.StartsWith("PK\u0003\u0004"u8);

    /// <summary>True for the older binary form, and for one that is locked with a password.</summary>
    public static bool IsOlderForm(ReadOnlySpan<byte> bytes) => bytes.StartsWith((ReadOnlySpan<byte>)[0xD0, 0xCF, 0x11, 0xE0]);

    public static TableReading Read(byte[] bytes)
    {
        try
        {
            using var memory = new MemoryStream(bytes, writable: false);
            using var archive = new ZipArchive(memory, ZipArchiveMode.Read);
            return new TableReading(Sheets(new PackedParts(archive)), null);
        }
        catch (UnusableTableException unusable)
        {
            return TableReading.No(unusable.Message);
        }
        catch (Exception broken) when (broken is InvalidDataException or XmlException or EndOfStreamException or NotSupportedException)
        {
            return TableReading.No("is a workbook that cannot be unpacked: it is damaged or not whole.");
        }
    }

    private static List<Table> Sheets(PackedParts parts)
    {
        using var book = parts.Open("xl/workbook.xml") ?? throw new UnusableTableException("is packed, but holds no workbook.");
        var listed = new List<(string Name, bool IsHidden, string Id)>();
        var counts1904 = false;
        while (book.Read())
        {
            if (book.NodeType != XmlNodeType.Element)
            {
                continue;
            }

            if (book.LocalName == "workbookPr")
            {
                counts1904 = book.GetAttribute("date1904") is "1" or "true";
            }
            else if (book.LocalName == "sheet" && listed.Count < TableBounds.Sheets)
            {
                listed.Add((
                    CellText.Of(book.GetAttribute("name") ?? ""),
                    book.GetAttribute("state") is "hidden" or "veryHidden",
                    book.GetAttribute("id", RelationNamespace) ?? book.GetAttribute("id", StrictRelationNamespace) ?? ""));
            }
        }

        var targets = Targets(parts);
        var reader = new SheetReader(SharedTexts(parts), NumberStyles(parts), counts1904);
        var tables = new List<Table>();
        foreach (var (name, isHidden, id) in listed)
        {
            if (targets.GetValueOrDefault(id) is { } target && parts.Open(target) is { } sheet)
            {
                using (sheet)
                {
                    tables.Add(new Table(name, reader.Read(sheet)) { IsHidden = isHidden });
                }
            }
        }

        return tables.Count > 0 ? tables : throw new UnusableTableException("is a workbook without sheets.");
    }

    private static Dictionary<string, string> Targets(PackedParts parts)
    {
        var targets = new Dictionary<string, string>(StringComparer.Ordinal);
        using var relations = parts.Open("xl/_rels/workbook.xml.rels");
        while (relations?.Read() == true)
        {
            if (relations is { NodeType: XmlNodeType.Element, LocalName: "Relationship" }
                && relations.GetAttribute("TargetMode") != "External"
                && relations.GetAttribute("Id") is { } id
                && relations.GetAttribute("Target") is { } target)
            {
                targets[id] = target.StartsWith('/') ? target[1..] : "xl/" + target;
            }
        }

        return targets;
    }

    private static List<string> SharedTexts(PackedParts parts)
    {
        var texts = new List<string>();
        using var shared = parts.Open("xl/sharedStrings.xml");
        while (shared?.Read() == true)
        {
            if (shared is { NodeType: XmlNodeType.Element, LocalName: "si" })
            {
                texts.Add(SheetReader.RichText(shared));
                SheetReader.Count(texts.Count);
            }
        }

        return texts;
    }

    /// <summary>Of every cell style how its numbers are shown.</summary>
    private static List<NumberShown> NumberStyles(PackedParts parts)
    {
        var codes = new Dictionary<string, string>(StringComparer.Ordinal);
        var styles = new List<NumberShown>();
        using var sheet = parts.Open("xl/styles.xml");
        var inCells = false;
        while (sheet?.Read() == true)
        {
            if (sheet.LocalName == "cellXfs")
            {
                inCells = sheet is { NodeType: XmlNodeType.Element, IsEmptyElement: false };
            }
            else if (sheet is { NodeType: XmlNodeType.Element, LocalName: "numFmt" }
                && sheet.GetAttribute("numFmtId") is { } id && sheet.GetAttribute("formatCode") is { } code)
            {
                codes[id] = code;
            }
            else if (inCells && sheet is { NodeType: XmlNodeType.Element, LocalName: "xf" })
            {
                SheetReader.Count(styles.Count);
                var format = sheet.GetAttribute("numFmtId") ?? "0";
                styles.Add(NumberShowing.Of(
                    int.TryParse(format, System.Globalization.NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : 0,
                    codes.GetValueOrDefault(format)));
            }
        }

        return styles;
    }
}
