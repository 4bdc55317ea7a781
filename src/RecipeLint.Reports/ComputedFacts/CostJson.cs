using RecipeLint.Analysis.Stocks;

namespace RecipeLint.Reports.ComputedFacts;

/// <summary>What a stock or a solution costs, where the shop declares prices; nothing else.</summary>
internal static class CostJson
{
    public static void Write(FactsJson facts, CostFacts? cost)
    {
        if (cost is null)
        {
            return;
        }

        var json = facts.Json;
        json.WriteStartObject("cost");
        facts.Text("currency", cost.Currency.Length > 0 ? cost.Currency : null);
        facts.Number("batch", cost.Batch);
        facts.Number("perLitre", cost.PerLitre);
        json.WriteBoolean("whole", !cost.Unpriced.Any());
        json.WriteStartArray("shares");
        foreach (var share in cost.Shares)
        {
            json.WriteStartObject();
            json.WriteString("substance", share.Substance.Id);
            facts.Number("mass_g", share.Mass.Grams);
            facts.Number("cost", share.Cost);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }
}
