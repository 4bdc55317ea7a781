using System.Text;

namespace RecipeLint.Reports.Tables;

/// <summary>
/// A table as lines of text that fit a width. Columns of words wrap between words; where even that is too wide, each row becomes a small
/// list, so that no word is ever broken and nothing is cut off.
/// </summary>
public static class TableText
{
    private const int Gap = 2, Indent = 2;

    /// <param name="width">Columns, at least 40.</param>
    public static IReadOnlyList<string> Lines(Table table, int width)
    {
        if (table.IsEmpty)
        {
            return [];
        }

        var cells = table.Rows.Select(r => r.Select(Printable.Show).ToList()).ToList();
        var heads = table.Columns.Select(c => Printable.Show(c.Head)).ToList();
        var room = width - Indent;
        return Widths(table, heads, cells, room) is { } widths ? Beside(table, heads, cells, widths) : Stacked(heads, cells, room);
    }

    /// <summary>How wide each column is; null where the table does not fit side by side.</summary>
    private static int[]? Widths(Table table, List<string> heads, List<List<string>> cells, int room)
    {
        var natural = heads.Select((h, i) => cells.Select(r => DisplayWidth.Of(r[i])).Append(DisplayWidth.Of(h)).Max()).ToArray();
        var least = heads.Select((h, i) => table.Columns[i].IsNumber || table.Columns[i].IsPicture
            ? cells.Select(r => DisplayWidth.Of(r[i])).Append(LongestWord(h)).Max()
            : cells.Select(r => LongestWord(r[i])).Append(LongestWord(h)).Max()).ToArray();
        var over = natural.Sum() + (Gap * (natural.Length - 1)) - room;
        while (over > 0)
        {
            // The widest of those that can still give way, so that none becomes a thread.
            var widest = Enumerable.Range(0, natural.Length).Where(i => natural[i] > least[i]).OrderByDescending(i => natural[i]).ToList();
            if (widest.Count == 0)
            {
                return null;
            }

            natural[widest[0]]--;
            over--;
        }

        return natural;
    }

    private static int LongestWord(string text) => text.Split(' ').Max(DisplayWidth.Of);

    private static List<string> Beside(Table table, List<string> heads, List<List<string>> cells, int[] widths)
    {
        var lines = new List<string>();
        Row(heads, headed: true);
        lines.Add(new string(' ', Indent) + string.Join(new string(' ', Gap), widths.Select(w => new string('─', w))));
        cells.ForEach(r => Row(r, headed: false));
        return lines;

        void Row(List<string> row, bool headed)
        {
            var wrapped = row.Select((c, i) => !headed && (table.Columns[i].IsNumber || table.Columns[i].IsPicture)
                ? [c]
                : TextWrap.Wrap(c, widths[i])).ToList();
            for (var line = 0; line < wrapped.Max(w => w.Count); line++)
            {
                var text = new StringBuilder(new string(' ', Indent));
                for (var i = 0; i < widths.Length; i++)
                {
                    var cell = line < wrapped[i].Count ? wrapped[i][line] : "";
                    var blanks = new string(' ', Math.Max(0, widths[i] - DisplayWidth.Of(cell)));
                    text.Append(table.Columns[i].IsNumber ? blanks + cell : cell + blanks).Append(' ', i + 1 < widths.Length ? Gap : 0);
                }

                lines.Add(text.ToString().TrimEnd());
            }
        }
    }

    private static List<string> Stacked(List<string> heads, List<List<string>> cells, int room)
    {
        var lines = new List<string>();
        foreach (var row in cells)
        {
            lines.AddRange(TextWrap.Wrap(row[0], room).Select(l => new string(' ', Indent) + l));
            for (var i = 1; i < heads.Count; i++)
            {
                if (row[i].Length > 0)
                {
                    lines.AddRange(TextWrap.Wrap($"{heads[i]}: {row[i]}", room - Indent).Select(l => new string(' ', 2 * Indent) + l));
                }
            }
        }

        return lines;
    }
}
