using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Batches;

/// <summary>Holds batch records against the stocks that they were mixed from.</summary>
internal static class BatchChecks
{
    /// <summary>Entries that name no step, name one twice, or measure it in a way that the step cannot take.</summary>
    /// <returns>The records, those with a problem marked as not read whole, and the problems.</returns>
    public static (IReadOnlyList<BatchDocument> Batches, IReadOnlyList<Problem> Problems) Hold(
        IReadOnlyList<BatchDocument> batches, IReadOnlyDictionary<string, StockDocument> stocks)
    {
        var problems = new List<Problem>();
        var held = new List<BatchDocument>(batches.Count);
        foreach (var batch in batches)
        {
            var found = batch.StockFile is { } file && stocks.TryGetValue(file, out var stock) ? Of(batch, stock).ToList() : [];
            problems.AddRange(found);
            held.Add(found.Count == 0 ? batch : batch with { IsComplete = false });
        }

        return (held, problems);
    }

    private static IEnumerable<Problem> Of(BatchDocument batch, StockDocument stock)
    {
        var byId = stock.Steps.GroupBy(s => s.Id, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.First(), StringComparer.Ordinal);
        var seen = new Dictionary<string, Place>(StringComparer.Ordinal);
        foreach (var entry in batch.Steps)
        {
            if (entry.Step is not { } id)
            {
                continue;
            }

            if (!byId.TryGetValue(id.Value, out var step))
            {
                var near = Written(id.Value, stock) is { Count: > 0 } written ? written : Spelling.Nearest(id.Value, byId.Keys);
                var known = near.Count > 0
                    ? Wording.DidYouMean(near)
                    : byId.Count == 0 ? "" : $" It has {Wording.Join([.. byId.Keys.Take(12).Select(k => $"'{k}'")], "and")}.";
                yield return new Problem(
                    ProblemKind.MissingReference, id.Place, $"'{stock.File}' has no step '{Wording.Shorten(id.Value)}'.{known}")
                {
                    Suggestions = [.. near],
                };
            }
            else if (!seen.TryAdd(id.Value, id.Place))
            {
                yield return new Problem(
                    ProblemKind.DuplicateKey,
                    id.Place,
                    $"The step '{Wording.Shorten(id.Value)}' is recorded twice. Keep one entry with what went in altogether.")
                {
                    Related = [new RelatedPlace(seen[id.Value], "first recorded here")],
                };
            }
            else if (Unfit(entry, step) is { } unfit)
            {
                yield return new Problem(ProblemKind.WrongDimension, entry.Amount?.Place ?? id.Place, unfit);
            }
        }
    }

    /// <summary>Steps that write their substance as the record names the step: whoever copies the stock file copies that.</summary>
    private static IReadOnlyList<string> Written(string text, StockDocument stock) =>
    [
        .. stock.Steps.OfType<AddStep>()
            .Where(s => s.What.Value.Equals(text, StringComparison.OrdinalIgnoreCase)
                || s.Substance?.Id.Equals(text, StringComparison.OrdinalIgnoreCase) == true)
            .Select(s => s.Id),
    ];

    /// <summary>Why a step cannot have been done as recorded; null when it can.</summary>
    private static string? Unfit(BatchStep entry, Step step) => (step, entry.Amount?.Value) switch
    {
        (HandlingStep, not null) => $"In the step '{step.Id}' nothing is put in, so there is no amount to record.",
        (PourStep or TopUpStep, Portion.ByMass or Portion.ByDrops) =>
            $"The step '{step.Id}' pours water: record a volume, such as \"1.4 L\".",
        (AddStep { Substance: { } substance }, Portion.ByVolume or Portion.ByDrops)
            when entry.What is null && substance.Form == Chemistry.Substances.PhysicalForm.Solid =>
                $"The step '{step.Id}' takes a solid: record what the scale showed, such as \"80.02 g\".",
        (AliquotStep, Portion.ByDrops) => $"The step '{step.Id}' takes another stock: record a volume, such as \"20 mL\".",
        _ => null,
    };
}
