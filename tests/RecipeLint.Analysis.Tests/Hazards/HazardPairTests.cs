using RecipeLint.Analysis.Hazards;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Analysis.Tests.Hazards;

/// <summary>
/// All pairs of the catalogue before the gate, against a second opinion that knows substances by the family of their name and nothing of
/// roles.
/// </summary>
public sealed class HazardPairTests
{
    private static readonly string[] Acids = ["nitric-", "phosphoric-", "sulfuric-", "hydrochloric-", "vinegar-", "acetic-", "citric-acid"];

    private static readonly string[] Alkalis = ["koh-", "naoh-", "potassium-hydroxide", "sodium-hydroxide"];

    private static readonly string[] Carbonates = ["potassium-carbonate", "potassium-bicarbonate", "sodium-carbonate", "sodium-bicarbonate"];

    private static readonly string[] Bleaches = ["sodium-hypochlorite", "calcium-hypochlorite"];

    private static readonly string[] Catalysts = ["ferrous-", "ferric-", "manganese-", "copper-", "fe-", "cu-edta", "mn-edta", "cobalt-", "potassium-iodide"];

    private static readonly string[] Ammonium = ["ammonium-", "monoammonium-", "diammonium-"];

    private static readonly string[] Amines = ["urea", "glycine"];

    [Fact]
    public void EveryPairThatTextbooksKeepApartIsAHazard()
    {
        var ids = SubstanceCatalogue.BuiltIn.Substances.Select(s => s.Id).ToList();
        var missed = new List<string>();
        var dangerous = 0;
        var pairs = 0;
        foreach (var (one, other) in ids.SelectMany((a, i) => ids.Skip(i + 1).Select(b => (a, b))))
        {
            pairs++;
            var expected = Expected(one, other).Concat(Expected(other, one)).Distinct().ToList();
            var found = HazardGate.Of(Holding.Of([Of(one), Of(other)], 1)).Present.Select(h => h.Kind).ToHashSet();
            dangerous += found.Count > 0 ? 1 : 0;
            missed.AddRange(expected.Where(e => !found.Contains(e)).Select(e => $"{one} with {other}: {e}"));
        }

        Assert.Equal(ids.Count * (ids.Count - 1) / 2, pairs);
        Assert.True(missed.Count == 0, string.Join('\n', missed.Take(40)));
        Assert.InRange(dangerous, 600, 4000);
    }

    private static IEnumerable<HazardKind> Expected(string one, string other)
    {
        if (Is(one, Bleaches) && Is(other, Acids))
        {
            yield return HazardKind.Chlorine;
        }

        if (Is(one, Bleaches) && (Is(other, Ammonium) || Is(other, Amines)))
        {
            yield return HazardKind.Chloramines;
        }

        if (one.StartsWith("hydrogen-peroxide", StringComparison.Ordinal) && (Is(other, Catalysts) || Is(other, Alkalis) || Is(other, Bleaches)))
        {
            yield return HazardKind.OxygenPressure;
        }

        if (Is(one, Carbonates) && Is(other, Acids) && !other.StartsWith("vinegar", StringComparison.Ordinal))
        {
            yield return HazardKind.CarbonDioxidePressure;
        }

        if (Is(one, Alkalis) && (other is "ammonium-nitrate" or "ammonium-sulfate" or "ammonium-chloride"))
        {
            yield return HazardKind.Ammonia;
        }
    }

    private static Held Of(string id) => Held.Of(SubstanceCatalogue.BuiltIn.ById(id)!, 100);

    private static bool Is(string id, string[] families) => families.Any(f => id.StartsWith(f, StringComparison.Ordinal));
}
