using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Analysis.Stocks;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Batches;

namespace RecipeLint.Analysis.Batches;

/// <summary>An addition as asked for and as recorded.</summary>
/// <param name="Asked">What the stock file asks for, in the size of the batch.</param>
/// <param name="Part">Taken over asked for; 0 for what was left out or replaced by something else.</param>
public sealed record RecordedAddition(BatchStep Entry, AdditionFacts Asked, double Part);

/// <summary>What a batch should be like: its stock in its size, and the same as it was really made.</summary>
/// <param name="Asked">The stock file in the size of the batch.</param>
/// <param name="Made">With recorded amounts and substances.</param>
/// <param name="Additions">Those that the record tells something of, in its order.</param>
public sealed record BatchForecast(
    BatchDocument Batch, StockFacts Asked, StockFacts Made, IReadOnlyList<RecordedAddition> Additions)
{
    /// <summary>False where something that decides the contents could not be read: then nothing is foretold.</summary>
    public bool IsWhole => Batch.IsComplete && Made.IsComplete;

    /// <summary>Null where the stock has no facts.</summary>
    public static BatchForecast? Of(Facts facts, BatchDocument batch)
    {
        if (batch.StockFile is not { } file || facts.Workspace.FindStock(file) is not { } stock)
        {
            return null;
        }

        var asked = Analyzer.AnalyseStock(facts.Workspace.With(RecordedStock.Planned(stock, batch)), file);
        var made = Analyzer.AnalyseStock(facts.Workspace.With(RecordedStock.Actual(stock, batch)), file);
        return asked is { Volume.Litres: > 0 } && made is { Volume.Litres: > 0 }
            ? new BatchForecast(batch, asked, made, [.. Recorded(batch, asked, made)])
            : null;
    }

    /// <summary>What was seen, read; in the order of the record.</summary>
    public IReadOnlyList<SightReading> Sights { get; } = [.. Batch.Seen.Select(SightReading.Of)];

    /// <summary>Sights of something that fell out, or of what cannot be told: neither clear nor a danger alone.</summary>
    public IEnumerable<SightReading> Clouded
    {
        get
        {
            var holding = Holding.Of(Made);
            return Sights.Where(s => !s.IsClear && (s.TellsDeposit || s.Dangers(holding).Count == 0));
        }
    }

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

            if (entry.LeftOut || entry.Substance is { } other && other.Id != addition.Substance.Id)
            {
                yield return new RecordedAddition(entry, addition, 0);
            }
            else if (made.Additions.FirstOrDefault(a => a.Id == addition.Id && !a.ThroughAliquot) is { } taken)
            {
                yield return new RecordedAddition(entry, addition, taken.Mass / addition.Mass);
            }
        }
    }
}
