using RecipeLint.Analysis;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Plant;

/// <summary>How much of an element a final solution holds, from the weights in the files.</summary>
internal static class ElementSteps
{
    private const int MostShown = 4;

    /// <summary>Writes where an element comes from and what it comes to.</summary>
    /// <returns>mg/L, as printed.</returns>
    public static Term Found(WorkingBuilder work, RecipeFacts recipe, string key)
    {
        if (!recipe.Elements.TryGetValue(key, out var fact) || fact.Contributions.Count == 0)
        {
            return work.Given($"{key} in the solution", 0, "mg/L", From.Amounts);
        }

        var ordered = fact.Contributions
            .OrderByDescending(c => c.Concentration.GramsPerLitre)
            .ThenBy(c => c.Label, StringComparer.Ordinal)
            .ToList();
        var parts = ordered.Take(MostShown).Select(c => Contribution(work, recipe, key, c)).ToList();
        if (ordered.Count > MostShown)
        {
            parts.Add(work.Given($"{key} from everything else", ordered.Skip(MostShown).Sum(c => c.Concentration.MilligramsPerLitre),
                "mg/L", From.Amounts));
        }

        return parts.Count == 1 ? parts[0] : work.Result($"{key} in the solution", "sum", Term.Sum(parts), "mg/L");
    }

    private static Term Contribution(WorkingBuilder work, RecipeFacts recipe, string key, Contribution contribution)
    {
        var dose = recipe.Doses.FirstOrDefault(d => d.Id == contribution.Source);
        var addition = dose?.Direct ?? dose?.Stock?.Additions.FirstOrDefault(a => a.Id == contribution.AdditionId);
        if (dose is null || addition is null || addition.ThroughAliquot || Share(addition, key) is not { } share)
        {
            return work.Given($"{key} from {contribution.Label}", contribution.Concentration.MilligramsPerLitre, "mg/L",
                contribution.Source == "water" ? "water analysis" : From.Amounts);
        }

        var mass = work.Given($"{addition.Substance.Name}{(dose.Stock is { } of ? $" in '{of.Stock.Name}'" : "")}", addition.Mass.Grams,
            "g", From.File);
        var content = work.Given($"{key} in a gram of it", share, "g/g", "formula or label, with the assay");
        var final = work.Given("final volume", recipe.FinalVolume.Litres, "L", From.File);
        if (dose.Stock is not { } stock)
        {
            return work.Result($"{key} from it", "1000 × weight × share / final volume", 1000 * mass * content / final, "mg/L");
        }

        var volume = work.Given($"'{stock.Stock.Name}' makes", stock.Volume.Litres, "L", From.File);
        var dosed = work.Given("of which go into the final volume", dose.Volume.Litres, "L", "dose");
        return work.Result($"{key} from it", "1000 × weight × share / stock volume × dosed / final volume",
            1000 * mass * content / volume * dosed / final, "mg/L");
    }

    /// <summary>Grams of a key in a gram of what is weighed, the assay applied.</summary>
    private static double? Share(AdditionFacts addition, string key) =>
        addition.Mass.Grams > 0 && NutrientKeys.Grams(addition.Elements).FirstOrDefault(g => g.Key == key) is { Grams: > 0 and var grams }
            ? grams / addition.Mass.Grams
            : null;
}
