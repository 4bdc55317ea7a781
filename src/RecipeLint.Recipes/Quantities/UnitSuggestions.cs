namespace RecipeLint.Recipes.Quantities;

/// <summary>The units a misspelt one may have meant.</summary>
internal static class UnitSuggestions
{
    private const int Most = 3;

    /// <summary>Other case of the same letters first, then the nearest spelling.</summary>
    public static IReadOnlyList<string> For(string text)
    {
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
            .SelectMany(u => (u.Words ?? []).Append(u.Symbol).Select(w => (Distance: Distance(text, w), u.Symbol)))
            .Where(p => p.Distance <= (text.Length > 5 ? 2 : 1))
            .OrderBy(p => p.Distance).ThenBy(p => p.Symbol, StringComparer.Ordinal)
            .Select(p => p.Symbol).Distinct().Take(Most)];
    }

    public static IReadOnlyList<string> ForQuotient(string above, bool aboveKnown, string prefix, string below, bool belowKnown)
    {
        var tops = aboveKnown ? [above] : For(above);
        var bottoms = belowKnown ? [below] : For(below);
        return [.. tops.SelectMany(t => bottoms.Select(b => $"{t}/{prefix}{b}")).Take(Most)];
    }

    private static int Distance(string one, string other)
    {
        var previous = new int[other.Length + 1];
        var current = new int[other.Length + 1];
        for (var j = 0; j <= other.Length; j++)
        {
            previous[j] = j;
        }

        for (var i = 1; i <= one.Length; i++)
        {
            current[0] = i;
            for (var j = 1; j <= other.Length; j++)
            {
                var change = char.ToUpperInvariant(one[i - 1]) == char.ToUpperInvariant(other[j - 1]) ? 0 : 1;
                current[j] = Math.Min(Math.Min(current[j - 1], previous[j]) + 1, previous[j - 1] + change);
            }

            (previous, current) = (current, previous);
        }

        return previous[other.Length];
    }
}
