using RecipeLint.Analysis;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Plant;

/// <summary>
/// Elements in a proportion that the crop profile does not allow. Several ratios that are off because of the same element are one finding.
/// </summary>
internal sealed partial class RatioOutOfRange : RecipeRule<RatiosOfOneCause>, IProposesRepairs
{
    public const string RuleName = "ratio-out-of-range";

    public override string Name => RuleName;

    protected override bool OnlyForRoots => true;

    protected override IEnumerable<RatiosOfOneCause> Judge(RecipeFacts recipe, RuleContext context)
    {
        var all = recipe.Profile.Ratios.Select(r => FoundRatio.Of(recipe, r)).ToList();
        var open = all.Where(r => r.IsOff).ToList();
        while (open.Count > 0)
        {
            var cause = RatioCause.Find(recipe, open);
            var explained = open.Where(cause.Explains).ToList();
            open = [.. open.Except(explained)];
            yield return new RatiosOfOneCause(recipe, cause, explained) { Checks = [.. explained.SelectMany(r => r.Checks)] };
        }

        foreach (var ratio in all.Where(r => !r.IsOff))
        {
            yield return new RatiosOfOneCause(recipe, null, [ratio]) { Checks = ratio.Checks };
        }
    }

    protected override Finding Describe(RatiosOfOneCause verdict, RuleContext context)
    {
        var (recipe, cause, ratios) = (verdict.Recipe, verdict.Cause!, verdict.Ratios);

        // Identity and accepted value belong to the same ratio, whatever else the cause also throws off.
        var first = ratios[0];
        var message = ratios.Count == 1
            ? $"{first.Text}; the '{recipe.Profile.Name}' profile keeps it at {first.Bounds}. {HarmDone(first)} {Remedy(recipe, first)}"
            : $"{cause.Key} is {(cause.IsHigh ? "high" : "low")} against its partners in the '{recipe.Profile.Name}' profile: "
                + $"{Say.List(ratios.Select(o => $"{o.Text} ({o.Bounds})"))}. "
                + (cause.IsHigh
                    ? $"So much {cause.Key} hinders the uptake of the others although their amounts may look right. Lower {cause.Key}, "
                        + "or raise the others together."
                    : $"The others hinder the uptake of the little {cause.Key} there is. Raise "
                        + $"{NitrogenForms.Raised(recipe, cause.Key)}, or lower the others together.");
        var place = RecipePlaces.Doses(recipe);
        return context.Find(
            place,
            $"{IdPath.Of(context.Facts.Workspace, place)}#{first.Name}",
            message,
            IsMostlyAmmonium(verdict, context) ? Harm.Loss : Harm.Damage,
            ratios.All(r => r.FollowsFromAnAmount(recipe)) ? Odds.Possible : Odds.Certain,
            ratios.All(o => !o.Range.IsPractice) ? Certainty.Computed : Certainty.Practice) with
        {
            Related = [.. (ratios.Count == 1 ? first.More : [cause.Key]).SelectMany(k => ElementRatio.LargestSources(recipe, k).Take(2))],
            Measured = new Measured(first.Name, first.Found, first.Limit, ""),
            Values = [.. ratios.Select(o => new NamedValue(o.Name, o.Found, "")), new NamedValue("limit", first.Limit, "")],
        };
    }

    /// <summary>Less of the element there is too much of, or more of the other; a share of one element is only shifted.</summary>
    protected override IEnumerable<RepairProposal> Repair(RatiosOfOneCause verdict, Finding finding, RepairContext context)
    {
        if (context.RecipeOf(finding) is not { } recipe)
        {
            return [];
        }

        var first = verdict.Ratios[0];
        return first.IsShareOfForms
            ? Contributions.Shift(context, recipe, first.More, first.Less)
            : Contributions.Either(context, recipe, ElementRatio.Keys(first.Range.Numerator)
                .Concat(ElementRatio.Keys(first.Range.Denominator))
                .Distinct(StringComparer.Ordinal));
    }

    private static bool IsMostlyAmmonium(RatiosOfOneCause verdict, RuleContext context) => verdict.Ratios.Any(r =>
        r is { IsShareOfForms: true, Range.Numerator: "NH4-N" } && 100 * r.Found >= context.Options<RatioOutOfRangeOptions>().MostAmmonium);

    /// <summary>A share of the forms of one element is put right by exchanging one for the other: all of it stays as much.</summary>
    private static string Remedy(RecipeFacts recipe, FoundRatio off)
    {
        if (!off.IsShareOfForms)
        {
            return $"Lower {Say.List(off.More)} or raise {Say.List(off.Less.Select(k => NitrogenForms.Raised(recipe, k)))}.";
        }

        var shift = Math.Abs(off.Found - off.Limit) * recipe.MilligramsPerLitre(off.Range.Denominator);
        return off.More[0] == "NH4-N"
            ? $"Bring {Say.Number(shift)} mg/L of the nitrogen as nitrate instead of ammonium: calcium or potassium nitrate in place "
                + "of the ammonium salt."
            : $"Bring {Say.Number(shift)} mg/L of the nitrogen as ammonium instead of nitrate.";
    }

    private static string HarmDone(FoundRatio off) => (off.Range.Numerator, off.Range.Denominator, off.IsHigh) switch
    {
        ("NH4-N", "N", true) when off.Found > 2 * off.Limit =>
            "Roots cannot bind so much of it, and what stays free poisons them; the root zone sours and calcium stays out.",
        ("NH4-N", "N", true) => "Roots give off acid for the ammonium they take up: the root zone sours and calcium stays out.",
        ("Na", _, true) => "Roots let sodium in where potassium is scarce, and it does none of potassium's work.",
        ("Fe", "Mn", false) => "Much manganese keeps iron out; in old stocks it is also the mark of iron chelate lost to light.",
        ("P", "Zn", true) => "Much phosphorus makes zinc run short inside the plant, although the solution holds enough.",
        _ => $"Too much {Say.List(off.More)} hinders the uptake of {Say.List(off.Less)}, so the crop can go short of it although the "
            + "amount looks right.",
    };
}

/// <summary>Ratios of a final solution.</summary>
/// <param name="Cause">The element that throws all of them off; null where they are not off.</param>
internal sealed record RatiosOfOneCause(RecipeFacts Recipe, RatioCause? Cause, IReadOnlyList<FoundRatio> Ratios) : Verdict;
