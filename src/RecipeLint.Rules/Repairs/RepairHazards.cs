using RecipeLint.Analysis;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Recipes.Documents;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Repairs;

/// <summary>The hazard gate before a repair.</summary>
internal static class RepairHazards
{
    /// <summary>A batch weighed to another digit is the same batch.</summary>
    private const double More = 1.001;

    /// <summary>None may bring a danger to people that was not there, or make one graver.</summary>
    public static bool Arise(Facts before, Facts after) =>
        after.Stocks.Any(stock => before.FindStock(stock.Stock.File) is var was && !ReferenceEquals(was?.Stock, stock.Stock)
            && Arise(was is null ? null : HazardGate.Of(was), HazardGate.Of(stock)))
        || after.Recipes.Any(recipe => Arise(
            before.FindRecipe(recipe.Recipe.File) is { } was ? HazardGate.Of(was) : null, HazardGate.Of(recipe)));

    /// <summary>
    /// Where a danger stands, only what takes a danger away changes the vessel, and it adds nothing and keeps it neither otherwise nor for
    /// another time: the rules on what hurts people say how the cause is taken away, and that comes first.
    /// </summary>
    public static bool Tinkers(Facts before, Facts after) =>
        after.Stocks.Any(now => before.FindStock(now.Stock.File) is { } was && !ReferenceEquals(was.Stock, now.Stock)
            && (Tinkers(HazardGate.Of(was), HazardGate.Of(now), IsKeptOtherwise(was, now)) || IsWarmedInDanger(was, now)))
        || after.Recipes.Any(now => before.FindRecipe(now.Recipe.File) is { } was
            && Tinkers(HazardGate.Of(was), HazardGate.Of(now), keptOtherwise: false));

    private static bool Arise(HazardReport? before, HazardReport after)
    {
        // What fizzes a little, or warms, forbids a tight cap and no more: a note on the bench sheet, no reason to withhold a repair.
        var there = before is null ? [] : before.Present.ToDictionary(h => h.Kind, h => h.Grade);
        return after.Present.Any(h => (h.Forbids(VesselAction.Order) || IsTooMuchGas(before, h))
            && (!there.TryGetValue(h.Kind, out var grade) || h.Grade > grade || IsTooMuchGas(before, h)));
    }

    /// <summary>More carbon dioxide than acid may be advised with, and more of it than before.</summary>
    private static bool IsTooMuchGas(HazardReport? before, Hazard hazard) =>
        hazard.Kind == HazardKind.CarbonDioxidePressure && hazard.Value > VesselAdvice.MostGas
        && !(before?.Find(hazard.Kind) is { } was && was.Value * More >= hazard.Value);

    private static bool Tinkers(HazardReport before, HazardReport after, bool keptOtherwise)
    {
        var left = VesselAdvice.Dangers(after).Select(h => h.Kind).ToHashSet();
        if (left.Count == 0)
        {
            return false;
        }

        var (was, now) = (before.Holding, after.Holding);
        return VesselAdvice.Dangers(before).Any()
            && (IsMore(was, now) || keptOtherwise || (IsMore(now, was) && VesselAdvice.Dangers(before).All(h => left.Contains(h.Kind))));
    }

    /// <summary>Something that was not in it, or more of something that was.</summary>
    private static bool IsMore(Holding was, Holding now) =>
        now.Items.GroupBy(i => i.Substance.Id, StringComparer.Ordinal).Any(g => g.Sum(i => i.Grams)
            > More * was.Items.Where(i => i.Substance.Id == g.Key).Sum(i => i.Grams));

    /// <summary>One more warming than before of what the gate forbids to heat: what fizzes or reacts does so faster.</summary>
    private static bool IsWarmedInDanger(StockFacts was, StockFacts now) =>
        Warmings(now) > Warmings(was) && HazardGate.Of(now).Forbids(VesselAction.Heat) is not null;

    private static int Warmings(StockFacts stock) => stock.Stock.Steps.OfType<HandlingStep>().Count(h => h.Handling == Handling.Warm);

    private static bool IsKeptOtherwise(StockFacts was, StockFacts now) =>
        was.StorageTemperature != now.StorageTemperature || was.Stock.Keep?.For?.Value != now.Stock.Keep?.For?.Value;
}
