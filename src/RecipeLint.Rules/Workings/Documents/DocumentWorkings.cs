using RecipeLint.Recipes.Documents;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Workings;

/// <summary>The rules on documents that turn on a number; the others say plainly what in the file triggers them.</summary>
internal static class DocumentWorkings
{
    public static IEnumerable<RuleWorkings> All { get; } =
    [
        RuleWorkings.OnWaters("unbalanced-water", Balance),
    ];

    private static IEnumerable<Working> Balance(WaterDocument water, RuleContext context)
    {
        var work = new WorkingBuilder($"charges of the water '{water.Name}'");
        var (cations, anions) = (new List<Term>(), new List<Term>());
        foreach (var value in water.Values.Where(v => IsStated(v) && v.Component != "CO3-2"))
        {
            var charge = Analysis.Solutions.Components.Charge(value.Component);
            if (charge == 0)
            {
                continue;
            }

            var middle = 1000 * (value.Concentration.Low.MolesPerLitre + value.Concentration.High.MolesPerLitre) / 2;
            var moles = work.Given($"{value.Key.Value}, middle of the year", middle, "mmol/L", "analysis");
            (charge > 0 ? cations : anions).Add(work.Result("its charge", $"mmol/L × {Math.Abs(charge)}", moles * Math.Abs(charge), "meq/L"));
        }

        if (water.Alkalinity is { } alkalinity)
        {
            anions.Add(work.Given("alkalinity", 1000 * (alkalinity.Value.Low.EquivalentsPerLitre + alkalinity.Value.High.EquivalentsPerLitre) / 2, "meq/L", "analysis"));
        }

        if (cations.Count == 0 || anions.Count == 0)
        {
            yield return work.Condition("the analysis states cations and anions", false).Done();
            yield break;
        }

        var plus = cations.Count == 1 ? cations[0] : work.Result("cations", "sum", Term.Sum(cations), "meq/L");
        var minus = anions.Count == 1 ? anions[0] : work.Result("anions", "sum", Term.Sum(anions), "meq/L");
        var apart = work.Result("imbalance", "100 × |cations - anions| / (cations + anions)", 100 * Term.Size(plus - minus) / (plus + minus), "%");
        work.Test("worse than a laboratory lets pass", apart, Relation.Over, WaterBalance.LimitPercent, "%");
        work.Test("enough in it to say so", work.Result("charges in all", "cations + anions", plus + minus, "meq/L"), Relation.AtLeast, 1000 * WaterBalance.LeastEquivalentsPerLitre, "meq/L");
        work.Condition("it states at least three of Ca, Mg, Na, alkalinity, Cl and SO4", Majors(water) >= WaterBalance.MajorsNeeded);
        yield return work.Done(apart);
    }

    /// <summary>True for an ion of the analysis, false for one estimated from hardness or conductivity.</summary>
    private static bool IsStated(WaterValue value) => value.Key.Place.Pointer.Value.StartsWith("/ions/", StringComparison.Ordinal);

    private static int Majors(WaterDocument water) =>
        new[] { "Ca+2", "Mg+2", "Na+", "Cl-", "SO4-2" }.Count(c => water.Values.Any(v => v.Component == c && IsStated(v)))
        + (water.Alkalinity is null && water.Values.All(v => v.Component != "CO3-2") ? 0 : 1);
}
