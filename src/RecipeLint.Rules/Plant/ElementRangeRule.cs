using RecipeLint.Analysis;
using RecipeLint.Analysis.Profiles;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Plant;

/// <summary>What the three element rules share: one finding for each element past one bound of the crop profile.</summary>
public abstract class ElementRangeRule : RecipeRule, IProposesRepairs
{
    public override IEnumerable<Finding> Judge(RecipeFacts recipe, RuleContext context)
    {
        if (!recipe.IsComplete)
        {
            yield break;
        }

        foreach (var range in recipe.Profile.Elements.Where(r => !IsOwnedElsewhere(recipe, r.Key)))
        {
            var found = Rounding.SixDigits(recipe.MilligramsPerLitre(range.Key));
            if (Verdict(found, range, recipe.Profile.Name) is not { } verdict)
            {
                continue;
            }

            var message = Message(verdict.Message, range.Disagreement);
            var place = RecipePlaces.TargetOrDoses(recipe, range.Key);
            yield return context.Find(place, $"{IdPath.Of(context.Facts.Workspace, place)}#{range.Key}", message, verdict.Level, range.IsPractice ? Certainty.Practice : Certainty.Computed) with
            {
                Related = [.. ElementRatio.LargestSources(recipe, range.Key).Take(3)],
                Measured = new Measured(range.Key, found, verdict.Limit, "mg/L"),
                Values = [new NamedValue(range.Key, found, "mg/L"), new NamedValue("limit", verdict.Limit, "mg/L")],
            };
        }
    }

    /// <summary>How the sources differ ends the message, its first sentence: more is for the profile.</summary>
    private static string Message(string message, string? disagreement)
    {
        if (disagreement is not { Length: > 1 })
        {
            return message;
        }

        var end = disagreement.IndexOf(". ", StringComparison.Ordinal);
        var first = (end > 0 ? disagreement[..end] : disagreement).TrimEnd('.');
        var start = char.IsLower(first[1]) ? char.ToLowerInvariant(first[0]) : first[0];
        return $"{message.TrimEnd('.')}; {start}{first[1..]}.";
    }

    /// <summary>True when another rule has more to say of this element in this recipe.</summary>
    protected virtual bool IsOwnedElsewhere(RecipeFacts recipe, string key) => false;

    /// <summary>True when another rule has more to say of this element in this recipe.</summary>
    internal bool LeavesToOthers(RecipeFacts recipe, string key) => IsOwnedElsewhere(recipe, key);

    /// <summary>The bound that is passed, mg/L, at this concentration; null when it is fine for this rule.</summary>
    internal double? PassedBound(double milligramsPerLitre, ElementRange range, string profile) => Verdict(milligramsPerLitre, range, profile)?.Limit;

    /// <summary>What is said of an element at this concentration; null when it is fine for this rule.</summary>
    protected abstract RangeVerdict? Verdict(double milligramsPerLitre, ElementRange range, string profile);

    /// <param name="Limit">The bound that is passed, mg/L.</param>
    /// <param name="Level">Where it differs from the rule's own.</param>
    protected sealed record RangeVerdict(double Limit, string Message, Level? Level = null);

    /// <summary>More or less of what brings most of it, so that it comes inside the range.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context) => Contributions.ToLimit(finding, context);
}
