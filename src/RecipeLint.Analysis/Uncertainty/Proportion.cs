namespace RecipeLint.Analysis.Uncertainty;

/// <summary>How often something happened, with what that says of how often it happens.</summary>
/// <param name="Hits">From 0 to <paramref name="Of"/>.</param>
/// <param name="Of">Tries; 0 where there was none, and then nothing is known.</param>
public readonly record struct Proportion(int Hits, int Of)
{
    /// <summary>The point of the normal distribution that leaves 2.5 % on each side.</summary>
    private const double Z = 1.959964;

    /// <summary>Share of the tries; NaN without any.</summary>
    public double Share => (double)Hits / Of;

    /// <summary>
    /// The interval that holds the true share with 95 %: E. B. Wilson, J. Am. Stat. Assoc. 22 (1927), 209-212 (recalled). It stays between
    /// 0 and 1 and says something after few tries too; from 0 to 1 without any.
    /// </summary>
    public (double Low, double High) Interval
    {
        get
        {
            if (Of <= 0)
            {
                return (0, 1);
            }

            var square = Z * Z / Of;
            var middle = (Share + (square / 2)) / (1 + square);
            var half = Z / (1 + square) * Math.Sqrt((Share * (1 - Share) / Of) + (square / (4 * Of)));
            return (Hits == 0 ? 0 : Math.Max(0, middle - half), Hits == Of ? 1 : Math.Min(1, middle + half));
        }
    }
}
