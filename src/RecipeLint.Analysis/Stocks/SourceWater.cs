using System.Collections.Immutable;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Analysis.Stocks;

/// <summary>What source water brings.</summary>
internal static class SourceWater
{
    public const string Default = "distilled";

    /// <summary>The water a reference means.</summary>
    /// <param name="Document">Null for water taken as pure.</param>
    /// <param name="Resolved">False when the reference leads nowhere or its analysis could not be read in full (already reported).</param>
    public readonly record struct Choice(string Name, WaterDocument? Document, bool Resolved);

    public static Choice Find(Workspace workspace, Located<WaterReference>? reference)
    {
        if (reference is null)
        {
            return new Choice(Default, null, true);
        }

        var (name, file) = reference.Value;
        if (file is not null)
        {
            var water = workspace.FindWater(file);
            return new Choice(water?.Name ?? name, water, water is { IsComplete: true });
        }

        // A built-in water may be listed without a file; else it is pure. A name that looks like a file did not resolve.
        var builtIn = workspace.FindBuiltInWater(name);
        return new Choice(name, builtIn, builtIn is not null || !name.Contains('.', StringComparison.Ordinal));
    }

    public static WaterFacts Pour(string id, Place place, Choice choice, Volume volume, bool estimate, AssumptionList assumptions)
    {
        var values = choice.Document is { } water ? Values(water, assumptions) : [];
        return new WaterFacts
        {
            Id = id,
            Place = place,
            Name = choice.Name,
            Water = choice.Document,
            Volume = volume,
            VolumeIsEstimate = estimate,
            Elements =
                ElementTotals.Sum(values.Select(v => IonFacts.ElementsOf(v.Component, v.Concentration.MolesPerLitre * volume.Litres))),
            ComponentMoles = ComponentMoles.Of(values.SelectMany(v => Dissolved(v, volume))),
        };
    }

    /// <summary>What a water brings of each key per litre, with the place of the value in its file.</summary>
    public static IEnumerable<(string Key, double GramsPerLitre, Place Place)> Nutrients(WaterDocument water) =>
        from value in Values(water, null)
        from nutrient in NutrientKeys.Grams(IonFacts.ElementsOf(value.Component, value.Concentration.MolesPerLitre))
        select (nutrient.Key, nutrient.Grams, value.Place);

    /// <summary>
    /// Values with yearly ranges taken at their middle, and bicarbonate from the alkalinity where no carbonate is listed.
    /// </summary>
    private static ImmutableArray<Value> Values(WaterDocument water, AssumptionList? assumptions)
    {
        var values = ImmutableArray.CreateBuilder<Value>();
        var ranged = new List<string>();
        foreach (var value in water.Values)
        {
            var (low, high) = value.Concentration;
            if (low != high)
            {
                ranged.Add(value.Key.Value);
            }

            values.Add(new Value(value.Component, value.Key.Value != "CO3", (low + high) / 2, value.Key.Place));
        }

        if (water.Alkalinity is { } alkalinity && values.All(v => v.Component != Component.Carbonate))
        {
            var (low, high) = alkalinity.Value;
            values.Add(new Value(
                Component.Carbonate, true, new AmountConcentration(((low + high) / 2).EquivalentsPerLitre), alkalinity.Place));
            assumptions?.Add("water", $"The alkalinity of the water '{water.Name}' is counted as hydrogen carbonate.", alkalinity.Place);
        }

        if (ranged.Count > 0)
        {
            assumptions?.Add(
                "water-range",
                $"The water '{water.Name}' varies over the year; the middle of each range is used ({string.Join(", ", ranged)}).",
                water.Place);
        }

        foreach (var estimate in water.Estimates)
        {
            assumptions?.Add("water", estimate, water.Place);
        }

        return values.ToImmutable();
    }

    private static IEnumerable<KeyValuePair<string, double>> Dissolved(Value value, Volume volume)
    {
        var moles = value.Concentration.MolesPerLitre * volume.Litres;
        yield return KeyValuePair.Create(value.Component, moles);
        if (value.Component == Component.Carbonate && value.Protonated)
        {
            yield return KeyValuePair.Create(Component.Hydrogen, moles);
        }
    }

    /// <param name="Protonated">For carbonate: stated as hydrogen carbonate, so each brings its hydrogen ion.</param>
    private sealed record Value(string Component, bool Protonated, AmountConcentration Concentration, Place Place);
}
