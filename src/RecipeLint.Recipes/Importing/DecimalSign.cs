using System.Text;
using System.Text.RegularExpressions;

namespace RecipeLint.Recipes.Importing;

/// <summary>Rewrites numbers of a table whose decimal sign the user has named. Without that word nothing is rewritten.</summary>
public static partial class DecimalSign
{
    /// <summary>Every number of a text with a decimal point and without grouping; what fits neither form stays as it is.</summary>
    /// <param name="text">"1.234,5 g", "1,5..2,5".</param>
    /// <param name="comma">True where the comma is the decimal sign.</param>
    public static string ToPoint(string text, bool comma)
    {
        var result = new StringBuilder(text.Length);
        var at = 0;
        foreach (var match in Runs().EnumerateMatches(text))
        {
            result.Append(text, at, match.Index - at);
            result.Append(Number(text.Substring(match.Index, match.Length), comma));
            at = match.Index + match.Length;
        }

        return result.Append(text, at, text.Length - at).ToString();
    }

    /// <summary>True for a number that reads differently with a decimal comma than with a decimal point.</summary>
    public static bool IsOpen(string text)
    {
        foreach (var match in Runs().EnumerateMatches(text))
        {
            var run = text.Substring(match.Index, match.Length);
            if (run.Contains(',', StringComparison.Ordinal) || Number(run, true) != Number(run, false))
            {
                return true;
            }
        }

        return false;
    }

    private static string Number(string run, bool comma)
    {
        var (point, groups) = comma ? (',', ".'’\u00A0\u202F") : ('.', ",'’\u00A0\u202F");
        var parts = run.Split(point);
        if (parts.Length > 2 || (parts.Length == 2 && !parts[1].All(char.IsAsciiDigit)))
        {
            return run;
        }

        var sign = parts[0].FirstOrDefault(c => !char.IsAsciiDigit(c));
        if (sign != default)
        {
            var triples = parts[0].Split(sign);
            if (!groups.Contains(sign, StringComparison.Ordinal) || triples[0].Length is 0 or > 3
                || triples.Skip(1).Any(t => t.Length != 3 || !t.All(char.IsAsciiDigit)) || !triples[0].All(char.IsAsciiDigit))
            {
                return run;
            }

            parts[0] = string.Concat(triples);
        }

        return string.Join('.', parts);
    }

    /// <summary>Digits with single signs between them; two points ("4..30") part two numbers.</summary>
    [GeneratedRegex(@"[0-9]+(?:[.,'’\u00A0\u202F][0-9]+)*", RegexOptions.CultureInvariant)]
    private static partial Regex Runs();
}
