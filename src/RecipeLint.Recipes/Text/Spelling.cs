using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Recipes.Text;

/// <summary>What a mistyped word most likely was meant to be.</summary>
public static class Spelling
{
    private const int LongestWord = 64;

    /// <summary>
    /// The candidates nearest to a word, best first and in ordinal order among equals. Letter case, spaces, hyphens and underscores
    /// do not count; about one slip in three letters is let through.
    /// </summary>
    /// <param name="max">At most this many.</param>
    public static IReadOnlyList<string> Nearest(string word, IEnumerable<string> candidates, int max = 3)
    {
        var wanted = Fold(word);
        if (wanted.Length is 0 or > LongestWord)
        {
            return [];
        }

        var ranked = new List<(int Rank, string Candidate)>();
        foreach (var candidate in candidates)
        {
            var folded = Fold(candidate);
            var limit = Math.Min(3, Math.Max(1, Math.Min(wanted.Length, folded.Length) / 3));
            var distance = EditDistance.Of(wanted, folded, limit);
            if (distance <= limit)
            {
                ranked.Add((distance, candidate));
            }
            else if (IsBeginning(wanted, folded))
            {
                ranked.Add((limit + 1, candidate));
            }
        }

        if (ranked.Count == 0)
        {
            return [];
        }

        // A clear winner stands alone; the others would only blur it.
        var best = ranked.Min(r => r.Rank);
        var last = best == 0 ? 0 : best + 1;
        return
        [
            .. ranked.Where(r => r.Rank <= last)
                .OrderBy(r => r.Rank)
                .ThenBy(r => r.Candidate, StringComparer.Ordinal)
                .Select(r => r.Candidate)
                .Distinct(StringComparer.Ordinal)
                .Take(max),
        ];
    }

    private static bool IsBeginning(string wanted, string folded) =>
        wanted.Length >= 3 && folded.Length >= 3
        && (folded.StartsWith(wanted, StringComparison.Ordinal) || wanted.StartsWith(folded, StringComparison.Ordinal));

    private static string Fold(string word) =>
        string.Concat(word.Where(c => c is not (' ' or '-' or '_'))).ToLowerInvariant();
}
