using RecipeLint.Analysis;
using RecipeLint.Analysis.Mixing;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Reports.ComputedFacts;

/// <summary>Facts of one stock.</summary>
internal static class StockFactsJson
{
    public static void Write(FactsJson facts, StockFacts stock, bool full)
    {
        var json = facts.Json;
        json.WriteString("kind", "stock");
        json.WriteString("name", stock.Stock.Name);
        facts.Locator(stock.Stock.Place);
        json.WriteBoolean("complete", stock.IsComplete);
        facts.Number("volume_L", stock.Volume.Litres);
        facts.Number("dose_mL_per_L", stock.Stock.Dose?.Value.MillilitresPerLitre);
        json.WriteStartObject("storage");
        facts.Number("coldest_degC", stock.StorageTemperature.Low.Celsius);
        facts.Number("warmest_degC", stock.StorageTemperature.High.Celsius);
        json.WriteEndObject();
        facts.Number("declared_pH", stock.DeclaredPh);

        json.WriteStartArray("additions");
        foreach (var addition in stock.Additions)
        {
            json.WriteStartObject();
            WriteAddition(facts, addition);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        WriteAliquots(facts, stock);
        facts.Waters(stock.Waters);
        json.WriteStartArray("adjustments");
        foreach (var adjustment in stock.Adjustments)
        {
            json.WriteStartObject();
            facts.Adjustment(adjustment);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        WriteElements(facts, stock.Totals, stock.Volume);
        facts.Components("components", stock.ComponentMoles, stock.Volume.Litres);
        facts.Masses("possibleImpurities", stock.Impurities);
        ChemistryFactsJson.Write(facts, stock, full);
        MixingFactsJson.Write(facts, stock.Mixing);
        facts.Assumptions(stock.Assumptions);
    }

    public static void WriteAddition(FactsJson facts, AdditionFacts addition)
    {
        var json = facts.Json;
        json.WriteString("id", addition.Id);
        facts.Locator(addition.Place);
        json.WriteString("substance", addition.Substance.Id);
        json.WriteString("name", addition.Substance.Name);
        facts.Number("mass_g", addition.Mass.Grams);
        facts.Number("volume_L", addition.Volume?.Litres);
        facts.Number("assay_fraction", addition.Assay.Value);
        json.WriteBoolean("assayDeclared", addition.AssayDeclared);
        json.WriteBoolean("throughAliquot", addition.ThroughAliquot);
        facts.Equipment(addition.Scale, addition.Measure, addition.EquipmentStated);
        facts.Masses("elements", addition.Elements);
        facts.Components("components", addition.ComponentMoles);
        facts.Masses("possibleImpurities", addition.Impurities);
    }

    private static void WriteAliquots(FactsJson facts, StockFacts stock)
    {
        var json = facts.Json;
        json.WriteStartArray("aliquots");
        foreach (var aliquot in stock.Aliquots)
        {
            json.WriteStartObject();
            json.WriteString("id", aliquot.Id);
            facts.Locator(aliquot.Place);
            json.WriteString("stock", aliquot.StockFile);
            facts.Number("volume_L", aliquot.Volume.Litres);
            facts.Equipment(null, aliquot.Measure, aliquot.EquipmentStated);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteElements(FactsJson facts, ElementTotals totals, Volume volume)
    {
        var json = facts.Json;
        json.WriteStartObject("elements");
        foreach (var (name, grams) in FactsJson.MassesOf(totals))
        {
            var element = NutrientKeys.ElementOf(name);
            var concentration = new Mass(grams) / volume;
            json.WriteStartObject(name);
            facts.Number("mass_g", grams);
            facts.Number("concentration_mg_per_L", concentration.MilligramsPerLitre);
            facts.Number("concentration_mmol_per_L", (concentration / new MolarMass(AtomicWeights.Of(element))).MillimolesPerLitre);
            json.WriteEndObject();
        }

        json.WriteEndObject();
    }
}
