using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Precipitation;

namespace RecipeLint.Rules.Workings.Precipitation;

/// <summary>The rules on sparingly soluble solids in a stock.</summary>
internal static class StockSolidWorkings
{
    public static IEnumerable<Working> Of(SolidRule rule, StockFacts stock, RuleContext context)
    {
        var states = rule.StatesOf(stock);
        if (states.Count == 0)
        {
            return [Silent(stock, "the equilibrium of the stock can be computed")];
        }

        var fallouts = rule.Fallouts(stock, states, 0).ToList();
        var loud = fallouts.Where(f => f.GramsPerLitre >= context.Number("visible") && rule.LosesEnough(f, context)).ToList();
        if (loud.Count > 0)
        {
            return loud.Select(f => Fallen(rule, stock, f, context));
        }

        if (Otherwise(rule, stock, states, context) is { } other)
        {
            return [other];
        }

        if (fallouts.Count > 0)
        {
            return fallouts.Select(f => Fallen(rule, stock, f, context));
        }

        return [Clear(rule, stock, states)];
    }

    private static Working Silent(StockFacts stock, string condition) =>
        new WorkingBuilder($"'{stock.Stock.Name}'").Condition(condition, false).Done();

    private static Working Fallen(SolidRule rule, StockFacts stock, Fallout fallout, RuleContext context)
    {
        var work = new WorkingBuilder($"{fallout.Owned.Called} in '{stock.Stock.Name}' {Wording.When(fallout.State)}");
        var (times, _) = Write(work, stock, fallout.State, fallout.Largest.Solid);
        work.Test("past the limit", times, Relation.Over, 1);
        var grams = Deposits.Weight(work, fallout);
        work.Test("enough to see", grams, Relation.AtLeast, work.Option("deposit from which a finding is given", "visible", context), "g/L");
        if (rule.CountedMetals.Count > 0 && fallout.Deposits.All(d => d.Solid.Composition.Any(c => rule.CountedMetals.Contains(c.Key))))
        {
            var metal = rule.CountedMetals.MaxBy(fallout.ShareOf)!;
            work.Test("enough of the metal to matter", Deposits.Lost(work, fallout, metal), Relation.AtLeast, work.Option("share that counts", "metalShare", context), "%");
        }

        work.Remark(Deposits.Doubt(fallout, context.Number("nearLimit")));
        return work.Done(grams);
    }

    /// <summary>Nothing of its own falls out: the solid that is nearest to it.</summary>
    private static Working Clear(SolidRule rule, StockFacts stock, List<SolutionState> states)
    {
        if (Deposits.Nearest(states, s => rule.IsOwn(s) && s.Role is SolidRole.FormsReadily or SolidRole.SolubleSalt && rule.MayForm(stock, s)) is not var (state, solid, _))
        {
            var solids = SolidOwners.Listed.Where(o => o.Rule == rule.Name).Select(o => o.Called).Distinct(StringComparer.Ordinal).ToList();
            return Silent(stock, $"it holds all the ions of {(solids.Count > 3 ? "a solid of this rule" : string.Join(" or of ", solids))}, in a form in which they can meet");
        }

        var work = new WorkingBuilder($"{SolidOwners.Of(solid)!.Called} in '{stock.Stock.Name}' {Wording.When(state)}, where it is nearest to falling out");
        var (times, _) = Write(work, stock, state, solid);
        work.Test("past the limit", times, Relation.Over, 1);
        if (times.Value > 1)
        {
            work.Condition("something is left of it once all that falls out more readily has settled", false);
        }

        return work.Done();
    }

    /// <summary>What the rule says where nothing readily falls out: solids that take weeks, and phosphate that only the pH keeps dissolved.</summary>
    private static Working? Otherwise(SolidRule rule, StockFacts stock, List<SolutionState> states, RuleContext context)
    {
        if (rule is PhosphateInTraceStock phosphate)
        {
            return phosphate.AtWorstPh(stock, context) is var (settled, grams) ? KeptClearByPh(stock, settled, grams, context) : null;
        }

        if (rule is SaltRule || SlowSolids.Worst(rule.Name, stock, states, context, SolidRule.KeptDays) is not var (state, solid, _, slow))
        {
            return null;
        }

        var work = new WorkingBuilder($"{SolidOwners.Of(solid)!.Called} in '{stock.Stock.Name}' {Wording.When(state)}; it forms over weeks");
        var (_, index) = Write(work, stock, state, solid);
        work.Test(
            "past the limit by more than the doubt", index, Relation.Over, Math.Max(context.Number("nearLimit"), SolidOwners.Of(solid)!.Spread));
        var kept = stock.Stock.Keep?.For?.Value.Days;
        if (kept is { } days)
        {
            work.Test("kept long enough for it", work.Given("time it is kept", days, "days", "file"), Relation.Over, SolidRule.KeptDays, "days");
        }

        var most = work.Given("most of it that can settle", slow, "g/L", Saturation.Engine);
        work.Test("enough to see", most, Relation.AtLeast, work.Option("deposit from which a finding is given", "visible", context), "g/L");
        return work.Done(most);
    }

    private static Working KeptClearByPh(StockFacts stock, Solid solid, double grams, RuleContext context)
    {
        var state = stock.Chemistry.Mixing;
        var work = new WorkingBuilder($"{SolidOwners.Of(solid)!.Called} in '{stock.Stock.Name}', kept dissolved by its pH alone");
        Write(work, stock, state, solid);
        work.Remark("Now it stays dissolved. The same amounts at the pH of the worst case:");
        var pH = work.Given("pH now", state.PhBeforeDeposit, "", Saturation.Engine);
        work.Test("the pH can still rise", pH, Relation.Under, work.Option("pH of the worst case", "worstCasePh", context));
        var dilution = work.Given("dilution it is made for, 1 to", stock.Stock.Dose!.Value.Dilution, "", "file");
        work.Test("a trace stock", dilution, Relation.AtLeast, work.Option("dilution of a trace stock", "traceDilution", context));
        var settles = work.Given("settles at that pH", grams, "g/L", Saturation.Engine);
        work.Test("enough to see", settles, Relation.AtLeast, work.Option("deposit from which a finding is given", "visible", context), "g/L");
        return work.Done(settles);
    }

    /// <summary>The totals that are weighed in, then the ion product.</summary>
    private static (Term Times, Term Index) Write(WorkingBuilder work, StockFacts stock, SolutionState state, Solid solid)
    {
        foreach (var component in solid.Composition.Where(c => c.Key is not ("H2O" or "H+") && c.Value > 0).Select(c => c.Key))
        {
            if (stock.Chemistry.Mix.Totals[component] is > 0 and var total)
            {
                work.Given($"{IonWords.Of(component)} in all, in any form", total, "mol/kg", "amounts in the file");
            }
        }

        return Saturation.Write(work, state.Clear!, solid);
    }
}
