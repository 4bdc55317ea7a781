using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Feeds;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Analysis.Readings;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Batches;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Analysis.Batches;

/// <summary>What a tank should be like: its recipe in its size, and the same as it was really mixed.</summary>
/// <param name="Asked">The recipe file in the size of the tank.</param>
/// <param name="Made">With recorded doses.</param>
public sealed record TankForecast(BatchDocument Batch, RecipeFacts Asked, RecipeFacts Made) : BatchForecast(Batch)
{
    public override bool IsWhole => Batch.IsComplete && Made.IsComplete && Made.Chemistry.IsComplete && Made.Chemistry.Final.IsSolved;

    public override Place MixedFrom => Asked.Recipe.Place;

    public override IReadOnlyList<RecordedAddition> Additions { get; } = [.. Recorded(Batch, Asked, Made)];

    public override HazardReport Hazards => HazardGate.Of(Made);

    public override IEnumerable<CheckedReading> Readings
    {
        get
        {
            foreach (var entry in Batch.Readings)
            {
                var (kind, name, value, unit) = entry switch
                {
                    PhReading ph => (ReadingKind.Ph, "pH", ph.Value, ""),
                    ConductivityReading ec => (ReadingKind.Conductivity, "conductivity", ec.Value.MillisiemensPerCentimetre, "mS/cm"),
                    _ => (ReadingKind.Density, "density", 0.0, ""),
                };
                if (kind != ReadingKind.Density)
                {
                    yield return new CheckedReading(
                        entry, kind, name, value, unit, TankWindow.Of(Made, kind, value, entry.Tolerance?.HalfWidth(value)));
                }
            }
        }
    }

    /// <summary>Null where the recipe has no facts.</summary>
    public static new TankForecast? Of(Facts facts, BatchDocument batch)
    {
        if (batch.RecipeFile is not { } file || facts.Workspace.FindRecipe(file) is not { } recipe)
        {
            return null;
        }

        var asked = Analyzer.AnalyseRecipe(facts.Workspace.With(RecordedRecipe.Planned(recipe, batch)), file);
        var made = Analyzer.AnalyseRecipe(facts.Workspace.With(RecordedRecipe.Actual(recipe, batch)), file);
        return asked is not null && made is not null ? new TankForecast(batch, asked, made) : null;
    }

    public override bool StaysClear(BatchSight sight, DepositLimits bottle, OwnerLimits tank) =>
        !At(sight, tank).Any(d => d.Deposit.Counts);

    /// <summary>
    /// What falls out of the tank by the one judgement between the temperatures that it stood at until it was looked at; whether it counts
    /// or not.
    /// </summary>
    public IReadOnlyList<TankDeposit> At(BatchSight sight, OwnerLimits limits)
    {
        if (sight.At is not { } at)
        {
            return TankJudgement.LookedAt(Made, limits);
        }

        var states = TankJudgement.MomentsOf(Made).SelectMany(s => new[] { at.Value.Low, at.Value.High }.Select(t => StateSolver.Solve(
            s.Mix,
            new StateRequest(
                s.Moment,
                new Temperature(Math.Clamp(t.Celsius, SolutionInput.LowestCelsius, SolutionInput.HighestCelsius)),
                s.OpenToAir,
                []))));
        return TankJudgement.LookedAt(Made, [.. states.Where(s => s.IsSolved)], limits);
    }

    private static IEnumerable<RecordedAddition> Recorded(BatchDocument batch, RecipeFacts asked, RecipeFacts made)
    {
        foreach (var entry in batch.Steps.Where(s => s.Step is not null))
        {
            var id = entry.Step!.Value;
            if (id == BatchDocument.AdjustId && asked.Adjustment is { Amount: { Grams: > 0 } grams, Reagent: { } reagent } adjustment)
            {
                var poured = entry is { LeftOut: false, What: null, Amount: not null } ? made.Doses.FirstOrDefault(d => d.Id == id) : null;
                if (entry.LeftOut || entry.What is not null || poured is not null)
                {
                    yield return new RecordedAddition(
                        entry, reagent.Name, adjustment.Place, grams, adjustment.Volume,
                        poured?.Direct is { } direct ? direct.Mass / grams : 0);
                }
            }
            else if (asked.Doses.FirstOrDefault(d => d.Id == id) is { } dose && PartOf(entry, dose, made) is { } part)
            {
                yield return new RecordedAddition(
                    entry,
                    dose.Stock is { } stock ? $"'{stock.Stock.Name}'" : dose.Direct!.Substance.Name,
                    dose.Entry.Place,
                    dose.Direct?.Mass,
                    dose.Stock is not null ? dose.Volume : dose.Direct!.Volume,
                    part);
            }
        }
    }

    private static double? PartOf(BatchStep entry, DoseFacts asked, RecipeFacts made) =>
        entry.What is not null && asked.Stock is not null ? null
        : entry.LeftOut || (entry.Substance is { } other && other.Id != asked.Direct?.Substance.Id) ? 0
        : made.Doses.FirstOrDefault(d => d.Id == asked.Id) is not { } taken ? null
        : asked.Direct is { Mass.Grams: > 0 } weighed ? taken.Direct is { } direct ? direct.Mass / weighed.Mass : 0
        : asked.Volume.Litres > 0 ? taken.Volume / asked.Volume
        : null;
}
