using RecipeLint.Analysis;
using RecipeLint.Analysis.Batches;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Recipes.Batches;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.People;

/// <summary>A batch of which a record tells what can mean danger: a smell of chlorine, a swollen bottle, fumes, heat.</summary>
internal sealed class BatchDangerNoticed : WorkspaceRule<BatchDangerNoticed.Noticed>
{
    public const string RuleName = "batch-danger-noticed";

    public override string Name => RuleName;

    /// <summary>It turns on the words of the record, not on a number.</summary>
    public override bool HasWorking => false;

    protected override IEnumerable<Noticed> Judge(Facts facts, RuleContext context)
    {
        foreach (var batch in facts.Workspace.Batches.Where(b => b.Seen.Count > 0))
        {
            var contents = Contents(BatchForecast.Of(facts, batch));
            foreach (var sight in batch.Seen.Select(SightReading.Of))
            {
                var noticed = sight.Dangers(contents.Holding);
                var gravest = contents.Suspecting(noticed).Hazards.FirstOrDefault(h => noticed.Contains(h.Kind));
                yield return new Noticed(sight.Sight, gravest)
                {
                    Files = [batch.File],
                    Checks = [Check.That("what was noticed can mean danger", gravest is not null)],
                };
            }
        }
    }

    protected override Finding Describe(Noticed verdict, RuleContext context)
    {
        var text = verdict.Hazard!.Text;
        return context.Find(
            verdict.Sight.What.Place,
            $"What was noticed in this batch can mean {text.Name}, whatever the recipe says. "
            + $"{text.First} {text.Help} {HazardText.Deference}",
            Harm.Person,
            Odds.Certain,
            Certainty.Practice);
    }

    /// <summary>Of a stock that has no facts, what was noticed counts by itself.</summary>
    private static HazardReport Contents(BatchForecast? forecast) =>
        forecast is null ? HazardGate.Of(Holding.Of([], 1)) : forecast.Hazards;

    /// <param name="Hazard">The gravest that the words can mean; null where they tell of none.</param>
    internal sealed record Noticed(BatchSight Sight, Hazard? Hazard) : Verdict;
}
