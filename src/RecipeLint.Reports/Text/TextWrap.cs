using System.Text;

namespace RecipeLint.Reports;

/// <summary>Breaks text at blanks so that no line takes more columns than allowed; a word too long for a line is cut.</summary>
public static class TextWrap
{
    /// <param name="text">Runs of blanks count as one.</param>
    /// <param name="width">Columns per line; less than 2 counts as 2, the widest character.</param>
    public static IReadOnlyList<string> Wrap(string text, int width)
    {
        width = Math.Max(width, 2);
        var lines = new List<string>();
        var line = new StringBuilder();
        var used = 0;
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries).SelectMany(w => Cut(w, width)))
        {
            var own = DisplayWidth.Of(word);
            if (used > 0 && used + 1 + own > width)
            {
                lines.Add(line.ToString());
                line.Clear();
                used = 0;
            }

            if (used > 0)
            {
                line.Append(' ');
                used++;
            }

            line.Append(word);
            used += own;
        }

        lines.Add(line.ToString());
        return lines;
    }

    private static IEnumerable<string> Cut(string word, int width)
    {
        if (DisplayWidth.Of(word) <= width)
        {
            yield return word;
            yield break;
        }

        var piece = new StringBuilder();
        foreach (var rune in word.EnumerateRunes())
        {
            var longer = piece + rune.ToString();
            if (DisplayWidth.Of(longer) > width)
            {
                yield return piece.ToString();
                piece.Clear();
            }

            piece.Append(rune.ToString());
        }

        yield return piece.ToString();
    }
}
