namespace RecipeLint.Chemistry.Substances;

/// <summary>How many slips of the pen lie between two words; what every suggestion of a name rests on.</summary>
public static class EditDistance
{
    /// <summary>
    /// Edits between two words: letters inserted, left out, replaced, or two neighbours swapped (optimal string alignment, after F. J.
    /// Damerau, Commun. ACM 7 (1964) 171; each stretch edited once).
    /// </summary>
    /// <param name="limit">Anything above it may come back as <paramref name="limit"/> + 1.</param>
    public static int Of(string a, string b, int limit = int.MaxValue - 1)
    {
        if (Math.Abs(a.Length - b.Length) > limit)
        {
            return limit + 1;
        }

        var before = new int[b.Length + 1];
        var previous = new int[b.Length + 1];
        var current = new int[b.Length + 1];
        for (var j = 0; j <= b.Length; j++)
        {
            previous[j] = j;
        }

        for (var i = 1; i <= a.Length; i++)
        {
            current[0] = i;
            var least = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var replaced = previous[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
                var value = Math.Min(replaced, Math.Min(previous[j], current[j - 1]) + 1);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                {
                    value = Math.Min(value, before[j - 2] + 1);
                }

                current[j] = value;
                least = Math.Min(least, value);
            }

            if (least > limit)
            {
                return limit + 1;
            }

            (before, previous, current) = (previous, current, before);
        }

        return Math.Min(previous[b.Length], limit == int.MaxValue ? limit : limit + 1);
    }
}
