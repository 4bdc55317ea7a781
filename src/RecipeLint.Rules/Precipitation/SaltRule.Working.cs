using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Precipitation;

/// <summary>The calibrated index and the product of totals, side by side.</summary>
internal abstract partial class SaltRule
{
    private protected override Working Fallen(DepositVerdict verdict, RuleContext context)
    {
        var salt = verdict.Deposit;
        var work = new WorkingBuilder($"{salt.Solid.Called} in '{verdict.Stock.Stock.Name}' {Wording.When(salt.State, salt.Solid)}");
        var mean = Measures(work, salt.State, salt.Solid, salt.Salt, salt.Tests[0]);
        var decides = DepositSteps.Write(work, verdict, salt, mean, context);
        return work.Done(salt.Deposits.Count > 0 ? decides : mean);
    }

    private protected override Working Stays(NearestVerdict verdict)
    {
        var work =
            new WorkingBuilder($"{verdict.Solid.Called} in '{verdict.Stock.Stock.Name}' {Wording.When(verdict.State, verdict.Solid)}");
        var mean = Measures(
            work,
            verdict.State,
            verdict.Solid,
            verdict.Salt,
            SaltJudgement.CloseTest(verdict.Solid, verdict.Salt?.Index ?? 0, verdict.Salt));
        return work.Check(verdict.Checks[0], mean, verdict.Checks[0].Limit).Statements(verdict).Done(mean);
    }

    /// <summary>Writes both measures as far as they are there.</summary>
    /// <returns>The one that decides: their mean, or the higher where that alone is near the limit.</returns>
    private static Term Measures(WorkingBuilder work, SolutionState state, Solid solid, SaltVerdict? verdict, DepositTest test)
    {
        var index = verdict is not { CalibratedIndex: null } ? Saturation.Write(work, state.Clear!, solid).Index : null;
        if (verdict is not { ProductIndex: not null } salt)
        {
            return index!;
        }

        var handbook = work.Given("solubility of the pure salt, handbook", salt.HandbookMolPerKg, "mol/kg", "solubility table");
        var factors = new List<Term>();
        foreach (var (component, count) in solid.Composition.Where(c => c.Key != Component.Water))
        {
            var total = work.Given($"{IonWords.Of(component)} in all", state.Mix.Totals[component], "mol/kg", "amounts in the file");
            if (state.Clear!.ProtonatedShare(component) is < 1 and var kept)
            {
                total *= work.Given(
                    $"share of the {IonWords.Of(component)} that still has its protons, over 0.95", kept, "", Saturation.Engine);
            }

            var ratio = count == 1 ? total / handbook : total / (count * handbook);
            factors.Add(count == 1 ? ratio : Term.Power(ratio, count));
        }

        var times = work.Result(
            "product of the totals against that of the saturated pure solution", "total / pure, each as often as the formula has it",
            Term.Product(factors));
        var second = work.Result("index by the totals", "log10 of it", Term.Log10(times));
        if (index is null)
        {
            return second;
        }

        var mean = salt.CalibratedShare == 0.5
            ? work.Result("mean of the two indices", "(saturation index + index by the totals) / 2", (index + second) / 2)
            : Weighted(work, salt, index, second);
        if (test.Bar == DepositBar.CloseAsMixedCrystals)
        {
            return Mixed(work, salt.Mixed!, mean);
        }

        return test.Bar != DepositBar.CloseByOneMeasure ? mean : salt.CalibratedIndex > salt.ProductIndex ? index : second;
    }

    /// <summary>Potassium and ammonium take each other's place in a crystal.</summary>
    private static Term Mixed(WorkingBuilder work, MixedCrystal mixed, Term index)
    {
        var kin = work.Given($"index of {mixed.With.Called}, worked out alike", mixed.IndexOfKin, "", Saturation.Engine);
        Term n = mixed.Exchanged;
        return work.Result(
            "index of mixed crystals of both", "n × log10(10^(index / n) + 10^(index of the other / n)), n of both in a formula",
            n * Term.Log10(Term.TenTo(index / n) + Term.TenTo(kin / n)));
    }

    /// <summary>In strong solutions the activity product loses weight.</summary>
    private static Term Weighted(WorkingBuilder work, SaltVerdict salt, Term index, Term second)
    {
        var share = work.Given("weight of the saturation index at this ionic strength", salt.CalibratedShare, "", Saturation.Engine);
        return work.Result(
            "the two indices, weighted", "weight × saturation index + (1 - weight) × index by the totals",
            share * index + (1 - share) * second);
    }
}
