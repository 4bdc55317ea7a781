using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Analysis.Uncertainty;

/// <summary>One weighing of a stock, as rules on scales look at it.</summary>
/// <param name="AdditionId">Step id.</param>
/// <param name="Load">
/// Against the capacity, with the stock's vessel where the file names one; a file does not say whether a substance is weighed in that
/// vessel or in a boat, so <see cref="ScaleLoad.OverWithVessel"/> is not yet a mistake.
/// </param>
public sealed record WeighingFact(string AdditionId, Place Place, Substance Substance, Weighing Weighing, ScaleLoad Load)
{
    /// <summary>The weighings of a stock in the order of its steps; what comes through aliquots was weighed for another stock.</summary>
    public static IReadOnlyList<WeighingFact> Of(StockFacts stock)
    {
        var vessel = stock.Stock.Vessel is { } named ? stock.Settings.Vessels.FirstOrDefault(v => v.Name == named.Value) : null;
        var facts = new List<WeighingFact>();
        foreach (var addition in stock.Additions)
        {
            if (addition is { Scale: { } scale, ThroughAliquot: false })
            {
                var weighing = new Weighing(scale, addition.Mass);
                facts.Add(new WeighingFact(addition.Id, addition.Place, addition.Substance, weighing, weighing.Load(vessel?.Tare)));
            }
        }

        return facts;
    }
}
