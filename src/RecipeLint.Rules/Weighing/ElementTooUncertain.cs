using RecipeLint.Analysis;
using RecipeLint.Analysis.Uncertainty;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Weighing;

/// <summary>
/// An element the recipe supplies whose concentration is not known well enough, by the law of propagation of uncertainty; one finding for each
/// cause, with the elements it spoils.
/// </summary>
public sealed class ElementTooUncertain : WorkspaceRule, IProposesRepairs
{
    /// <summary>Part of an element that has to come from the doses for the recipe to answer for it.</summary>
    private const double SuppliedFrom = 0.5;

    public override string Name => "element-too-uncertain";

    public override IEnumerable<Finding> Judge(Facts facts, RuleContext context) =>
        facts.Recipes
            .Where(r => r.IsComplete)
            .SelectMany(r => Of(facts, r, context))
            .GroupBy(f => f.Place)
            .Select(g => Finding([.. g.OrderByDescending(f => f.Relative).ThenBy(f => f.Key, StringComparer.Ordinal)], context));

    private static IEnumerable<PoorlyKnown> Of(Facts facts, RecipeFacts recipe, RuleContext context)
    {
        var limit = context.For(recipe.Recipe.File).Number("limit") / 100;
        var over = ElementUncertainty.Of(recipe, facts.FindStock).Elements.Values
            .Where(e => PlantNutrients.Contains(e.Key) && Rounding.SixDigits(e.RelativeExpanded) > limit && Supplied(recipe, e.Key) && e.Shares.Count > 0)
            .ToList();
        if (over.Count == 0)
        {
            yield break;
        }

        var causes = ReportedCauses.Of(facts, recipe);
        foreach (var element in over.Where(e => !causes.Has(e.Shares[0].Source)))
        {
            var source = element.Shares[0].Source;
            var place = causes.WhereUsed(source) ?? recipe.Recipe.Place.Child("doses").Key;
            yield return new PoorlyKnown(recipe, element, source, element.Shares[0].Fraction, place, limit);
        }
    }

    internal static bool Supplied(RecipeFacts recipe, string key) =>
        recipe.Elements.TryGetValue(key, out var fact)
        && fact.Contributions.Where(c => c.Source != "water").Sum(c => c.Concentration.GramsPerLitre) >= SuppliedFrom * fact.Concentration.GramsPerLitre;

    private static Finding Finding(List<PoorlyKnown> same, RuleContext context)
    {
        var worst = same[0];
        var keys = same.Select(s => s.Key).Distinct().Order(StringComparer.Ordinal).ToList();
        var milligrams = worst.Known.Concentration.MilligramsPerLitre;
        var (low, high) = (milligrams * Math.Max(0, 1 - worst.Relative), milligrams * (1 + worst.Relative));
        var others = keys.Count == 1 ? "" : $" ({Say.List(keys.Where(k => k != worst.Key))} from the same place)";
        var message = $"{worst.Key} in '{worst.Recipe.Recipe.Name}' is only known to ±{Say.Percent(worst.Relative)}, somewhere between {Say.Number(low)} and {Say.Number(high)} mg/L{others}. "
            + $"{Say.Percent(worst.Fraction)} of that (as variance) is {worst.Source.Name}. "
            + ErrorKinds.Advice(worst.Source);
        return context.Find(worst.Place, message) with
        {
            Measured = new Measured("relative expanded uncertainty", worst.Relative * 100, worst.Limit * 100, "%"),
            Values =
            [
                .. same.DistinctBy(s => s.Key).OrderBy(s => s.Key, StringComparer.Ordinal).Select(s => new NamedValue(s.Key, s.Relative * 100, "%")),
                new NamedValue("share of the variance", worst.Fraction * 100, "%"),
            ],
            Related = worst.Source.Place is { } place && place != worst.Place ? [new RelatedPlace(place, worst.Source.Name)] : [],
        };
    }

    /// <summary>One element of one final solution past the limit.</summary>
    /// <param name="Fraction">The share of the largest source.</param>
    private sealed record PoorlyKnown(RecipeFacts Recipe, ElementUncertainty Known, ErrorSource Source, double Fraction, Place Place, double Limit)
    {
        internal string Key => Known.Key;

        internal double Relative => Rounding.SixDigits(Known.RelativeExpanded);
    }

    /// <summary>Better equipment of the shop, or more of it at once.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context) => Equipment.ForWeight(finding, context).Concat(Equipment.OtherMeasures(finding, context));
}
