using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Precipitation;

namespace RecipeLint.Rules.Workings.Precipitation;

/// <summary>The rules on soluble salts: the calibrated index and the product of totals, side by side.</summary>
internal static class SaltWorkings
{
    public static IEnumerable<Working> Of(SaltRule rule, StockFacts stock, RuleContext context)
    {
        var loud = rule.Worst(stock, context).ToList();
        if (loud.Count > 0)
        {
            return loud.Select(s => Salt(stock, s.State, s.Solid, s.Index, context));
        }

        var nearest = SolidRule.JudgedStates(stock)
            .SelectMany(s => s.Salts.Where(v => rule.IsOwn(v.Solid)).Select(v => (State: s, v.Solid, Index: v.MeanIndex()))
                .Concat((s.Clear?.Solids ?? []).Where(x => rule.IsOwn(x.Solid)).Select(x => (State: s, x.Solid, x.Index))))
            .OrderByDescending(x => Rounding.SixDigits(x.Index))
            .FirstOrDefault();
        return nearest.Solid is null
            ? [new WorkingBuilder($"'{stock.Stock.Name}'").Condition("it holds all the ions of a salt of this rule", false).Done()]
            : [Salt(stock, nearest.State, nearest.Solid, nearest.Index, context)];
    }

    private static Working Salt(StockFacts stock, SolutionState state, Solid solid, double mean, RuleContext context)
    {
        var work = new WorkingBuilder($"{SolidOwners.Of(solid)!.Called} in '{stock.Stock.Name}' {Wording.When(state)}");
        var verdict = state.Salts.FirstOrDefault(v => v.Solid == solid);
        var index = verdict.Solid is null || verdict.CalibratedIndex is not null ? Saturation.Write(work, state.Clear!, solid).Index : null;
        var (decides, close) = verdict.Solid is null ? (index!, SaltRule.UnfittedFrom) : Mean(work, stock, verdict, index);
        var deposit = state.Deposit(solid.Name);
        if (verdict.Solid is null && deposit is not null)
        {
            close = 0;
        }

        if (verdict.Solid is not null && deposit is null && Highest(verdict) > SaltVerdicts.NearestByEither && mean <= close)
        {
            work.Test("one of the two measures alone is near the limit", Term.Of(Highest(verdict)), Relation.Over, SaltVerdicts.NearestByEither);
        }
        else if (deposit is null || mean > close)
        {
            work.Test("at least close to the limit", decides, Relation.Over, close);
        }

        if (deposit is not null)
        {
            var grams = Deposits.Weight(work, new Fallout(state, [deposit]));
            work.Test("enough to see", grams, Relation.AtLeast, work.Option("deposit from which a finding is given", "visible", context), "g/L");
            return work.Done(grams);
        }

        return work.Done(decides);
    }

    private static double Highest(SaltVerdict verdict) => Math.Max(verdict.CalibratedIndex ?? verdict.ProductIndex ?? 0, verdict.ProductIndex ?? verdict.CalibratedIndex ?? 0);

    /// <summary>The second measure, by the handbook, and the mean of the two that decides.</summary>
    private static (Term Mean, double Close) Mean(WorkingBuilder work, StockFacts stock, SaltVerdict verdict, Term? calibrated)
    {
        var close = SaltVerdicts.CloseFromIndex(verdict.Solid);
        if (verdict.ProductIndex is null)
        {
            return (calibrated!, close);
        }

        var handbook = work.Given("solubility of the pure salt, handbook", verdict.HandbookMolPerKg, "mol/kg", "solubility table");
        var factors = new List<Term>();
        foreach (var (component, count) in verdict.Solid.Composition.Where(c => c.Key != "H2O"))
        {
            var total = work.Given($"{IonWords.Of(component)} in all", stock.Chemistry.Mix.Totals[component], "mol/kg", "amounts in the file");
            var ratio = count == 1 ? total / handbook : total / (count * handbook);
            factors.Add(count == 1 ? ratio : Term.Power(ratio, count));
        }

        var times = work.Result("product of the totals against that of the saturated pure solution", "total / pure, each as often as the formula has it", Term.Product(factors));
        var second = work.Result("index by the totals", "log10 of it", Term.Log10(times));
        return calibrated is null
            ? (second, close)
            : (work.Result("mean of the two indices", "(saturation index + index by the totals) / 2", (calibrated + second) / 2), close);
    }
}
