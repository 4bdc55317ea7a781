using RecipeLint.Analysis;
using RecipeLint.Recipes.Documents;
using RecipeLint.Rules.Documents;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Workings;

/// <summary>The rules on documents that turn on a number; the others say plainly what in the file triggers them.</summary>
internal static class DocumentWorkings
{
    public static IEnumerable<RuleWorkings> All { get; } =
    [
        RuleWorkings.OnRecipes("dose-contradicts-dilution", Dose),
        RuleWorkings.OnWaters("unbalanced-water", Balance),
        new RuleWorkings("implausible-assay", Assays),
    ];

    private static IEnumerable<Working> Dose(RecipeFacts recipe, RuleContext context)
    {
        var pairs = recipe.Doses.Select(d => DoseContradictsDilution.Pair.Of(d, recipe.Recipe.Final?.Place)).OfType<DoseContradictsDilution.Pair>().ToList();
        if (pairs.Count == 0)
        {
            yield return new WorkingBuilder($"the doses of '{recipe.Recipe.Name}'").Condition("a stock says which dose it is made for, and the recipe states another way", false).Done();
        }

        foreach (var pair in pairs)
        {
            var work = new WorkingBuilder($"the dose of '{pair.Stock.Name}'");
            var used = work.Given("dosed in the recipe", pair.Used.MillilitresPerLitre, "mL/L", "recipe");
            var stated = work.Given("dose it is made for", pair.Stated.Value.MillilitresPerLitre, "mL/L", "stock");
            var factor = work.Result("dosed against made for", "dosed / made for", used / stated);
            var apart = work.Result("apart, the same both ways round", "100 × (larger / smaller - 1)", 100 * ((Term.Larger(used, stated) / Term.Smaller(used, stated)) - 1), "%");
            yield return work.Test("further apart than rounding", apart, Relation.Over, work.Option("tolerance", "tolerance", context), "%").Done(factor);
        }
    }

    private static IEnumerable<Working> Assays(WorkingSubject subject, RuleContext context) =>
        subject.Stocks.SelectMany(s => Assays(s.Stock.Name, ImplausibleAssay.Declared(s), context.For(s.Stock.File)))
            .Concat(subject.Recipes.SelectMany(r => Assays(r.Recipe.Name, ImplausibleAssay.Declared(r), context.For(r.Recipe.File))));

    private static IEnumerable<Working> Assays(string name, IReadOnlyList<AdditionFacts> declared, RuleContext context)
    {
        if (declared.Count == 0)
        {
            yield return new WorkingBuilder($"the assays of '{name}'").Condition("one is declared", false).Done();
        }

        foreach (var addition in declared)
        {
            var work = new WorkingBuilder($"{addition.Substance.Name} in '{name}'");
            var assay = work.Given("assay", addition.Assay.Percent, "%", "file");
            if (ImplausibleAssay.Least(addition.Substance, addition.Assay, context) is not { } least)
            {
                yield return work.Condition("it is sold by its purity, and the figure is not its strength", false).Done();
                continue;
            }

            var usual = addition.Substance.TypicalAssay is { } typical ? $"In the trade it has {typical.Value}." : "No usual range stands in the catalogue.";
            yield return work.Remark(usual).Test("lower than anything that is sold", assay, Relation.Under, work.Given("least", least, "%", "options"), "%").Done(assay);
        }
    }

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
