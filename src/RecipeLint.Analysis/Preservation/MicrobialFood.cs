namespace RecipeLint.Analysis.Preservation;

/// <summary>What moulds and bacteria live on in a stock.</summary>
public static class MicrobialFood
{
    /// <summary>Additions that feed microbes with what they bring in g/L, largest first.</summary>
    public static IReadOnlyList<(AdditionFacts Addition, double GramsPerLitre)> In(StockFacts stock) =>
    [
        .. stock.Additions
            .Where(a => a.Substance.FeedsMicrobes)
            .Select(a => (Addition: a, GramsPerLitre: a.Mass.Grams * a.Substance.Strength.Value / stock.Volume.Litres))
            .OrderByDescending(f => f.GramsPerLitre)
            .ThenBy(f => f.Addition.Id, StringComparer.Ordinal),
    ];
}
