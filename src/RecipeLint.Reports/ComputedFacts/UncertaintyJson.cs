using RecipeLint.Analysis;
using RecipeLint.Analysis.Uncertainty;

namespace RecipeLint.Reports.ComputedFacts;

/// <summary>How well each element is known, with the share of every source; for a stock also its weighings.</summary>
internal static class UncertaintyJson
{
    public static void Write(FactsJson facts, StockFacts stock, Func<string, StockFacts?> findStock)
    {
        facts.Json.WriteStartObject("uncertainty");
        WriteElements(facts, ElementUncertainty.Of(stock, findStock));
        WriteWeighings(facts, stock);
        facts.Json.WriteEndObject();
    }

    public static void Write(FactsJson facts, RecipeFacts recipe, Func<string, StockFacts?> findStock)
    {
        facts.Json.WriteStartObject("uncertainty");
        WriteElements(facts, ElementUncertainty.Of(recipe, findStock));
        facts.Json.WriteEndObject();
    }

    private static void WriteElements(FactsJson facts, UncertaintyFacts uncertainty)
    {
        var json = facts.Json;
        json.WriteStartObject("elements");
        foreach (var (key, element) in uncertainty.Elements)
        {
            json.WriteStartObject(key);
            facts.Number("standard_fraction", element.RelativeStandard);
            facts.Number("expanded_fraction", element.RelativeExpanded);
            facts.Number("expanded_mg_per_L", element.Expanded.MilligramsPerLitre);
            json.WriteStartArray("shares");
            foreach (var share in element.Shares)
            {
                json.WriteStartObject();
                json.WriteString("source", share.Source.Name);
                facts.Number("variance_fraction", share.Fraction);
                if (share.Source.Place is { } place)
                {
                    facts.Locator(place);
                }

                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndObject();
        facts.Assumptions(uncertainty.Assumptions);
    }

    private static void WriteWeighings(FactsJson facts, StockFacts stock)
    {
        var json = facts.Json;
        json.WriteStartArray("weighings");
        foreach (var fact in WeighingFact.Of(stock))
        {
            json.WriteStartObject();
            json.WriteString("addition", fact.AdditionId);
            facts.Locator(fact.Place);
            json.WriteString("scale", fact.Weighing.Scale.Name);
            facts.Number("mass_g", fact.Weighing.Mass.Grams);
            facts.Number("repeatability_g", fact.Weighing.Repeatability.Grams);
            facts.Number("standard_g", fact.Weighing.Standard.Grams);
            facts.Number("expanded_fraction", fact.Weighing.RelativeExpanded);
            json.WriteBoolean("belowStatedMinimum", fact.Weighing.IsBelowStatedMinimum);
            json.WriteString("load", LoadName(fact.Load));
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static string LoadName(ScaleLoad load) => load switch
    {
        ScaleLoad.Unknown => "capacity not stated",
        ScaleLoad.Within => "within capacity",
        ScaleLoad.OverWithVessel => "over with vessel",
        ScaleLoad.Over => "over capacity",
        _ => throw new ArgumentOutOfRangeException(nameof(load)),
    };
}
