using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Batches;

/// <summary>Holds batch records against the stocks and recipes that they were mixed from.</summary>
internal static class BatchChecks
{
    /// <summary>Entries that name no step, name one twice, or measure it in a way that the step cannot take.</summary>
    /// <returns>The records, those with a problem marked as not read whole, and the problems.</returns>
    public static (IReadOnlyList<BatchDocument> Batches, IReadOnlyList<Problem> Problems) Hold(
        IReadOnlyList<BatchDocument> batches,
        IReadOnlyDictionary<string, StockDocument> stocks,
        IReadOnlyDictionary<string, RecipeDocument> recipes)
    {
        var problems = new List<Problem>();
        var held = new List<BatchDocument>(batches.Count);
        foreach (var batch in batches)
        {
            var found = batch.RecipeFile is { } tank && recipes.TryGetValue(tank, out var recipe)
                ? [.. Of(batch, StepsOf(recipe)), .. OfTank(batch)]
                : batch.StockFile is { } file && stocks.TryGetValue(file, out var stock) ? Of(batch, StepsOf(stock)).ToList() : [];
            problems.AddRange(found);
            held.Add(found.Count == 0 ? batch : batch with { IsComplete = false });
        }

        return (held, problems);
    }

    private static Steps StepsOf(StockDocument stock) => new(
        stock.File,
        "step",
        [
            .. stock.Steps.Select(s => new Doable(
                s.Id,
                (s as AddStep)?.What.Value,
                (s as AddStep)?.Substance?.Id,
                entry => Unfit(entry, s))),
        ]);

    /// <summary>The doses, and the reagent that sets the pH.</summary>
    private static Steps StepsOf(RecipeDocument recipe) => new(
        recipe.File,
        "dose",
        [
            .. recipe.Doses.Select(d => new Doable(
                d.Id,
                (d as DirectDose)?.What.Value ?? (d as StockDose)?.Stock.Value,
                (d as DirectDose)?.Substance?.Id,
                entry => Unfit(entry, d))),
            .. recipe.Adjust is null
                ? []
                : new[]
                {
                    new Doable(
                        BatchDocument.AdjustId,
                        recipe.Adjust.Using?.Value,
                        recipe.Adjust.Reagent?.Id,
                        entry => Unfit(entry, recipe.Adjust)),
                },
        ]);

    private static IEnumerable<Problem> Of(BatchDocument batch, Steps steps)
    {
        var byId = steps.All.GroupBy(s => s.Id, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.First(), StringComparer.Ordinal);
        var seen = new Dictionary<string, Place>(StringComparer.Ordinal);
        foreach (var entry in batch.Steps)
        {
            if (entry.Step is not { } id)
            {
                continue;
            }

            if (!byId.TryGetValue(id.Value, out var step))
            {
                var near = Written(id.Value, steps) is { Count: > 0 } written ? written : Spelling.Nearest(id.Value, byId.Keys);
                var known = near.Count > 0
                    ? Wording.DidYouMean(near)
                    : byId.Count == 0 ? "" : $" It has {Wording.Join([.. byId.Keys.Take(12).Select(k => $"'{k}'")], "and")}.";
                yield return new Problem(
                    ProblemKind.MissingReference, id.Place, $"'{steps.File}' has no {steps.Word} '{Wording.Shorten(id.Value)}'.{known}")
                {
                    Suggestions = [.. near],
                };
            }
            else if (!seen.TryAdd(id.Value, id.Place))
            {
                yield return new Problem(
                    ProblemKind.DuplicateKey,
                    id.Place,
                    $"The {steps.Word} '{Wording.Shorten(id.Value)}' is recorded twice. Keep one entry with what went in altogether.")
                {
                    Related = [new RelatedPlace(seen[id.Value], "first recorded here")],
                };
            }
            else if (step.Unfit(entry) is { } unfit)
            {
                yield return new Problem(ProblemKind.WrongDimension, entry.Amount?.Place ?? id.Place, unfit);
            }
        }
    }

