using System.Globalization;
using System.Text;
using System.Xml;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Importing.Tables;

/// <summary>Reads the cells of one sheet.</summary>
/// <param name="texts">Shared texts by their index.</param>
/// <param name="styles">How numbers of each cell style are shown.</param>
/// <param name="counts1904">True where days count from 1904.</param>
internal sealed class SheetReader(List<string> texts, List<NumberShown> styles, bool counts1904)
{
    private const int MostRows = 1_048_576;

    /// <summary>Spreadsheets keep fifteen digits; more are the trace of a binary number.</summary>
    private const int Digits = 15;

    /// <exception cref="UnusableTableException">Larger than anything that is read.</exception>
    public IReadOnlyList<TableRow> Read(XmlReader sheet)
    {
        var rows = new SortedDictionary<int, List<TableCell>>();
        var hidden = new HashSet<int>();
        var merged = new List<CellRange>();
        var (row, column, cells) = (0, 0, 0);
        while (sheet.Read())
        {
            if (sheet.NodeType != XmlNodeType.Element)
            {
                continue;
            }

            switch (sheet.LocalName)
            {
                case "row":
                    row = RowNumber(sheet.GetAttribute("r"), row + 1);
                    column = 0;
                    if (sheet.GetAttribute("hidden") is "1" or "true")
                    {
                        hidden.Add(row);
                    }

                    break;
                case "c":
                    (row, column) = CellRange.Corner(sheet.GetAttribute("r")) ?? (row, column + 1);
                    if (Cell(sheet) is { IsEmpty: false } cell)
                    {
                        Put(rows, row, column, cell);
                        Count(++cells);
                    }

                    break;
                case "mergeCell" when CellRange.Read(sheet.GetAttribute("ref")) is { } range && merged.Count < TableBounds.Cells:
                    merged.Add(range);
                    break;
            }
        }

        Spread(rows, merged, cells);
        return [.. rows.Select(r => new TableRow(r.Key, r.Value) { IsHidden = hidden.Contains(r.Key) })];
    }

    /// <summary>The text of a shared or inline string: its runs one after the other, without what is said on how to speak it.</summary>
    public static string RichText(XmlReader at)
    {
        if (at.IsEmptyElement)
        {
            return "";
        }

        var text = new StringBuilder();
        var depth = at.Depth;
        var aside = 0;
        while (at.Read() && at.Depth > depth)
        {
            if (at.LocalName == "rPh" && at.NodeType is XmlNodeType.Element or XmlNodeType.EndElement && !at.IsEmptyElement)
            {
                aside += at.NodeType == XmlNodeType.Element ? 1 : -1;
            }
            else if (aside == 0 && at.NodeType is XmlNodeType.Text or XmlNodeType.CDATA or XmlNodeType.SignificantWhitespace)
            {
                text.Append(at.Value);
            }
        }

        return CellText.Of(text.ToString());
    }

