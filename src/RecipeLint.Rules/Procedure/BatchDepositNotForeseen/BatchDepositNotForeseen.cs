using RecipeLint.Analysis;
using RecipeLint.Analysis.Batches;
using RecipeLint.Recipes.Batches;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Procedure;

/// <summary>A batch in which something was seen that nothing here has foreseen.</summary>
internal sealed class BatchDepositNotForeseen : WorkspaceRule<BatchDepositNotForeseen.Sighted>
{
    public override string Name => "batch-deposit-not-foreseen";

    /// <summary>It turns on what the record says and on the judgement that the rules on deposits work out.</summary>
    public override bool HasWorking => false;

    protected override IEnumerable<Sighted> Judge(Facts facts, RuleContext context)
    {
        foreach (var batch in facts.Workspace.Batches.Where(b => b.Seen.Count > 0))
        {
            if (BatchForecast.Of(facts, batch) is not { IsWhole: true } forecast)
            {
                continue;
            }

            var shop = facts.Workspace.SettingsFor(batch.File);
            var (bottle, tank) = (DepositOptions.Of(shop), DepositOptions.OfTank(shop));
            foreach (var sight in forecast.Clouded)
            {
                yield return new Sighted(forecast, sight.Sight)
                {
                    Files = [batch.File],
                    Checks = [Check.That("nothing that counts falls out by the constants", forecast.StaysClear(sight.Sight, bottle, tank))],
                };
            }
        }
    }

    protected override Finding Describe(Sighted verdict, RuleContext context)
    {
        var (forecast, sight) = verdict;
        var at = sight.At is { } range
            ? $"at {Say.Number(range.Value.Low.Celsius)} to {Say.Number(range.Value.High.Celsius)} °C"
            : "at the temperatures it is kept at";
        var isTank = forecast is TankForecast;
        return context.Find(
            sight.What.Place,
            $"Something was seen in this {(isTank ? "tank" : "batch")}, but by what was {(isTank ? "dosed" : "weighed")} nothing should "
            + $"fall out {at}. Either something other than recorded is in the {(isTank ? "tank" : "bottle")}, something lives in it, or a "
            + "constant here is wrong. Let 'diagnose' look for the cause with these words, and "
            + "write what it was into the note.",
            Harm.Damage,
            Odds.Possible,
            Certainty.Estimate) with
        {
            Related = [new RelatedPlace(forecast.MixedFrom, isTank ? "mixed from this recipe" : "mixed from this stock")],
        };
    }

    internal sealed record Sighted(BatchForecast Forecast, BatchSight Sight) : Verdict;
}
