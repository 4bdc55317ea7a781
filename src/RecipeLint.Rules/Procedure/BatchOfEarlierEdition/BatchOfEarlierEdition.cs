using RecipeLint.Analysis;
using RecipeLint.Recipes.Batches;
using RecipeLint.Recipes.Editions;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Procedure;

/// <summary>A batch whose stock or recipe file was changed after it was mixed from it.</summary>
internal sealed class BatchOfEarlierEdition : WorkspaceRule<BatchOfEarlierEdition.Dated>
{
    public const string RuleName = "batch-of-earlier-edition";

    public override string Name => RuleName;

    /// <summary>It turns on whether two texts are the same.</summary>
    public override bool HasWorking => false;

    protected override IEnumerable<Dated> Judge(Facts facts, RuleContext context)
    {
        foreach (var batch in facts.Workspace.Batches)
        {
            if (batch is { Edition: { } written, MixedFrom: { } file })
            {
                yield return new Dated(batch, written, file, Edition.Of(facts.Workspace, file) ?? "")
                {
                    Files = [batch.File],
                    Checks =
                    [
                        Check.That("the file was changed after the batch was mixed from it", Edition.IsEarlier(facts.Workspace, batch)),
                    ],
                };
            }
        }
    }

    protected override Finding Describe(Dated verdict, RuleContext context) => context.Find(
        verdict.Written.Place,
        $"This batch was mixed from an earlier edition of '{verdict.File}' ({verdict.Written.Value}; the file is {verdict.Now} by now), so "
            + "nothing of the record is held against it and nothing is graded. Name the file of that day in the record, or take "
            + "\"edition\" out if the change does not matter for this batch.",
        Harm.Habit,
        Odds.Certain) with
    {
        Related = [new RelatedPlace(Place.Whole(verdict.File), "changed since")],
    };

    /// <param name="File">What it was mixed from.</param>
    /// <param name="Now">The edition of that file; empty where it cannot be read.</param>
    internal sealed record Dated(BatchDocument Batch, Located<string> Written, string File, string Now) : Verdict;
}
