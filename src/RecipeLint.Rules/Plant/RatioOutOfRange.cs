using RecipeLint.Analysis;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Plant;

/// <summary>
/// Elements in a proportion that the crop profile does not allow. Several ratios that are off because of the same element are one finding.
/// </summary>
public sealed class RatioOutOfRange : RecipeRule, IProposesRepairs
{
    public override string Name => "ratio-out-of-range";

    public override IEnumerable<Finding> Judge(RecipeFacts recipe, RuleContext context)
    {
        if (!recipe.IsComplete)
        {
            yield break;
        }

        var open = recipe.Profile.Ratios.Select(r => OffRatio.Of(recipe, r)).OfType<OffRatio>().ToList();
        while (open.Count > 0)
        {
            var cause = RatioCause.Find(recipe, open);
            var explained = open.Where(o => cause.Explains(o)).ToList();
            open = [.. open.Except(explained)];
            yield return Describe(recipe, cause, explained, context);
        }
    }

    private static Finding Describe(RecipeFacts recipe, RatioCause cause, List<OffRatio> explained, RuleContext context)
    {
        // Identity and accepted value belong to the same ratio, whatever else the cause also throws off.
        var first = explained[0];
        var message = explained.Count == 1
            ? $"{first.Text}; the '{recipe.Profile.Name}' profile keeps it at {first.Bounds}. {Harm(first)} Lower {Say.List(first.More)} or raise {Say.List(first.Less)}."
            : $"{cause.Key} is {(cause.IsHigh ? "high" : "low")} against its partners in the '{recipe.Profile.Name}' profile: {Say.List(explained.Select(o => $"{o.Text} ({o.Bounds})"))}. "
                + (cause.IsHigh
                    ? $"So much {cause.Key} hinders the uptake of the others although their amounts may look right. Lower {cause.Key}, or raise the others together."
                    : $"The others hinder the uptake of the little {cause.Key} there is. Raise {cause.Key}, or lower the others together.");
        var place = RecipePlaces.Doses(recipe);
        return context.Find(
            place,
            $"{IdPath.Of(context.Facts.Workspace, place)}#{first.Name}",
            message,
            certainty: explained.All(o => !o.Range.IsPractice) ? Certainty.Computed : Certainty.Practice) with
        {
            Related = [.. (explained.Count == 1 ? first.More : [cause.Key]).SelectMany(k => ElementRatio.LargestSources(recipe, k).Take(2))],
            Measured = new Measured(first.Name, first.Found, first.Limit, ""),
            Values = [.. explained.Select(o => new NamedValue(o.Name, o.Found, "")), new NamedValue("limit", first.Limit, "")],
        };
    }

    private static string Harm(OffRatio off) => (off.Range.Numerator, off.Range.Denominator, off.IsHigh) switch
    {
        ("NH4-N", "N", true) => "Roots give off acid for the ammonium they take up: the root zone sours and calcium stays out.",
        ("Na", _, true) => "Roots let sodium in where potassium is scarce, and it does none of potassium's work.",
        ("Fe", "Mn", false) => "Much manganese keeps iron out; in old stocks it is also the mark of iron chelate lost to light.",
        ("P", "Zn", true) => "Much phosphorus makes zinc run short inside the plant, although the solution holds enough.",
        _ => $"Too much {Say.List(off.More)} hinders the uptake of {Say.List(off.Less)}, so the crop can go short of it although the amount looks right.",
    };

    /// <summary>Less of the element there is too much of, or more of the other.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context) => Contributions.Either(finding, context);
}
