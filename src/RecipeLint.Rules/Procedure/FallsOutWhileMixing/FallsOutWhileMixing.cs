using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Mixing;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Procedure;

/// <summary>
/// A solid that falls out at some step although the finished stock holds it, and that no other rule on the order of steps names: acids of
/// preservatives and chelating agents, phosphates of magnesium and the metals, silica, double salts.
/// </summary>
internal sealed class FallsOutWhileMixing : StockRule<PassingDeposit>
{
    public const string RuleName = "falls-out-while-mixing";

    public override string Name => RuleName;

    protected override IEnumerable<PassingDeposit> Judge(StockFacts stock, RuleContext context)
    {
        var from = context.Options<FallsOutWhileMixingOptions>().Solid;
        if (Worst(stock, from) is not { } worst)
        {
            return
            [
                new PassingDeposit(stock, null, null)
                {
                    Checks = [Check.That("a solid that no other rule names forms at a step although the finished stock holds it", false)],
                },
            ];
        }

        var solid = new Check("enough to see", Rounding.SixDigits(worst.Concentration.GramsPerLitre), Relation.AtLeast, from, "g/L");
        return [new PassingDeposit(stock, worst, solid) { Checks = [solid] }];
    }

    protected override Finding Describe(PassingDeposit verdict, RuleContext context)
    {
        var (stock, worst) = (verdict.Stock, verdict.Worst!);
        var solid = worst.There.Solid!;
        var called = solid.Called;
        var stays = worst.Fate == SolidFate.StaysAlthoughItWouldDissolve;
        var state = stock.Mixing.States[worst.First.Index];
        var cause = worst.First.Added.Count > 0 ? $"when {worst.First.Added[^1].Substance.Name} goes in"
            : $"in step '{worst.First.Step.Id}'";
        var grams = worst.There.Mass.Grams;
        var then = stays
            ? $"{Redissolving.Of(solid).Because} What lies at the bottom when the bottle is filled is missing in the stock."
            : worst.Clears is { } clears ? $"It clears again in step '{clears.Step.Id}'; until then nothing can be judged by "
                + "eye." : "It clears again when the stock is filled up.";
        var suppliers = stock.Mixing.Steps.Take(worst.First.Index)
            .SelectMany(s => s.Added)
            .LastOrDefault(
                a => solid.Composition.Any(c => c.Key is not (Component.Hydrogen or Component.Water) && BenchChemistry.Brings(a, c.Key)));
        return context.Find(
            worst.First.Step is AddStep ? worst.First.Step.Place.Child("add") : worst.First.Step.Place,
            $"About {Say.Grams(grams)} of {called} falls out {cause}, in {Say.Litres(worst.First.After.Litres)} at "
                + $"{(state.Ph is { } ph ? $"pH {Say.Ph(ph)}" : "a pH that is not known here")}, although the finished stock would "
                + "hold it. "
            + $"{then} "
            + context.AdviceFor(verdict.Stock).Sentence(new Way(
                "put more water in first or change the order: 'recipelint order' looks for one in which it stays clear", Puts.Keeping)),
            Harm.Damage,
            stays ? Odds.Certain : Odds.Possible) with
        {
            Measured = new Measured("solid", worst.Concentration.GramsPerLitre, verdict.Solid!.Limit, "g/L"),
            Values =
            [
                new NamedValue("solid", grams, "g"),
                new NamedValue("concentration of solid", worst.Concentration.GramsPerLitre, "g/L"),
                .. state.Ph is { } shown ? [new NamedValue("pH", shown, "")] : Array.Empty<NamedValue>(),
                new NamedValue("volume", worst.First.After.Litres, "L"),
            ],
            Related = suppliers is null || suppliers.Place == worst.First.Step.Place ? []
                : [new RelatedPlace(suppliers.Place, "already in the vessel")],
        };
    }

    protected override Working Work(PassingDeposit verdict, RuleContext context)
    {
        var work = new WorkingBuilder($"what falls out while '{verdict.Stock.Stock.Name}' is mixed");
        if (verdict is not { Worst: { } worst, Solid: { } check })
        {
            return work.Statements(verdict).Done();
        }

        var called = worst.There.Solid!.Called;
        var grams = work.Given($"{called} in the vessel at step '{worst.At.Step.Id}'", worst.There.Mass.Grams, "g", From.Engine);
        var litres = work.Given("in the vessel then", worst.At.After.Litres, "L", From.VolumeModel);
        var share = work.Result("solid in a litre", "grams / volume", grams / litres, "g/L");
        return work.Check(check, share, work.Option("limit", context.Options<FallsOutWhileMixingOptions>().Solid)).Done(share);
    }

    /// <summary>
    /// The solid to speak of: a lasting one first, then the earliest; below the limit the one with the most of it, null without any.
    /// </summary>
    private static PassingSolid? Worst(StockFacts stock, double from)
    {
        var mixing = stock.Mixing;

        // Without a solid at any step the finished stock need not be solved.
        if (!mixing.IsProcedure || !stock.IsComplete || mixing.States.All(s => s.Solids.Count == 0)
            || BenchChemistry.Clear(mixing.FinishedState) is null)
        {
            return null;
        }

        return mixing.Passing
            .Where(p => p.Fate != SolidFate.FallsOutOfTheStockAnyway
                && p.There is { Undissolved: null, Solid: { } solid }
                && !HasItsRule(solid, stock, p))
            .Where(p => mixing.States[p.First.Index].Validity.Trust != Trust.OutOfRange)
            .OrderByDescending(p => Rounding.SixDigits(p.Concentration.GramsPerLitre) >= from)
            .ThenBy(p => p.Fate == SolidFate.StaysAlthoughItWouldDissolve ? 0 : 1)
            .ThenBy(p => p.First.Index)
            .ThenByDescending(p => p.Concentration.GramsPerLitre)
            .FirstOrDefault();
    }

    /// <summary>
    /// What the finished stock drops at some temperature is its rule's. Calcium with sulfate or phosphate, and hydroxides of metals whose
    /// acid or chelate comes later, have rules of their own.
    /// </summary>
    private static bool HasItsRule(Solid solid, StockFacts stock, PassingSolid passing) =>
        stock.Chemistry.States.Any(s => s.Deposits.Any(d => d.Solid.Formula == solid.Formula))
        || BenchChemistry.IsOfCalciumWithItsPartner(solid)
        || (BenchChemistry.IsHydroxideOfAny(solid)
            && stock.Mixing.Steps.Skip(passing.First.Index + 1).SelectMany(s => s.Added).Any(BenchChemistry.Protects));
}

/// <summary>A solid that forms on the way to a clear stock.</summary>
/// <param name="Worst">Null where none does.</param>
/// <param name="Solid">g/L of it.</param>
internal sealed record PassingDeposit(StockFacts Stock, PassingSolid? Worst, Check? Solid) : Verdict;
