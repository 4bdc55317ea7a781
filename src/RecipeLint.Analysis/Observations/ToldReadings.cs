using System.Text.RegularExpressions;

namespace RecipeLint.Analysis.Observations;

/// <summary>Readings that somebody tells among what was seen ("looks fine but the pH is 8"), as a measurement is written.</summary>
public static partial class ToldReadings
{
    /// <summary>
    /// "pH 8", "EC 2.1 mS/cm", each once, in the order they were told. A number without a unit is no conductivity. Never throws.
    /// </summary>
    public static IReadOnlyList<string> Of(string text) =>
    [
        .. Told().Matches(text.Length > LongestText ? text[..LongestText] : text)
            .Select(m => m.Groups["word"].Success ? $"pH {Spelled(m.Groups["word"].Value)}{Tenth(m.Groups["tenth"])}"
                : m.Groups["ph"].Success ? $"pH {m.Groups["ph"].Value}" : $"EC {m.Groups["ec"].Value} {m.Groups["unit"].Value}")
            .Distinct(StringComparer.Ordinal),
    ];

    private const int LongestText = 2000;

    private static readonly string[] Numbers =
    [
        "zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve", "thirteen", "fourteen",
    ];

    private static int Spelled(string word) => Array.FindIndex(Numbers, n => n.Equals(word, StringComparison.OrdinalIgnoreCase));

    private static string Tenth(Group tenth) => tenth.Success ? $".{Spelled(tenth.Value)}" : "";

    [GeneratedRegex(
        """
        \b(?:pH(?:\s+(?:is|was|of|at|reads|shows|now|about|around|has|gone|went|up|to|only|still|already)|[:=])*\s*
            (?:(?<![A-Za-z])(?<word>zero|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|thirteen|fourteen)\b
                (?!\s*(?:mL|ml|drops?|times|days?|weeks?|hours?|months?)\b)
                (?:\s+point\s+(?<tenth>zero|one|two|three|four|five|six|seven|eight|nine)\b)?
            |(?<ph>1[0-4](?:\.[0-9]{1,2})?|[0-9](?:\.[0-9]{1,2})?)(?![0-9.,]*[0-9]|\s*(?:mL|ml|L\b|g\b|drops)))
        |EC(?:\s+(?:is|was|of|at|reads|shows|now|about|around|only|still)|[:=])*\s*
            (?<ec>[0-9]{1,6}(?:\.[0-9]{1,3})?)\s*(?<unit>mS/cm|µS/cm|uS/cm|dS/m)\b)
        """,
        RegexOptions.CultureInvariant | RegexOptions.IgnoreCase | RegexOptions.IgnorePatternWhitespace)]
    private static partial Regex Told();
}
