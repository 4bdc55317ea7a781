using System.Text.Json;
using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Chemistry.Tests.Equilibrium;

/// <summary>
/// Solutions computed with USGS PHREEQC 3.8.9 (public domain; Parkhurst &amp; Appelo 2013, USGS Techniques and Methods 6-A43) from the same
/// constants, as carried in Data/reference-solutions.json.
/// </summary>
public static class ReferenceCases
{
    private static readonly JsonElement Root = Load();

    public static IEnumerable<JsonElement> Solutions => Root.GetProperty("solutions").EnumerateArray();
    public static IEnumerable<JsonElement> Precipitations => Root.GetProperty("precipitations").EnumerateArray();

    public static SolutionInput Input(JsonElement e) => new()
    {
        Totals = new ComponentTotals(Pairs(e.GetProperty("totals"))),
        Celsius = e.GetProperty("t").GetDouble(),
        FixedPh = e.TryGetProperty("pH", out var ph) ? ph.GetDouble() : null,
    };

    public static IEnumerable<KeyValuePair<string, double>> Pairs(JsonElement e) =>
        e.EnumerateObject().Select(p => new KeyValuePair<string, double>(p.Name, p.Value.GetDouble()));

    private static JsonElement Load()
    {
        using var doc = JsonDocument.Parse(File.ReadAllText(Path.Combine(
            Repository.Root, "tests", "RecipeLint.Chemistry.Tests", "Equilibrium", "Data", "reference-solutions.json")));
        return doc.RootElement.Clone();
    }
}
