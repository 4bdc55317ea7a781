using System.Collections.Frozen;

namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>What dissolved species are built of, by their names.</summary>
public static class SpeciesComposition
{
    private static readonly Lazy<FrozenDictionary<string, int>> Index = new(() =>
        ThermoTables.SpeciesNames.Select((name, i) => KeyValuePair.Create(name, i)).ToFrozenDictionary(StringComparer.Ordinal));

    /// <summary>
    /// Components of a species with their numbers; H+ and H2O may be negative. A component is made of itself; a name the tables do not know
    /// (an inert ion) of nothing.
    /// </summary>
    public static IReadOnlyList<KeyValuePair<string, double>> Of(string species)
    {
        if (Components.Find(species) >= 0) return [KeyValuePair.Create(species, 1.0)];
        if (!Index.Value.TryGetValue(species, out var i)) return [];
        var parts = new List<KeyValuePair<string, double>>();
        for (int t = ThermoTables.SpeciesStart[i]; t < ThermoTables.SpeciesStart[i + 1]; t++)
            parts.Add(KeyValuePair.Create(Components.Names[ThermoTables.SpeciesTerms[t]], ThermoTables.SpeciesCoefficients[t]));
        return parts;
    }

    /// <summary>Where the formation constant of a species comes from; null for a component or an inert ion, which have none.</summary>
    public static string? SourceOf(string species) => Index.Value.TryGetValue(species, out var i) ? ThermoTables.SpeciesSources[i] : null;
}
