using RecipeLint.Analysis.Mixing;

namespace RecipeLint.Reports.ComputedFacts;

/// <summary>The steps of a stock played through: what is in the vessel after each, and what does not stay dissolved.</summary>
internal static class MixingFactsJson
{
    public static void Write(FactsJson facts, MixingSimulation mixing)
    {
        var json = facts.Json;
        json.WriteStartObject("mixing");
        json.WriteBoolean("procedure", mixing.IsProcedure);
        facts.Number("vessel_L", mixing.VesselCapacity?.Litres);
        json.WriteStartArray("steps");
        foreach (var step in mixing.Steps)
        {
            Step(facts, mixing, step);
        }

        json.WriteEndArray();
        json.WriteStartArray("passing");
        foreach (var solid in mixing.Passing)
        {
            Passing(facts, solid);
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Step(FactsJson facts, MixingSimulation mixing, MixingStep step)
    {
        var json = facts.Json;
        var state = mixing.States[step.Index];
        json.WriteStartObject();
        json.WriteString("id", step.Step.Id);
        facts.Locator(step.Step.Place);
        facts.Number("temperature_degC", step.At.Celsius);
        facts.Number("volume_L", step.After.Litres);
        facts.Number("water_kg", step.After.Solvent.Grams / 1000);
        facts.Number(
            "fillsVessel_fraction", mixing.VesselCapacity is { Litres: > 0 } capacity ? step.After.Litres / capacity.Litres : null);
        facts.Number("pH", state.Ph);
        facts.Number("ionicStrength_mol_per_kg", state.IonicStrengthMolPerKg);
        facts.Number("temperatureChange_K", step.HeatOfDissolving?.ChangeKelvin);
        facts.Number("ironOxidised_fraction", state.IronOxidised);
        json.WriteStartArray("solids");
        foreach (var solid in state.Solids)
        {
            json.WriteStartObject();
            json.WriteString("solid", solid.Name);
            json.WriteBoolean("undissolved", solid.Undissolved is not null);
            facts.Number("index", solid.Index);
            facts.Number("mass_g", solid.Mass.Grams);
            facts.Number("locked_g", solid.Locked.Grams);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("localExcess");
        foreach (var excess in mixing.LocalExcess[step.Index])
        {
            json.WriteStartObject();
            json.WriteString("solid", excess.Solid.Name);
            facts.Number("shareOfPoured_fraction", excess.ShareOfPoured);
            facts.Number("index", excess.Index);
            facts.Number("pH", excess.Ph);
            facts.Number("mass_g_per_L", excess.Concentration.GramsPerLitre);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteString("trust", StateFactsJson.TrustName(state.Validity.Trust));
        facts.Text("reason", state.Failure);
        json.WriteEndObject();
    }

    private static void Passing(FactsJson facts, PassingSolid passing)
    {
        var json = facts.Json;
        json.WriteStartObject();
        json.WriteString("solid", passing.There.Name);
        json.WriteString("first", passing.First.Step.Id);
        json.WriteString("most", passing.At.Step.Id);
        facts.Number("mass_g", passing.There.Mass.Grams);
        facts.Number("mass_g_per_L", passing.Concentration.GramsPerLitre);
        facts.Text("clears", passing.Clears?.Step.Id);
        json.WriteString("fate", passing.Fate switch
        {
            SolidFate.ClearsAgain => "clears again",
            SolidFate.StaysAlthoughItWouldDissolve => "stays although the stock would hold it",
            _ => "falls out of the stock anyway",
        });
        json.WriteEndObject();
    }
}
