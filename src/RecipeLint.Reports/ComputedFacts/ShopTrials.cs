using RecipeLint.Analysis;
using RecipeLint.Analysis.Trials;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.ComputedFacts;

/// <summary>A stock mixed many times over with its shop's equipment, judged with its shop's limits.</summary>
internal static class ShopTrials
{
    /// <param name="mixings">How many; 1 to 1000.</param>
    public static MixingTrials Of(Facts facts, StockFacts stock, int mixings) =>
        MixingTrials.Of(stock, facts.FindStock, DepositOptions.Of(stock.Settings), mixings);
}
