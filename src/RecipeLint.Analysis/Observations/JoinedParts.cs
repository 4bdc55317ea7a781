namespace RecipeLint.Analysis.Observations;

/// <summary>
/// Hears that another part of the recipe went in: "I added part B by mistake". Everyday words: common practice, no source. Pure; never
/// throws.
/// </summary>
internal static class JoinedParts
{
    private static readonly HashSet<string> Acts = new(StringComparer.Ordinal)
    {
        "added", "add", "adding", "put", "putting", "poured", "pour", "pouring", "tipped", "tipping", "mixed", "mixing", "dumped", "topped",
        "filled", "refilled", "dosed", "got", "threw", "chucked", "spilled", "spilt",
    };

    private static readonly HashSet<string> Vessels = new(StringComparer.Ordinal) { "part", "stock", "bottle", "component", "solution" };

    private static readonly HashSet<string> Names =
        new(StringComparer.Ordinal) { "a", "b", "c", "d", "1", "2", "3", "one", "two", "three" };

    /// <summary>Each part once, as written.</summary>
    /// <param name="tokens">In lower case; an empty one stands for punctuation.</param>
    public static IReadOnlyList<string> Of(IReadOnlyList<string> tokens)
    {
        var found = new List<string>();
        var acted = false;
        for (var i = 0; i < tokens.Count; i++)
        {
            acted = tokens[i].Length > 0 && (acted || Acts.Contains(tokens[i])) && !Vocabulary.Negations.Contains(tokens[i]);
            if (acted && Vessels.Contains(tokens[i]) && i + 1 < tokens.Count && Names.Contains(tokens[i + 1])
                && (tokens[i + 1] != "a" || i + 2 >= tokens.Count || tokens[i + 2].Length == 0 || !IsThing(tokens[i + 2])))
            {
                found.Add($"{tokens[i]} {tokens[i + 1]}");
            }
        }

        return [.. found.Distinct(StringComparer.Ordinal)];
    }

    /// <summary>"Filled the bottle a bit": no bottle of the name of A.</summary>
    private static bool IsThing(string word) => word is "bit" or "little" or "lot" or "few" or "second" or "while" or "week" or "month"
        or "year" or "day" or "drop";
}
