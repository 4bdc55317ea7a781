using RecipeLint.Analysis;
using RecipeLint.Analysis.Mixing;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Precipitation;

namespace RecipeLint.Rules.Procedure;

/// <summary>
/// A solid that falls out at some step although the finished stock holds it, and that no other rule on the order of steps names: acids of
/// preservatives and chelating agents, phosphates of magnesium and the metals, silica, double salts.
/// </summary>
public sealed class FallsOutWhileMixing : StockRule
{
    public override string Name => "falls-out-while-mixing";

    public override IEnumerable<Finding> Judge(StockFacts stock, RuleContext context)
    {
        var from = context.Number("solid");
        return Worst(stock, from) is { } worst && Rounding.SixDigits(worst.Concentration.GramsPerLitre) >= from ? [Tell(worst, stock, context)] : [];
    }

    /// <summary>The solid to speak of: a lasting one first, then the earliest; below the limit the one with the most of it, null without any.</summary>
    internal static PassingSolid? Worst(StockFacts stock, double from)
    {
        var mixing = stock.Mixing;
        if (!mixing.IsProcedure || !stock.IsComplete || BenchChemistry.Clear(mixing.FinishedState) is null)
        {
            return null;
        }

        return mixing.Passing
            .Where(p => p.Fate != SolidFate.FallsOutOfTheStockAnyway && p.There is { Undissolved: null, Solid: { } solid } && !HasItsRule(solid, stock, p))
            .Where(p => mixing.States[p.First.Index].Validity.Trust != Trust.OutOfRange)
            .OrderByDescending(p => Rounding.SixDigits(p.Concentration.GramsPerLitre) >= from)
            .ThenBy(p => p.Fate == SolidFate.StaysAlthoughItWouldDissolve ? 0 : 1)
            .ThenBy(p => p.First.Index)
            .ThenByDescending(p => p.Concentration.GramsPerLitre)
            .FirstOrDefault();
    }

    /// <summary>What the finished stock drops at some temperature is its rule's. Calcium with sulfate or phosphate, and hydroxides of metals whose acid or chelate comes later, have rules of their own.</summary>
    private static bool HasItsRule(Solid solid, StockFacts stock, PassingSolid passing) =>
        stock.Chemistry.States.Any(s => s.Deposits.Any(d => d.Solid.Formula == solid.Formula))
        || ConcentrateOntoConcentrate.Fits(solid)
        || (MetalBeforeChelateOrAcid.IsHydroxideOfAny(solid)
            && stock.Mixing.Steps.Skip(passing.First.Index + 1).SelectMany(s => s.Added).Any(MetalBeforeChelateOrAcid.Protects));

    private static Finding Tell(PassingSolid worst, StockFacts stock, RuleContext context)
    {
        var solid = worst.There.Solid!;
        var called = SolidOwners.Of(solid)?.Called ?? solid.Name;
        var stays = worst.Fate == SolidFate.StaysAlthoughItWouldDissolve;
        var state = stock.Mixing.States[worst.First.Index];
        var cause = worst.First.Added.Count > 0 ? $"when {worst.First.Added[^1].Substance.Name} goes in" : $"in step '{worst.First.Step.Id}'";
        var grams = worst.There.Mass.Grams;
        var then = stays
            ? $"{Redissolving.Of(solid).Because} What lies at the bottom when the bottle is filled is missing in the stock."
            : worst.Clears is { } clears ? $"It clears again in step '{clears.Step.Id}'; until then nothing can be judged by eye." : "It clears again when the stock is filled up.";
        var suppliers = stock.Mixing.Steps.Take(worst.First.Index)
            .SelectMany(s => s.Added)
            .LastOrDefault(a => solid.Composition.Any(c => c.Key is not ("H+" or "H2O") && a.ComponentMoles.GetValueOrDefault(c.Key) > 0));
        return context.Find(
            worst.First.Step is AddStep ? worst.First.Step.Place.Child("add") : worst.First.Step.Place,
            $"About {Say.Grams(grams)} of {called} falls out {cause}, in {Say.Litres(worst.First.After.Litres)} at pH {Say.Number(state.Ph ?? 0)}, although the finished stock would hold it. "
            + $"{then} "
            + "Put more water in first or change the order: 'recipelint order' looks for one in which it stays clear.",
            stays ? null : Level.Note) with
        {
            Measured = new Measured("solid", worst.Concentration.GramsPerLitre, context.Number("solid"), "g/L"),
            Values =
            [
                new NamedValue("solid", grams, "g"),
                new NamedValue("concentration of solid", worst.Concentration.GramsPerLitre, "g/L"),
                new NamedValue("pH", state.Ph ?? 0, ""),
                new NamedValue("volume", worst.First.After.Litres, "L"),
            ],
            Related = suppliers is null || suppliers.Place == worst.First.Step.Place ? [] : [new RelatedPlace(suppliers.Place, "already in the vessel")],
        };
    }
}
