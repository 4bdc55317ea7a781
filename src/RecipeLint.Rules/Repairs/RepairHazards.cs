using RecipeLint.Analysis;
using RecipeLint.Analysis.Hazards;

namespace RecipeLint.Rules.Repairs;

/// <summary>The hazard gate before a repair: none may bring a danger to people that was not there, or make one graver.</summary>
internal static class RepairHazards
{
    public static bool Arise(Facts before, Facts after) => after.Stocks.Any(stock => Arise(before.FindStock(stock.Stock.File), stock));

    private static bool Arise(StockFacts? before, StockFacts after)
    {
        if (ReferenceEquals(before?.Stock, after.Stock))
        {
            return false;
        }

        var there = before is null ? [] : HazardGate.Of(before).Present.ToDictionary(h => h.Kind, h => h.Grade);
        return HazardGate.Of(after).Present.Any(h => !there.TryGetValue(h.Kind, out var grade) || h.Grade > grade);
    }
}
