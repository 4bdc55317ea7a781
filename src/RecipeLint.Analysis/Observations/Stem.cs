namespace RecipeLint.Analysis.Observations;

/// <summary>The part of an English word that its forms share: enough for a small vocabulary, not a grammar.</summary>
internal static class Stem
{
    private const int Shortest = 3;

    /// <summary>Words whose ending is part of them.</summary>
    private static readonly HashSet<string> Whole = new(StringComparer.Ordinal)
    {
        "sticky", "grey", "glass", "gas", "less", "loss", "moss", "brass", "red", "bed", "ring", "spring", "string", "bring", "nothing",
        "something", "anything", "everything", "morning", "evening", "need", "seed", "weed", "feed", "speed", "acid", "liquid", "mass",
        "as", "is",
        "fish", "finish", "wish", "vanish", "polish", "bleach", "this", "his", "its", "was", "has", "does", "ash", "rubbish", "gelatine",
        "coating", "plating", "lining",
        "fitting", "coffee", "ones", "happily", "oily",
    };

    /// <summary>Any word in lower case; a stem stays what it is.</summary>
    public static string Of(string word)
    {
        if (Whole.Contains(word))
        {
            return word switch { "oily" => "oil", _ => word };
        }

        var stem = word.EndsWith("shes", StringComparison.Ordinal) || word.EndsWith("ches", StringComparison.Ordinal) ? word[..^2] : word;
        stem = Cut(stem, "s", 1, "ss", "us", "is");
        if (Whole.Contains(stem))
        {
            return stem;
        }

        stem = Cut(stem, "ing", 3);
        stem = Cut(stem, "ish", 3);
        stem = Cut(stem, "ed", 2, "eed");
        stem = Cut(stem, "ly", 2);
        stem = Cut(stem, "y", 1, "ay", "ey", "oy");
        stem = stem.Length > Shortest && stem.EndsWith('e') ? stem[..^1] : stem;
        stem = stem.Length > Shortest && stem.EndsWith('i') ? stem[..^1] : stem;
        return stem.Length > Shortest && stem[^1] == stem[^2] ? stem[..^1] : stem;
    }

    private static string Cut(string word, string ending, int letters, params ReadOnlySpan<string> but)
    {
        if (word.Length - letters < Shortest || !word.EndsWith(ending, StringComparison.Ordinal))
        {
            return word;
        }

        foreach (var kept in but)
        {
            if (word.EndsWith(kept, StringComparison.Ordinal))
            {
                return word;
            }
        }

        return word[..^letters];
    }
}
