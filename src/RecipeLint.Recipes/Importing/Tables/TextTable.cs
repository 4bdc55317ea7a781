using System.Globalization;
using System.Text;
using nietras.SeparatedValues;

namespace RecipeLint.Recipes.Importing.Tables;

/// <summary>Reads a table kept as text: cells apart by comma, semicolon, tab or bar, quotes around what holds one (RFC 4180).</summary>
public static class TextTable
{
    private static readonly char[] _separators = [';', '\t', ',', '|'];

    /// <param name="separator">Null to tell it from the file, where that leaves no doubt.</param>
    public static TableReading Read(byte[] bytes, char? separator)
    {
        try
        {
            var text = Decode(bytes);
            if (text.Count(c => c == '"') % 2 != 0)
            {
                return TableReading.No("has a quote that is never closed, so its cells cannot be told apart.");
            }

            var apart = separator ?? Separator(text);
            return new TableReading([new Table("", Rows(text, apart)) { Separator = apart }], null);
        }
        catch (UnusableTableException unusable)
        {
            return TableReading.No(unusable.Message);
        }
    }

    private static string Decode(byte[] bytes)
    {
        var (encoding, mark) = bytes switch
        {
            [0xEF, 0xBB, 0xBF, ..] => ((Encoding)new UTF8Encoding(false, true), 3),
            [0xFF, 0xFE, ..] => (new UnicodeEncoding(false, false, true), 2),
            [0xFE, 0xFF, ..] => (new UnicodeEncoding(true, false, true), 2),
            _ => (new UTF8Encoding(false, true), 0),
        };
        try
        {
            var text = encoding.GetString(bytes, mark, bytes.Length - mark);
            return text.Contains('\0', StringComparison.Ordinal)
                ? throw new UnusableTableException("holds null characters: it is no table kept as text.")
                : text;
        }
        catch (DecoderFallbackException)
        {
            throw new UnusableTableException(
                "is not written in UTF-8, so letters such as µ and ° cannot be told. Save it again as 'CSV UTF-8'.");
        }
    }

    /// <summary>
    /// The one separator with which every row has as many cells as the first; with none, or with several, the reader is asked.
    /// </summary>
    private static char Separator(string text)
    {
        var fitting = new List<char>();
        var present = new List<char>();
        foreach (var candidate in _separators)
        {
            var widths = Rows(text, candidate).Select(r => r.Cells.Count).ToList();
            if (widths.Count > 0 && widths.Max() > 1)
            {
                present.Add(candidate);
                if (widths.Distinct().Count() == 1)
                {
                    fitting.Add(candidate);
                }
            }
        }

        return (fitting, present) switch
        {
            ([var one], _) => one,
            ([], [var one]) => one,
            (_, []) => throw new UnusableTableException("has a single column; a table needs at least what is added and how much of it."),
            _ => throw new UnusableTableException(
                "can be parted by several signs (" + string.Join(" ", present.Select(c => c == '\t' ? "tab" : c.ToString()))
                    + "). Say with '--separator' which one it is."),
        };
    }

    private static List<TableRow> Rows(string text, char separator)
    {
        var rows = new List<TableRow>();
        var cells = 0;
        try
        {
            // Blank lines hold nothing and are passed over; line ends inside quotes count.
            using var reader = new Sep(separator)
                .Reader(o => o with { HasHeader = false, DisableColCountCheck = true, Unescape = true })
                .FromText(text);
            foreach (var line in reader)
            {
                if (line.ColCount > TableBounds.Columns)
                {
                    throw new UnusableTableException(string.Create(
                        CultureInfo.InvariantCulture, $"has more than {TableBounds.Columns} columns; no table of a recipe is that wide."));
                }

                var row = new TableCell[line.ColCount];
                for (var i = 0; i < row.Length; i++)
                {
                    row[i] = new TableCell(CellText.Of(line[i].ToString()));
                    cells += row[i].IsEmpty ? 0 : 1;
                }

                if (cells > TableBounds.Cells)
                {
                    throw new UnusableTableException(string.Create(
                        CultureInfo.InvariantCulture, $"holds more than {TableBounds.Cells} cells; no recipe is that long."));
                }

                var read = new TableRow(rows.Count == 0 ? FirstLine(text) : line.LineNumberFrom, row);
                if (!read.IsEmpty)
                {
                    rows.Add(read);
                }
            }
        }
        catch (NotSupportedException)
        {
            throw new UnusableTableException("has a row of more than sixteen million characters; no recipe is that long.");
        }

        return rows;
    }

    /// <summary>The line of the first row that holds something.</summary>
    private static int FirstLine(string text)
    {
        var start = text.Length - text.TrimStart('\r', '\n').Length;
        return 1 + text.AsSpan(0, start).Count('\n');
    }
}
