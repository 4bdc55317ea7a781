using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Precipitation;

/// <summary>How far a soluble salt is past saturation: by its activities and by the totals, as the judgement weighs them.</summary>
internal static class SaltSteps
{
    /// <summary>Writes how many times the limit a solid is, by both measures where it is a salt that has both.</summary>
    public static Term Times(WorkingBuilder work, SolutionState state, Solid solid)
    {
        foreach (var salt in state.Salts)
        {
            if (salt.Solid == solid && salt.ProductIndex is not null)
            {
                return work.Result(
                    "times the limit", "10^index", Term.TenTo(Write(work, state, solid, salt, DepositBar.PastTheLimit)));
            }
        }

        return Saturation.Write(work, state.Clear!, solid).Times;
    }

    /// <summary>Writes both measures as far as they are there.</summary>
    /// <returns>The one that decides: their mean, or the higher where that alone is near the limit.</returns>
    public static Term Write(WorkingBuilder work, SolutionState state, Solid solid, SaltVerdict? verdict, DepositBar bar)
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
        if (salt.LogHeld != 0)
        {
            times = work.Result(
                "that, against what is held beside the rest", "product / how many times it is held",
                times / work.Given(
                    "how many times that product measured mixtures of this kind hold", Math.Pow(10, salt.LogHeld), "", Saturation.Engine));
        }

        var second = work.Result("index by the totals", "log10 of it", Term.Log10(times));
        if (index is null)
        {
            return second;
        }

        var mean = salt.CalibratedShare == 0.5
            ? work.Result("mean of the two indices", "(saturation index + index by the totals) / 2", (index + second) / 2)
            : Weighted(work, salt, index, second);
        if (bar == DepositBar.CloseAsMixedCrystals)
        {
            return Mixed(work, salt.Mixed!, mean);
        }

        return bar != DepositBar.CloseByOneMeasure ? mean : salt.CalibratedIndex > salt.ProductIndex ? index : second;
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
