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

        // What fizzes a little, or warms, forbids a tight cap and no more: a note on the bench sheet, no reason to withhold a repair.
        var there = before is null ? [] : HazardGate.Of(before).Present.ToDictionary(h => h.Kind, h => h.Grade);
        return HazardGate.Of(after).Present.Any(h => h.Forbids(VesselAction.Order)
            && (!there.TryGetValue(h.Kind, out var grade) || h.Grade > grade));
    }
}
