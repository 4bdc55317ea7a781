using RecipeLint.Analysis;
using RecipeLint.Analysis.Uncertainty;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Plant;

/// <summary>An element off its target, with the usual slip named when one fits.</summary>
internal sealed class TargetMissed : RecipeRule<ElementAgainstTarget>, IProposesRepairs
{
    public const string RuleName = "target-missed";

    public override string Name => RuleName;

    protected override IEnumerable<ElementAgainstTarget> Judge(RecipeFacts recipe, RuleContext context)
    {
        var tolerance = context.Options<TargetMissedOptions>().Tolerance;
        var any = false;
        foreach (var target in recipe.Recipe.Targets)
        {
            if (target.Concentration is not { GramsPerLitre: > 0 } wanted)
            {
                continue;
            }

            any = true;
            var found = recipe.MilligramsPerLitre(target.Key.Value);
            var asked = wanted.MilligramsPerLitre;
            var stated = target.Tolerance?.HalfWidth(asked);
            var off = new Check(
                "further off than allowed",
                Rounding.SixDigits(Math.Abs(found - asked)), Relation.Over, Rounding.SixDigits(stated ?? (asked * tolerance / 100)),
                    "mg/L");
            yield return new ElementAgainstTarget(recipe, target, found, asked, stated is not null, off)
            {
                Uncertainty = off.Holds ? UncertaintyOf(recipe, target.Key.Value, context) : 0,
                Checks = [off, .. recipe.IsComplete ? [] : new[] { Check.That("the recipe could be read whole", false) }],
            };
        }

        if (!any)
        {
            yield return new ElementAgainstTarget(recipe, null, 0, 0, false,
                null)
            { Checks = [Check.That("it states a target for an element", false)] };
        }
    }

    protected override Finding Describe(ElementAgainstTarget verdict, RuleContext context)
    {
        var (target, found, asked, allowed) = (verdict.Target!, verdict.Found, verdict.Asked, verdict.Off!.Limit);
        var key = target.Key.Value;
        var off = found - asked;
        var slip = SlipOf(verdict, context);
        var message = $"{key} comes to {Say.Number(found)} mg/L where {Say.Number(asked)} mg/L is wanted "
            + $"({(off > 0 ? "+" : "-")}{Say.Percent(Math.Abs(off) / asked)}, allowed ±{Say.Percent(allowed / asked)}). "
            + (slip is null
                ? "The crop gets what is mixed, not what is wanted. "
                    + ((found < asked ? NitrogenForms.Remedy(verdict.Recipe, key) : null)
                        ?? "Change the additions listed here or the target.")
                : slip.Sentence + " Check that before changing anything else.");
        var sources = ElementRatio.LargestSources(verdict.Recipe, key).Take(3);
        return context.Find(target.Place, message, Harm.Loss, verdict.Odds) with
        {
            Related = slip?.Related is { } related ? [related, .. sources.Where(s => s.Place != related.Place)] : [.. sources],
            Measured = new Measured(key, found, asked, "mg/L"),
            Values =
            [
                new NamedValue("found", found, "mg/L"),
                new NamedValue("target", asked, "mg/L"),
                new NamedValue("factor", found / asked, ""),
            ],
        };
    }

    protected override Working Work(ElementAgainstTarget verdict, RuleContext context)
    {
        if (verdict is not { Target: { } target, Off: { } check })
        {
            return new WorkingBuilder($"the targets of '{verdict.Recipe.Recipe.Name}'").Statements(verdict).Done();
        }

        var key = target.Key.Value;
        var work = new WorkingBuilder($"{key} in '{verdict.Recipe.Recipe.Name}' against its target");
        var found = ElementSteps.Found(work, verdict.Recipe, key);
        var asked = work.Given($"target{(target.Basis is { } basis ? $" (stated as {basis})" : "")}, as "
            + $"{key}", verdict.Asked, "mg/L", From.File);
        var off = work.Result("off by", "found - target", found - asked, "mg/L");
        work.Result("in per cent", "100 × off / target", 100 * off / asked, "%");
        var allowed = verdict.IsStated
            ? work.Given("allowed, ±", check.Limit, "mg/L", From.File)
            : work.Result("allowed, ±", "target × tolerance / 100",
            asked * work.Option("tolerance", context.Options<TargetMissedOptions>().Tolerance) / 100, "mg/L");
        var distance = work.Result("distance", "without the sign", Term.Size(off), "mg/L");
        if (verdict.Found > 0)
        {
            work.Result("found against wanted", "found / target", found / asked);
            if (check.Holds && SlipOf(verdict, context) is { } slip)
            {
                work.Remark(slip.Sentence);
            }
        }

        return work.Check(check, distance, allowed).Statements(verdict).Done(found);
    }

    /// <summary>Another hydrate or basis where that is the slip; else more or less of what brings most of it.</summary>
    protected override IEnumerable<RepairProposal> Repair(ElementAgainstTarget verdict, Finding finding, RepairContext context)
    {
        var target = verdict.Target!;
        return context.RecipeOf(finding) is not { } recipe
            ? []
            :
            [
                .. Contributions.OtherHydrates(context, recipe, target.Key.Value),
                .. Contributions.OtherBasis(context, target),
                .. Contributions.ToTarget(context, recipe, target, verdict.Asked),
            ];
    }

    /// <summary>mg/L, k = 2: how far scales, measures and assays leave it open what the plants get.</summary>
    private static double UncertaintyOf(RecipeFacts recipe, string key, RuleContext context) =>
        ElementUncertainty.Of(recipe, context.Facts.FindStock).Elements.TryGetValue(key, out var known)
            ? known.RelativeExpanded * recipe.MilligramsPerLitre(key)
            : 0;

    private static UsualSlip? SlipOf(ElementAgainstTarget verdict, RuleContext context) => UsualSlips.Name(
        verdict.Recipe,
        context.Facts.Workspace.Catalogue,
        verdict.Target!.Key.Value,
        verdict.Found / verdict.Asked,
        context.Options<TargetMissedOptions>().SlipTolerance / 100);
}

/// <summary>An element of a final solution against what the recipe asks for.</summary>
/// <param name="Target">Null where the recipe asks for none.</param>
/// <param name="Found">mg/L.</param>
/// <param name="Asked">mg/L.</param>
/// <param name="IsStated">Whether the recipe states how far off it may be.</param>
internal sealed record ElementAgainstTarget(
    RecipeFacts Recipe, Target? Target, double Found, double Asked, bool IsStated, Check? Off) : Verdict
{
    /// <summary>mg/L, k = 2; 0 where the target is met.</summary>
    public double Uncertainty { get; init; }

    /// <summary>Sure where even the uncertainty of weighing and measuring does not reach the allowed distance.</summary>
    public Odds Odds => Off is { } off && off.Value - Uncertainty > off.Limit ? Odds.Certain : Odds.NearTheLimit;
}
