using RecipeLint.Analysis;
using RecipeLint.Analysis.Batches;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Procedure;

/// <summary>A batch whose pH, conductivity or weight does not fit what is recorded of it.</summary>
internal sealed class BatchReadingOff : WorkspaceRule<BatchReadingOff.Read>
{
    public override string Name => "batch-reading-off";

    /// <summary>The window comes out of the equilibrium engine, as in 'proof'; the message quotes both ends of the comparison.</summary>
    public override bool HasWorking => false;

    protected override IEnumerable<Read> Judge(Facts facts, RuleContext context)
    {
        foreach (var batch in facts.Workspace.Batches.Where(b => b.Readings.Count > 0))
        {
            if (BatchForecast.Of(facts, batch) is not { IsWhole: true } forecast)
            {
                continue;
            }

            foreach (var reading in forecast.Readings.Where(r => r.Expected is not null))
            {
                var window = reading.Expected!.Value;
                yield return new Read(reading, forecast is TankForecast)
                {
                    Files = [batch.File],
                    Checks =
                    [
                        new Check(
                            "further from the computed value than both allow",
                            Rounding.SixDigits(Math.Abs(reading.Value - window.Value)),
                            Relation.Over,
                            Rounding.SixDigits(window.HalfWidth),
                            reading.Unit),
                    ],
                };
            }
        }
    }

    protected override Finding Describe(Read verdict, RuleContext context)
    {
        var reading = verdict.Reading;
        var window = reading.Expected!.Value;
        var unit = reading.Unit.Length > 0 ? " " + reading.Unit : "";
        return context.Find(
            reading.Entry.Place,
            $"The {reading.Name} was read as {Say.Number(reading.Value)}{unit} where what is recorded comes to "
            + $"{Say.Number(window.Value)} ± {Say.Number(window.HalfWidth)}{unit}. Either something other than recorded is in the "
            + $"{(verdict.IsTank ? "tank" : "bottle")}, or the instrument is off. Check it with a buffer or standard, then let "
            + "'diagnose --measured' find the slip.",
            Harm.Damage,
            Odds.Certain,
            Certainty.Estimate) with
        {
            Measured = new Measured(
                "from the computed value", verdict.Checks[0].Value, verdict.Checks[0].Limit, reading.Unit),
        };
    }

    internal sealed record Read(CheckedReading Reading, bool IsTank) : Verdict;
}
