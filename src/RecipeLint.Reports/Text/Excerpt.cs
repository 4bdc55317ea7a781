using System.Text;

namespace RecipeLint.Reports;

/// <summary>One source line as shown, with where a marked stretch stands in it.</summary>
/// <param name="Text">Printable, at most as wide as asked.</param>
/// <param name="Offset">Columns before the mark.</param>
/// <param name="Length">Columns of the mark, at least 1.</param>
/// <param name="Whole">False when the line was cut to fit.</param>
internal sealed record Excerpt(string Text, int Offset, int Length, bool Whole)
{
    private const string Ellipsis = "…";

    // A line longer than this is never shown whole at 100 columns; only the neighbourhood of the mark is looked at.
    private const int Neighbourhood = 200;

    /// <param name="line">The line without its end.</param>
    /// <param name="start">First marked UTF-16 unit, from 0.</param>
    /// <param name="end">One past the last marked unit.</param>
    /// <param name="width">Columns there are, at least 20.</param>
    public static Excerpt Of(string line, int start, int end, int width)
    {
        start = Math.Clamp(start, 0, line.Length);
        end = Math.Clamp(end, start, line.Length);
        var from = OnBoundary(line, Math.Max(0, start - Neighbourhood));
        var to = OnBoundary(line, Math.Min(line.Length, start + (2 * Neighbourhood)));
        var cells = Cells(line.AsSpan(from, to - from));
        var first = cells.FindIndex(c => from + c.Unit >= start);
        first = first < 0 ? cells.Count : first;
        var last = cells.FindIndex(c => from + c.Unit >= end);
        last = last < 0 ? cells.Count : last;

        var cutLeft = from > 0;
        var cutRight = to < line.Length;
        var left = 0;
        var right = cells.Count;
        if (cutLeft || cutRight || Width(cells, 0, right) > width)
        {
            (left, right) = Window(cells, first, width);
            cutLeft |= left > 0;
            cutRight |= right < cells.Count;
        }

        var text = new StringBuilder(cutLeft ? Ellipsis : "");
        for (var i = left; i < right; i++)
        {
            text.Append(cells[i].Shown);
        }

        text.Append(cutRight ? Ellipsis : "");
        var offset = (cutLeft ? 1 : 0) + Width(cells, left, first);
        var length = Math.Max(1, Width(cells, first, Math.Min(last, right)));
        return new Excerpt(text.ToString(), offset, length, !cutLeft && !cutRight);
    }

    /// <summary>
    /// The cells to show: a third of the width before the mark, the rest after it, with a column at either end kept for the ellipsis.
    /// </summary>
    private static (int Left, int Right) Window(List<Cell> cells, int first, int width)
    {
        var left = first;
        var used = 0;
        while (left > 0 && used + cells[left - 1].Width <= width / 3)
        {
            left--;
            used += cells[left].Width;
        }

        while (left > 0 && left < first && cells[left].Width == 0)
        {
            left++;
        }

        used = 2;
        var right = left;
        while (right < cells.Count && used + cells[right].Width <= width)
        {
            used += cells[right].Width;
            right++;
        }

        return (left, right);
    }

    private static int OnBoundary(string line, int index) =>
        index > 0 && index < line.Length && char.IsLowSurrogate(line[index]) && char.IsHighSurrogate(line[index - 1]) ? index - 1 : index;

    private static int Width(List<Cell> cells, int from, int to)
    {
        var width = 0;
        for (var i = from; i < to; i++)
        {
            width += cells[i].Width;
        }

        return width;
    }

    private static List<Cell> Cells(ReadOnlySpan<char> text)
    {
        var cells = new List<Cell>(text.Length);
        var unit = 0;
        while (unit < text.Length)
        {
            Rune.DecodeFromUtf16(text[unit..], out var rune, out var length);
            var raw = text.Slice(unit, length).ToString();
            var shown = raw == "\t" ? "  " : Printable.Show(raw);
            var width = DisplayWidth.Of(shown);
            if (rune.Value == 0xFE0F && cells.Count > 0)
            {
                // The selector makes the symbol before it an emoji of two columns.
                width = DisplayWidth.Of(cells[^1].Shown + shown) - cells[^1].Width;
            }

            cells.Add(new Cell(unit, shown, width));
            unit += length;
        }

        return cells;
    }

    private readonly record struct Cell(int Unit, string Shown, int Width);
}
