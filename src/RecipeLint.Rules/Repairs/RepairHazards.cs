using RecipeLint.Analysis;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Repairs;

/// <summary>The hazard gate before a repair: none may bring a danger to people, and one that is there goes only with its cause.</summary>
internal static class RepairHazards
{
    /// <summary>True when the repair must not be offered.</summary>
    public static bool Speak(Finding finding, Facts before, Facts after) =>
        after.Stocks.Any(stock => Brings(before.FindStock(stock.Stock.File), stock)) || LeavesTheCause(finding, before, after);

    private static bool Brings(StockFacts? before, StockFacts after)
    {
        if (ReferenceEquals(before?.Stock, after.Stock))
        {
            return false;
        }

        var there = before is null ? [] : HazardGate.Of(before).Present.ToDictionary(h => h.Kind, h => h.Grade);
        return HazardGate.Of(after).Present.Any(h => !there.TryGetValue(h.Kind, out var grade) || h.Grade > grade);
    }

    /// <summary>
    /// More water between two that must not meet only hides them from a threshold: after a repair of such a finding no stock holds both.
    /// </summary>
    private static bool LeavesTheCause(Finding finding, Facts before, Facts after)
    {
        if (finding.Rule.Family != "people" || before.FindStock(finding.Place.File) is not { } stock)
        {
            return false;
        }

        var pairs = HazardGate.Of(stock).Present
            .Where(h => h is { NeedsParting: true, From: not null, With: not null } && Names(finding, h))
            .Select(h => (One: h.From!.Substance.Id, Other: h.With!.Substance.Id))
            .ToList();
        return pairs.Exists(p => after.Stocks.Any(s => Holds(s, p.One) && Holds(s, p.Other)));
    }

    /// <summary>A finding that stands at one of the two, or points to it, is about them.</summary>
    private static bool Names(Finding finding, Hazard hazard) =>
        finding.Related.Select(r => r.Place).Append(finding.Place).Any(p => p == hazard.From!.Place || p == hazard.With!.Place);

    private static bool Holds(StockFacts stock, string substance) =>
        stock.Additions.Any(a => a.Substance.Id == substance) || stock.Adjustments.Any(a => a.Reagent?.Id == substance);
}
