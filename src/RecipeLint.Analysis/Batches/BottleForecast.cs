using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Analysis.Stocks;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Batches;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Analysis.Batches;

/// <summary>What a bottle should be like: its stock in its size, and the same as it was really made.</summary>
/// <param name="Asked">The stock file in the size of the batch.</param>
/// <param name="Made">With recorded amounts and substances.</param>
public sealed record BottleForecast(BatchDocument Batch, StockFacts Asked, StockFacts Made) : BatchForecast(Batch)
{
    public override bool IsWhole => Batch.IsComplete && Made.IsComplete;

    public override Place MixedFrom => Asked.Stock.Place;

    public override IReadOnlyList<RecordedAddition> Additions { get; } = [.. Recorded(Batch, Asked, Made)];

    public override HazardReport Hazards => HazardGate.Of(Made);

    public override IEnumerable<CheckedReading> Readings => BatchReadings.Of(Batch, Made);

    /// <summary>Null where the stock has no facts.</summary>
    public static new BottleForecast? Of(Facts facts, BatchDocument batch)
    {
        if (batch.StockFile is not { } file || facts.Workspace.FindStock(file) is not { } stock)
        {
            return null;
        }

        var asked = Analyzer.AnalyseStock(facts.Workspace.With(RecordedStock.Planned(stock, batch)), file);
        var made = Analyzer.AnalyseStock(facts.Workspace.With(RecordedStock.Actual(stock, batch)), file);
        return asked is { Volume.Litres: > 0 } && made is { Volume.Litres: > 0 } ? new BottleForecast(batch, asked, made) : null;
    }

    public override bool StaysClear(BatchSight sight, DepositLimits bottle, OwnerLimits tank) => At(sight, bottle).IsClear;

    /// <summary>What falls out by the one judgement between the temperatures that it stood at until it was looked at.</summary>
    /// <param name="limits">From where on deposits count in this shop.</param>
    public DepositJudgement At(BatchSight sight, DepositLimits limits)
    {
        if (sight.At is not { } at)
        {
            return DepositJudgement.Of(Made, limits);
        }

        var mix = Made.Chemistry.Mix;
        SolutionState Solve(StateMoment moment, Temperature temperature) => StateSolver.Solve(
            mix,
            new StateRequest(
                moment,
                new Temperature(Math.Clamp(temperature.Celsius, SolutionInput.LowestCelsius, SolutionInput.HighestCelsius)),
                false,
                []));
        return DepositJudgement.Of([Solve(StateMoment.Coldest, at.Value.Low), Solve(StateMoment.Warmest, at.Value.High)], limits);
    }

    private static IEnumerable<RecordedAddition> Recorded(BatchDocument batch, StockFacts asked, StockFacts made)
    {
        foreach (var entry in batch.Steps.Where(s => s.Step is not null))
        {
            if (asked.Additions.FirstOrDefault(a => a.Id == entry.Step!.Value && !a.ThroughAliquot) is not { Mass.Grams: > 0 } addition)
            {
                continue;
            }

            var name = addition.Substance.Name;
            if (entry.LeftOut || entry.Substance is { } other && other.Id != addition.Substance.Id)
            {
                yield return new RecordedAddition(entry, name, addition.Place, addition.Mass, addition.Volume, 0);
            }
            else if (made.Additions.FirstOrDefault(a => a.Id == addition.Id && !a.ThroughAliquot) is { } taken)
            {
                yield return new RecordedAddition(
                    entry, name, addition.Place, addition.Mass, addition.Volume, taken.Mass / addition.Mass);
            }
        }
    }
}
