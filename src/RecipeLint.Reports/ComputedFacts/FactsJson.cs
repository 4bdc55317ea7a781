using System.Text.Json;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Recipes;
using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Reports.ComputedFacts;

/// <summary>The parts that stock and recipe facts share.</summary>
internal sealed class FactsJson(Utf8JsonWriter json, Workspace workspace)
{
    public Utf8JsonWriter Json { get; } = json;

    /// <summary>A number; null where it is not finite, so that no document ever holds what JSON cannot say.</summary>
    public void Number(string key, double? value)
    {
        if (value is { } number && double.IsFinite(number))
        {
            Json.WriteNumber(key, number);
        }
        else
        {
            Json.WriteNull(key);
        }
    }

    public void Locator(Place place, string key = "locator")
    {
        Json.WriteStartObject(key);
        Json.WriteString("file", place.File);
        Json.WriteString("pointer", place.Pointer.Value);
        Json.WriteString("idPath", IdPath.Of(workspace, place));
        Json.WriteEndObject();
    }

    /// <summary>Element masses in grams by symbol, and nitrogen by form.</summary>
    public void Masses(string key, ElementTotals totals)
    {
        Json.WriteStartObject(key);
        foreach (var (name, grams) in MassesOf(totals))
        {
            Json.WriteStartObject(name);
            Number("mass_g", grams);
            Json.WriteEndObject();
        }

        Json.WriteEndObject();
    }

    public void Components(string key, ComponentMoles moles, double? litres = null)
    {
        Json.WriteStartObject(key);
        foreach (var (name, amount) in moles)
        {
            Json.WriteStartObject(name);
            Number("amount_mol", amount);
            if (litres is { } volume)
            {
                Number("concentration_mol_per_L", amount / volume);
            }

            Json.WriteEndObject();
        }

        Json.WriteEndObject();
    }

    public void Waters(IReadOnlyList<WaterFacts> waters)
    {
        Json.WriteStartArray("waters");
        foreach (var water in waters)
        {
            Json.WriteStartObject();
            Water(water);
            Json.WriteEndObject();
        }

        Json.WriteEndArray();
    }

    public void Water(WaterFacts water)
    {
        Json.WriteString("id", water.Id);
        Locator(water.Place);
        Json.WriteString("name", water.Name);
        if (water.Water is { File.Length: > 0 } document)
        {
            Json.WriteString("file", document.File);
        }

        Number("volume_L", water.Volume.Litres);
        Json.WriteBoolean("volumeIsEstimate", water.VolumeIsEstimate);
        Components("components", water.ComponentMoles);
    }

    public void Adjustment(PhAdjustmentFacts adjustment)
    {
        Json.WriteString("id", adjustment.Id);
        Locator(adjustment.Place);
        Number("target_pH", adjustment.TargetPh);
        Text("reagent", adjustment.Reagent?.Id);
        Number("reagent_mass_g", adjustment.Amount?.Grams);
        Number("reagent_volume_L", adjustment.Volume?.Litres);
        Number("before_pH", adjustment.PhBefore);
        Json.WriteBoolean("throughAliquot", adjustment.ThroughAliquot);
        Masses("elements", adjustment.Elements);
        Components("components", adjustment.ComponentMoles);
        Text("reason", adjustment.Reason);
    }

    public void Equipment(Scale? scale, Measure? measure, bool stated)
    {
        Text("scale", scale?.Name);
        Text("measure", measure?.Name);
        Json.WriteBoolean("equipmentStated", stated);
    }

    public void Assumptions(IReadOnlyList<Assumption> assumptions)
    {
        Json.WriteStartArray("assumptions");
        foreach (var assumption in assumptions)
        {
            Json.WriteStartObject();
            Json.WriteString("key", assumption.Key);
            Json.WriteString("text", assumption.Text);
            if (assumption.Place is { } place)
            {
                Locator(place);
            }

            Json.WriteEndObject();
        }

        Json.WriteEndArray();
    }

    /// <summary>Where constants and limits come from, each figure once.</summary>
    public void Sources(IEnumerable<Ground> grounds)
    {
        Json.WriteStartArray("sources");
        foreach (var ground in grounds.Distinct())
        {
            Json.WriteStartObject();
            Json.WriteString("of", ground.What);
            Json.WriteString("source", ground.Source);
            Json.WriteEndObject();
        }

        Json.WriteEndArray();
    }

    /// <summary>A text, or null.</summary>
    public void Text(string key, string? value)
    {
        if (value is null)
        {
            Json.WriteNull(key);
        }
        else
        {
            Json.WriteString(key, value);
        }
    }

    public static IEnumerable<(string Name, double Grams)> MassesOf(ElementTotals totals)
    {
        foreach (var element in totals.Elements)
        {
            yield return (element.Symbol, totals[element].Grams);
        }

        foreach (var form in Enum.GetValues<NitrogenForm>().Where(f => totals[f].Grams > 0))
        {
            yield return (NutrientKeys.KeyOf(form), totals[form].Grams);
        }
    }
}
