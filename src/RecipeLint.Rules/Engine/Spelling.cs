namespace RecipeLint.Rules.Engine;

/// <summary>Nearest words by spelling.</summary>
internal static class Spelling
{
    /// <summary>Candidates within a third of the text's length in edits, nearest first, ties by name.</summary>
    internal static IReadOnlyList<string> Nearest(string text, IEnumerable<string> candidates, int most)
    {
        var lower = text.Trim().ToLowerInvariant();
        var reach = Math.Max(2, lower.Length / 3);
        return
        [
            .. candidates
                .Select(c => (Name: c, Distance: Distance(lower, c.ToLowerInvariant())))
                .Where(c => c.Distance <= reach || (lower.Length >= 4 && c.Name.Contains(lower, StringComparison.OrdinalIgnoreCase)))
                .OrderBy(c => c.Distance)
                .ThenBy(c => c.Name, StringComparer.Ordinal)
                .Take(most)
                .Select(c => c.Name),
        ];
    }

    /// <summary>Single-character insertions, deletions, replacements and swaps of neighbours that turn one text into the other.</summary>
    internal static int Distance(string a, string b)
    {
        var beforeLast = new int[b.Length + 1];
        var last = new int[b.Length + 1];
        var row = new int[b.Length + 1];
        for (var j = 0; j <= b.Length; j++)
        {
            last[j] = j;
        }

        for (var i = 1; i <= a.Length; i++)
        {
            row[0] = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var change = a[i - 1] == b[j - 1] ? 0 : 1;
                row[j] = Math.Min(Math.Min(row[j - 1] + 1, last[j] + 1), last[j - 1] + change);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                {
                    row[j] = Math.Min(row[j], beforeLast[j - 2] + 1);
                }
            }

            (beforeLast, last, row) = (last, row, beforeLast);
        }

        return last[b.Length];
    }
}
