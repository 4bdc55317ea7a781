using RecipeLint.Analysis.Trials;

namespace RecipeLint.Reports.ComputedFacts;

/// <summary>Facts of a stock that was mixed many times over.</summary>
internal static class TrialsJson
{
    public static void Write(FactsJson facts, MixingTrials trials)
    {
        var json = facts.Json;
        var (low, high) = trials.Clear.Interval;
        json.WriteStartObject("mixings");
        json.WriteNumber("seed", trials.Seed);
        json.WriteNumber("computed", trials.Clear.Of);
        json.WriteNumber("notComputed", trials.NotComputed);
        json.WriteNumber("clear", trials.Clear.Hits);
        facts.Number("clearLow_fraction", low);
        facts.Number("clearHigh_fraction", high);
        json.WriteStartArray("against");
        foreach (var cause in trials.Causes)
        {
            json.WriteStartObject();
            json.WriteString("solid", cause.Solid.Name);
            json.WriteNumber("mixings", cause.Count);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }
}