    private static int RowNumber(string? stated, int next) =>
        int.TryParse(stated, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number is > 0 and <= MostRows
            ? number
            : next;

    /// <exception cref="UnusableTableException">More than are read.</exception>
    public static void Count(int cells)
    {
        if (cells > TableBounds.Cells)
        {
            throw new UnusableTableException(string.Create(
                CultureInfo.InvariantCulture, $"holds more than {TableBounds.Cells} cells; no recipe is that long."));
        }
    }

    private static void Put(SortedDictionary<int, List<TableCell>> rows, int row, int column, TableCell cell)
    {
        if (column > TableBounds.Columns)
        {
            throw new UnusableTableException(string.Create(
                CultureInfo.InvariantCulture, $"has more than {TableBounds.Columns} columns; no table of a recipe is that wide."));
        }

        if (!rows.TryGetValue(row, out var cells))
        {
            rows[row] = cells = [];
        }

        while (cells.Count < column)
        {
            cells.Add(TableCell.Empty);
        }

        cells[column - 1] = cell;
    }

    /// <summary>Merged cells say one thing for all of them. Only rows that hold something of their own are reached.</summary>
    /// <exception cref="UnusableTableException">More merged cells lie over each other than any table has.</exception>
    private static void Spread(SortedDictionary<int, List<TableCell>> rows, List<CellRange> merged, int cells)
    {
        var numbers = rows.Keys.ToArray();
        var left = TableBounds.MergedRows;
        foreach (var range in merged)
        {
            if (!rows.TryGetValue(range.Top, out var first) || first.ElementAtOrDefault(range.Left - 1) is not { IsEmpty: false } cell)
            {
                continue;
            }

            for (var i = Array.BinarySearch(numbers, range.Top) + 1; i < numbers.Length && numbers[i] <= range.Bottom; i++)
            {
                if (--left < 0)
                {
                    throw new UnusableTableException("has merged cells that lie over each other; no table of a recipe has so many.");
                }

                if (rows[numbers[i]].ElementAtOrDefault(range.Left - 1).IsEmpty)
                {
                    Put(rows, numbers[i], range.Left, cell);
                    Count(++cells);
                }
            }
        }
    }

    private TableCell Cell(XmlReader at)
    {
        var kind = at.GetAttribute("t") ?? "n";
        var shown = int.TryParse(at.GetAttribute("s"), NumberStyles.None, CultureInfo.InvariantCulture, out var style)
            ? styles.ElementAtOrDefault(style)
            : NumberShown.Plain;
        var (value, formula) = Content(at);
        var cell = kind switch
        {
            "s" => new TableCell(
                int.TryParse(value, NumberStyles.None, CultureInfo.InvariantCulture, out var index) && index < texts.Count
                    ? texts[index]
                    : ""),
            "n" or "d" => Number(value, shown),
            "b" => new TableCell(value == "1" ? "TRUE" : "FALSE"),
            _ => new TableCell(value),
        };
        return formula switch
        {
            null => cell,
            _ when cell.IsEmpty => new TableCell("=" + formula),
            "" => cell with { Remark = "worked out by the table" },
            _ => cell with { Remark = "worked out by the table: =" + formula },
        };
    }

    /// <summary>What stands in a cell: its value, and its formula where it has one.</summary>
    private static (string Value, string? Formula) Content(XmlReader at)
    {
        var (value, formula) = ("", (string?)null);
        if (at.IsEmptyElement)
        {
            return (value, formula);
        }

        var depth = at.Depth;
        while (at.Read() && at.Depth > depth)
        {
            if (at.NodeType != XmlNodeType.Element)
            {
                continue;
            }

            switch (at.LocalName)
            {
                case "v" or "is":
                    value = RichText(at);
                    break;
                case "f":
                    formula = RichText(at);
                    break;
            }
        }

        return (value, formula);
    }

    private TableCell Number(string value, NumberShown shown)
    {
        if (!double.TryParse(value, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) || !double.IsFinite(number))
        {
            return new TableCell(value);
        }

        return shown switch
        {
            NumberShown.Date => Date(number, value),
            NumberShown.Percent => new TableCell(Wording.Number(number * 100, Digits) + " %") { IsNumber = true },
            _ => new TableCell(Wording.Number(number, Digits)) { IsNumber = true },
        };
    }

    /// <summary>A day where the number is one; a spreadsheet may also have made a date of something else, so it stays no number.</summary>
    private TableCell Date(double number, string value)
    {
        var day = Math.Floor(number) + (counts1904 ? 1462 : 0);

        // Day 61 is 1 March 1900; before it the count is off by a day that never was (ECMA-376 part 1, 18.17.4.1).
        return day is >= 61 and < 2_958_466
            ? new TableCell(new DateOnly(1899, 12, 30).AddDays((int)day).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture))
            {
                Remark = "shown as a date by the table",
            }
            : new TableCell($"time or date {value}");
    }
}

/// <summary>A block of cells, all counted from 1.</summary>
internal readonly record struct CellRange(int Left, int Top, int Bottom)
{
    private const int MostColumns = 16_384;
    private const int MostRows = 1_048_576;

    /// <summary>Of "B2:B7"; null when it is none.</summary>
    public static CellRange? Read(string? text) =>
        text?.Split(':') is [var from, var to] && Corner(from) is var (top, left) && Corner(to) is var (bottom, _)
            ? new CellRange(left, top, bottom)
            : null;

    /// <summary>Row and column of "B7"; null when it is no cell.</summary>
    public static (int Row, int Column)? Corner(string? text)
    {
        var (row, column, letters) = (0, 0, 0);
        foreach (var c in text ?? "")
        {
            if (char.IsAsciiLetter(c) && row == 0)
            {
                column = (column * 26) + char.ToUpperInvariant(c) - 'A' + 1;
                letters++;
            }
            else if (char.IsAsciiDigit(c) && letters > 0)
            {
                row = (row * 10) + c - '0';
            }
            else if (c != '$')
            {
                return null;
            }

            if (column > MostColumns || row > MostRows)
            {
                return null;
            }
        }

        return row > 0 && letters > 0 ? (row, column) : null;
    }
}
