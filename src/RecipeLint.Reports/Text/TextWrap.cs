using System.Collections.Frozen;
using System.Text;

namespace RecipeLint.Reports;

/// <summary>
/// Breaks text at blanks so that no line takes more columns than allowed; a number stays on one line with its power of ten and its unit. A
/// word too long for a line is cut.
/// </summary>
public static class TextWrap
{
    /// <summary>What may follow a number without a break; sentence signs after it do not count.</summary>
    private static readonly FrozenSet<string> Units = new[]
    {
        "%", "°C", "K", "kg", "g", "mg", "µg", "mL", "L", "m³", "mol", "mmol", "µmol", "g/L", "kg/L", "mg/L", "µg/L", "mL/L", "mol/L",
        "mmol/L",
        "µmol/L", "meq/L", "mol/kg", "mmol/kg", "meq/kg", "mg/kg", "g/kg", "g/mL", "g/mol", "mS/cm", "kJ", "kJ/mol", "day", "days",
        "weeks", "months",
    }.ToFrozenSet(StringComparer.Ordinal);

    /// <param name="text">Runs of blanks count as one.</param>
    /// <param name="width">Columns per line; less than 2 counts as 2, the widest character.</param>
    public static IReadOnlyList<string> Wrap(string text, int width)
    {
        width = Math.Max(width, 2);
        var lines = new List<string>();
        var line = new StringBuilder();
        var used = 0;
        foreach (var word in Joined(text.Split(' ', StringSplitOptions.RemoveEmptyEntries), width).SelectMany(w => Cut(w, width)))
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

    /// <summary>The words with a number and its unit as one, where both fit a line.</summary>
    private static IEnumerable<string> Joined(string[] words, int width)
    {
        for (var i = 0; i < words.Length; i++)
        {
            var word = words[i];
            if (i + 2 < words.Length && char.IsAsciiDigit(word[^1]) && words[i + 1] == "×" && words[i + 2].StartsWith(
                "10^", StringComparison.Ordinal)
                && DisplayWidth.Of(word) + 3 + DisplayWidth.Of(words[i + 2]) <= width)
            {
                // A power of ten belongs to its number: "2.4 × 10^-5".
                word = $"{word} × {words[i + 2]}";
                i += 2;
            }

            if (i + 1 < words.Length && char.IsAsciiDigit(word[^1]) && IsUnit(words[i + 1])
                && DisplayWidth.Of(word) + 1 + DisplayWidth.Of(words[i + 1]) <= width)
            {
                word = $"{word} {words[++i]}";
            }

            yield return word;
        }
    }

    private static bool IsUnit(string word) => Units.Contains(word.TrimEnd('.', ',', ';', ':', ')', '?'));

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
