using RecipeLint.Analysis;
using RecipeLint.Analysis.Uncertainty;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Weighing;

namespace RecipeLint.Rules.Workings.Weighing;

/// <summary>The uncertainty budget of an element of the final solution, by the GUM.</summary>
internal static class UncertaintyWorkings
{
    private const int MostSources = 6;

    public static IEnumerable<RuleWorkings> All { get; } = [RuleWorkings.OnRecipes("element-too-uncertain", Elements)];

    private static IEnumerable<Working> Elements(RecipeFacts recipe, RuleContext context)
    {
        var known = ElementUncertainty.Of(recipe, context.Facts.FindStock).Elements.Values
            .Where(e => PlantNutrients.Contains(e.Key) && e.Shares.Count > 0)
            .OrderByDescending(e => e.RelativeExpanded).ThenBy(e => e.Key, StringComparer.Ordinal)
            .ToList();
        var causes = ReportedCauses.Of(context.Facts, recipe);
        foreach (var element in known)
        {
            yield return Budget(recipe, element, causes, context);
        }

        if (known.Count == 0)
        {
            yield return new WorkingBuilder($"'{recipe.Recipe.Name}'").Condition("it holds a nutrient whose uncertainty can be told", false).Done();
        }
    }

    private static Working Budget(RecipeFacts recipe, ElementUncertainty element, ReportedCauses causes, RuleContext context)
    {
        var work = new WorkingBuilder($"the uncertainty budget of {element.Key} in '{recipe.Recipe.Name}'");
        var parts = element.Shares.Take(MostSources)
            .Select(s => work.Given($"standard uncertainty from {s.Source.Name}", 100 * element.RelativeStandard * Math.Sqrt(s.Fraction), "%", "budget"))
            .ToList();
        var rest = element.Shares.Skip(MostSources).Sum(s => s.Fraction);
        if (rest > 0)
        {
            parts.Add(work.Given("all other sources together", 100 * element.RelativeStandard * Math.Sqrt(rest), "%", "budget"));
        }

        var combined = work.Result("combined standard uncertainty", "root of the sum of the squares", Term.Root(Term.Sum(parts.Select(p => Term.Power(p, 2)))), "%");
        work.Result("share of the first", "100 × (its part / combined)^2", 100 * Term.Power(parts[0] / combined, 2), "%");
        var expanded = work.Result("expanded uncertainty", "2 × combined", 2 * combined, "%");
        var found = work.Given($"{element.Key} in the solution", element.Concentration.MilligramsPerLitre, "mg/L", "amounts in the file");
        work.Result("at least", "found × (1 - expanded / 100)", found * (1 - (expanded / 100)), "mg/L");
        work.Result("at most", "found × (1 + expanded / 100)", found * (1 + (expanded / 100)), "mg/L");
        work.Test("less sure than an element should be", expanded, Relation.Over, work.Option("limit", "limit", context), "%");
        if (!recipe.IsComplete || !ElementTooUncertain.Supplied(recipe, element.Key))
        {
            work.Condition("the doses and not the water bring most of it", false);
        }

        if (causes.Has(element.Shares[0].Source))
        {
            work.Condition("no rule on weights, measures or vessels has reported its largest source already", false);
        }

        return work.Done(expanded);
    }
}
