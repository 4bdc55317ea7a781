using RecipeLint.Analysis;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Composition;

namespace RecipeLint.Reports.ComputedFacts;

/// <summary>Facts of one recipe.</summary>
internal static class RecipeFactsJson
{
    /// <summary>Fertiliser labels print these as oxides and the micronutrients as elements.</summary>
    private static readonly HashSet<string> LabelledAsOxide = ["P", "K", "Ca", "Mg", "S", "Na", "Si"];

    public static void Write(FactsJson facts, RecipeFacts recipe, bool full)
    {
        var json = facts.Json;
        json.WriteString("kind", "recipe");
        json.WriteString("name", recipe.Recipe.Name);
        facts.Locator(recipe.Recipe.Place);
        json.WriteBoolean("complete", recipe.IsComplete);
        json.WriteStartObject("profile");
        json.WriteString("name", recipe.Profile.Name);
        json.WriteString("stage", recipe.Profile.Stage);
        json.WriteEndObject();
        json.WriteString("givenTo", recipe.Recipe.IsForLeaves ? "leaves" : "roots");
        facts.Number("finalVolume_L", recipe.FinalVolume.Litres);
        facts.Number("waterVolume_L", recipe.WaterVolume.Litres);
        WriteDoses(facts, recipe);
        if (recipe.Water is { } water)
        {
            json.WriteStartObject("water");
            facts.Water(water);
            json.WriteEndObject();
        }

        if (recipe.Adjustment is { } adjustment)
        {
            json.WriteStartObject("adjustment");
            facts.Adjustment(adjustment);
            json.WriteEndObject();
        }

        WriteElements(facts, recipe);
        WriteIons(facts, recipe);
        facts.Components("components", recipe.ComponentMoles, recipe.FinalVolume.Litres);
        facts.Masses("possibleImpurities", recipe.Impurities);
        ChemistryFactsJson.Write(facts, recipe, full);
        facts.Assumptions(recipe.Assumptions);
    }

    private static void WriteDoses(FactsJson facts, RecipeFacts recipe)
    {
        var json = facts.Json;
        json.WriteStartArray("doses");
        foreach (var dose in recipe.Doses)
        {
            json.WriteStartObject();
            json.WriteString("id", dose.Id);
            facts.Locator(dose.Entry.Place);
            json.WriteString("basis", BasisName(dose.Basis));
            facts.Text("stock", dose.Stock?.Stock.File);
            facts.Number("volume_L", dose.Volume.Litres);
            facts.Number("dose_mL_per_L", dose.Dose?.MillilitresPerLitre);
            facts.Text("measure", dose.Measure?.Name);
            if (dose.Direct is { } direct)
            {
                json.WriteStartObject("addition");
                StockFactsJson.WriteAddition(facts, direct);
                json.WriteEndObject();
            }

            facts.Masses("elements", dose.Elements);
            facts.Components("components", dose.ComponentMoles);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteElements(FactsJson facts, RecipeFacts recipe)
    {
        var json = facts.Json;
        json.WriteStartObject("elements");
        foreach (var (key, fact) in recipe.Elements)
        {
            json.WriteStartObject(key);
            facts.Number("concentration_mg_per_L", fact.Concentration.MilligramsPerLitre);
            facts.Number("concentration_mmol_per_L", fact.Molar.MillimolesPerLitre);
            var element = NutrientKeys.ElementOf(key);
            if (LabelledAsOxide.Contains(key) && OxideBasis.TryUsualForm(element, out var oxide))
            {
                json.WriteStartObject("asOxide");
                json.WriteString("oxide", oxide);
                facts.Number("concentration_mg_per_L", fact.Concentration.MilligramsPerLitre / OxideBasis.GramsElementPerGram(oxide));
                json.WriteEndObject();
            }

            json.WriteStartArray("contributions");
            foreach (var contribution in fact.Contributions)
            {
                json.WriteStartObject();
                json.WriteString("source", contribution.Source);
                facts.Text("addition", contribution.AdditionId);
                json.WriteString("label", contribution.Label);
                facts.Number("concentration_mg_per_L", contribution.Concentration.MilligramsPerLitre);
                facts.Locator(contribution.Place);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndObject();
    }

    private static void WriteIons(FactsJson facts, RecipeFacts recipe)
    {
        var json = facts.Json;
        json.WriteStartObject("charge");
        facts.Number("cations_meq_per_L", recipe.Charge.Cations.MilliequivalentsPerLitre);
        facts.Number("anions_meq_per_L", recipe.Charge.Anions.MilliequivalentsPerLitre);
        facts.Number("unassigned_meq_per_L", recipe.Charge.Unassigned.MilliequivalentsPerLitre);
        facts.Number("unexplained_meq_per_L", recipe.Charge.Unexplained.MilliequivalentsPerLitre);
        json.WriteEndObject();
        json.WriteStartObject("ions");
        foreach (var ion in recipe.Ions)
        {
            json.WriteStartObject(ion.Name);
            json.WriteNumber("charge", ion.Charge);
            facts.Number("concentration_mmol_per_L", ion.Concentration.MillimolesPerLitre);
            facts.Number("concentration_meq_per_L", ion.ChargeConcentration.MilliequivalentsPerLitre);
            json.WriteEndObject();
        }

        json.WriteEndObject();
    }

    private static string BasisName(DoseBasis basis) => basis switch
    {
        DoseBasis.Direct => "direct",
        DoseBasis.Stated => "stated dose",
        DoseBasis.Volume => "stated volume",
        DoseBasis.Strokes => "strokes",
        DoseBasis.StockOwn => "dose of the stock",
        _ => throw new ArgumentOutOfRangeException(nameof(basis)),
    };
}
