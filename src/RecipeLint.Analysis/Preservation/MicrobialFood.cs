using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Analysis.Preservation;

/// <summary>One thing in a stock that moulds and bacteria live on.</summary>
/// <param name="Share">Of what is weighed or poured, 0 to 1: what counts as food.</param>
/// <param name="GramsPerLitre">Of that.</param>
/// <param name="IsAsSold">True for a liquid extract that does not say what is in it: it counts with all its water.</param>
public sealed record MicrobialFood(AdditionFacts Addition, double Share, double GramsPerLitre, bool IsAsSold)
{
    /// <summary>Additions that feed microbes with what they bring in g/L, largest first.</summary>
    public static IReadOnlyList<MicrobialFood> In(StockFacts stock) =>
    [
        .. stock.Additions
            .Where(a => a.Substance.FeedsMicrobes)
            .Select(a => Of(a, stock.Volume.Litres))
            .OrderByDescending(f => f.GramsPerLitre)
            .ThenBy(f => f.Addition.Id, StringComparer.Ordinal),
    ];

    /// <summary>What all of it is called: "organic matter", unless its water counts too.</summary>
    public static string Called(IReadOnlyList<MicrobialFood> all) =>
        !all.Any(f => f.IsAsSold) ? "organic matter"
        : all.All(f => f.IsAsSold) ? "extract as sold"
        : "organic matter and extract as sold";

    private static MicrobialFood Of(AdditionFacts addition, double litres)
    {
        var substance = addition.Substance;
        var carbon = substance.Extract is null ? 0 : substance.Content[Element.C];
        var share = carbon > 0 ? Math.Min(1, carbon / ExtractOrigins.CarbonOfDryMatter) : substance.Strength.Value;
        return new MicrobialFood(
            addition, share, addition.Mass.Grams * share / litres,
            substance.Extract is not null && carbon <= 0 && substance.Form == PhysicalForm.Liquid);
    }
}
