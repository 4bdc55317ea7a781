using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Analysis.Stocks;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Batches;
using RecipeLint.Recipes.Quantities;

namespace RecipeLint.Analysis.Batches;

/// <summary>An addition as asked for and as recorded.</summary>
/// <param name="Asked">What the stock file asks for, in the size of the batch.</param>
/// <param name="Part">Taken over asked for; 0 for what was left out.</param>
public sealed record RecordedAddition(BatchStep Entry, AdditionFacts Asked, double Part);

/// <summary>What a batch should be like: the facts of its stock in its size, with what was really weighed.</summary>
/// <param name="Asked">The stock file in the size of the batch.</param>
/// <param name="Made">The same with recorded amounts. Other substances and what was put in besides are not in it.</param>
/// <param name="Additions">Those that the record tells the amount of, as mass or volume, in its order.</param>
/// <param name="IsWhole">False where the record has something that the facts cannot follow: then nothing is foretold.</param>
public sealed record BatchForecast(
    BatchDocument Batch, StockFacts Asked, StockFacts Made, IReadOnlyList<RecordedAddition> Additions, bool IsWhole)
{
    /// <summary>Null where the stock has no facts.</summary>
    public static BatchForecast? Of(Facts facts, BatchDocument batch)
    {
        if (batch.StockFile is not { } file || facts.FindStock(file) is not { Volume.Litres: > 0 } stock)
        {
            return null;
        }

        var asked = ScaledBatch.Of(stock, batch.Size is { } size ? size.Value / stock.Volume : 1);
        var recorded = Recorded(batch, asked).ToList();
        var made = asked.Additions.Select(a => recorded.Find(r => r.Asked == a) is { } r ? Times(a, r.Part) : a).ToList();
        return new BatchForecast(
            batch,
            asked,
            asked with
            {
                Additions = made,
                ComponentMoles = ComponentMoles.Sum(
                    [
                        .. made.Select(a => a.ComponentMoles), .. asked.Waters.Select(w => w.ComponentMoles),
                        .. asked.Adjustments.Select(a => a.ComponentMoles),
                    ]),
                Totals = ElementTotals.Sum(
                    [
                        .. made.Select(a => a.Elements), .. asked.Waters.Select(w => w.Elements),
                        .. asked.Adjustments.Select(a => a.Elements),
                    ]),
            },
            recorded,
            batch.IsComplete && stock.IsComplete && batch.Steps.All(s => Follows(s, recorded)));
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

    private static IEnumerable<RecordedAddition> Recorded(BatchDocument batch, StockFacts asked)
    {
        foreach (var entry in batch.Steps)
        {
            if (entry is not { Step: { } id, What: null }
                || asked.Additions.FirstOrDefault(a => a.Id == id.Value && !a.ThroughAliquot) is not { } addition)
            {
                continue;
            }

            var part = (entry.LeftOut, entry.Amount?.Value) switch
            {
                (true, _) => 0,
                (_, Portion.ByMass taken) when addition.Mass.Grams > 0 => taken.Mass / addition.Mass,
                (_, Portion.ByVolume taken) when addition.Volume is { Litres: > 0 } volume => taken.Volume / volume,
                _ => (double?)null,
            };
            if (part is { } known)
            {
                yield return new RecordedAddition(entry, addition, known);
            }
        }
    }

    /// <summary>True for an entry that says nothing of the contents, or nothing but an amount that is followed.</summary>
    private static bool Follows(BatchStep entry, List<RecordedAddition> recorded) =>
        entry.What is null && ((entry.Amount is null && !entry.LeftOut) || recorded.Exists(r => r.Entry == entry));

    private static AdditionFacts Times(AdditionFacts addition, double part) => addition with
    {
        Mass = addition.Mass * part,
        Volume = addition.Volume * part,
        Elements = addition.Elements.Times(part),
        ComponentMoles = addition.ComponentMoles.Times(part),
        Impurities = addition.Impurities.Times(part),
    };
}