    /// <summary>A tank is read as it stands.</summary>
    private static IEnumerable<Problem> OfTank(BatchDocument batch)
    {
        foreach (var reading in batch.Readings)
        {
            if (reading is WeightReading)
            {
                yield return new Problem(
                    ProblemKind.WrongShape, reading.Place, "A tank is not weighed: record its pH and its EC, as they are read.");
            }
            else if (reading.Dilution != 1)
            {
                yield return new Problem(
                    ProblemKind.WrongShape, reading.Place, "A tank is read as it is: leave out \"dilution\", or read the tank itself.");
            }
        }
    }

    /// <summary>Steps that write their substance as the record names the step: whoever copies the stock file copies that.</summary>
    private static IReadOnlyList<string> Written(string text, Steps steps) =>
    [
        .. steps.All
            .Where(s => string.Equals(s.What, text, StringComparison.OrdinalIgnoreCase)
                || string.Equals(s.Substance, text, StringComparison.OrdinalIgnoreCase))
            .Select(s => s.Id),
    ];

    /// <summary>Why a step cannot have been done as recorded; null when it can.</summary>
    private static string? Unfit(BatchStep entry, Step step) => (step, entry.Amount?.Value) switch
    {
        (HandlingStep, not null) => $"In the step '{step.Id}' nothing is put in, so there is no amount to record.",
        (PourStep or TopUpStep, Portion.ByMass or Portion.ByDrops) =>
            $"The step '{step.Id}' pours water: record a volume, such as \"1.4 L\".",
        (AddStep add, Portion.ByVolume or Portion.ByDrops) when entry.What is null && IsSolid(add.Substance) => OfSolid("step", step.Id),
        (AliquotStep, Portion.ByDrops) => $"The step '{step.Id}' takes another stock: record a volume, such as \"20 mL\".",
        _ => null,
    };

    /// <summary>The same for a dose of a recipe.</summary>
    private static string? Unfit(BatchStep entry, DoseEntry dose) => (dose, entry.Amount?.Value) switch
    {
        (StockDose, _) when entry.What is not null =>
            $"The dose '{dose.Id}' takes a stock; no substance goes in its place. Record what went in besides without \"step\".",
        (StockDose, Portion.ByMass or Portion.ByDrops) => $"The dose '{dose.Id}' takes a stock: record a volume, such as \"1 L\".",
        (DirectDose direct, Portion.ByVolume or Portion.ByDrops) when entry.What is null && IsSolid(direct.Substance) =>
            OfSolid("dose", dose.Id),
        _ => null,
    };

    private static string? Unfit(BatchStep entry, PhAdjustment adjust) =>
        entry is { What: null, Amount: not null } && adjust.Using is null
            ? "The recipe names nothing that sets the pH, so there is no amount to record. Say with \"add\" what went in."
            : entry is { What: null, Amount.Value: Portion.ByVolume or Portion.ByDrops } && IsSolid(adjust.Reagent)
                ? OfSolid("dose", BatchDocument.AdjustId)
                : null;

    private static bool IsSolid(Substance? substance) => substance?.Form == PhysicalForm.Solid;

    private static string OfSolid(string word, string id) =>
        $"The {word} '{id}' takes a solid: record what the scale showed, such as \"80.02 g\".";

    /// <summary>What can be recorded of a file.</summary>
    /// <param name="Word">What an entry of it is called.</param>
    private sealed record Steps(string File, string Word, IReadOnlyList<Doable> All);

    /// <param name="What">As the file writes it; null for what takes no substance.</param>
    /// <param name="Substance">The same resolved.</param>
    /// <param name="Unfit">Why it cannot have been done as recorded; null when it can.</param>
    private sealed record Doable(string Id, string? What, string? Substance, Func<BatchStep, string?> Unfit);
}
