using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Recipes.Quantities;

/// <summary>The units a misspelt one may have meant.</summary>
internal static class UnitSuggestions
{
    private const int Most = 3;

    /// <summary>Short forms that are no unit here and stand for one.</summary>
    private static readonly Dictionary<string, string> _shortForms = new(StringComparer.OrdinalIgnoreCase)
    {
        ["gm"] = "g",
        ["gms"] = "g",
        ["gs"] = "g",
        ["grs"] = "g",
        ["mgs"] = "mg",
        ["mls"] = "mL",
        ["kgs"] = "kg",
        ["kilo"] = "kg",
        ["kilos"] = "kg",
        ["lt"] = "L",
        ["lts"] = "L",
        ["ltrs"] = "L",
        ["lit"] = "L",
        ["ls"] = "L",
        ["ms"] = "mS/cm",
        ["µs"] = "µS/cm",
        ["us"] = "µS/cm",
        ["ds"] = "dS/m",
        ["percent"] = "%",
        ["per cent"] = "%",
    };

    /// <summary>Other case of the same letters first, then the nearest spelling.</summary>
    public static IReadOnlyList<string> For(string text)
    {
        // A full stop behind a short form or a number, and letters of full width, are the same unit written otherwise.
        var bare = string.Concat(text.Select(Narrow)).Trim('.', ' ');
        if (bare != text && UnitTable.BySymbol.TryGetValue(bare, out var plain))
        {
            return [plain.Symbol];
        }

        if (_shortForms.TryGetValue(bare, out var meant))
        {
            return [meant];
        }

        var sameLetters = UnitTable.BySymbol.Where(p => p.Key.Equals(text, StringComparison.OrdinalIgnoreCase))
            .Select(p => p.Value.Symbol).Distinct().Order(StringComparer.Ordinal).ToArray();
        if (sameLetters.Length > 0)
        {
            return sameLetters;
        }

        // Two letters are too few to tell a slip from another unit.
        if (text.Length is < 3 or > 24)
        {
            return [];
        }

        return [.. UnitTable.Units
            .SelectMany(u => (u.Words ?? [])
                .Append(u.Symbol)
                .Select(w => (Distance: EditDistance.Of(text.ToUpperInvariant(), w.ToUpperInvariant(), 2), u.Symbol)))
            .Where(p => p.Distance <= (text.Length > 5 ? 2 : 1))
            .OrderBy(p => p.Distance).ThenBy(p => p.Symbol, StringComparer.Ordinal)
            .Select(p => p.Symbol).Distinct().Take(Most)];
    }

    /// <summary>The letter that one of full width stands for (Unicode: Halfwidth and Fullwidth Forms).</summary>
    private static char Narrow(char letter) => letter is >= '\uFF01' and <= '\uFF5E' ? (char)(letter - '\uFF01' + '!') : letter;

    public static IReadOnlyList<string> ForQuotient(string above, bool aboveKnown, string prefix, string below, bool belowKnown)
    {
        var tops = aboveKnown ? [above] : For(above);
        var bottoms = belowKnown ? [below] : For(below);
        return [.. tops.SelectMany(t => bottoms.Select(b => $"{t}/{prefix}{b}")).Take(Most)];
    }
}
