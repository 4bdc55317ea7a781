using System.Collections.Frozen;

namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>What dissolved species are built of, by their names.</summary>
public static class SpeciesComposition
{
    private static readonly Lazy<FrozenDictionary<string, int>> Index = new(() =>
        ThermoTables.SpeciesNames.Select((name, i) => KeyValuePair.Create(name, i)).ToFrozenDictionary(StringComparer.Ordinal));

    private static readonly Lazy<KeyValuePair<string, double>[][]> OfSpecies = new(() =>
        [.. Enumerable.Range(0, ThermoTables.SpeciesNames.Length).Select(Parts)]);

    private static readonly Lazy<KeyValuePair<string, double>[][]> OfComponents = new(() =>
        [.. Components.Names.Select(name => new[] { KeyValuePair.Create(name, 1.0) })]);

    /// <summary>
    /// Components of a species with their numbers; H+ and H2O may be negative. A component is made of itself; a name the tables do not know
    /// (an inert ion) of nothing.
    /// </summary>
    public static IReadOnlyList<KeyValuePair<string, double>> Of(string species)
    {
        var component = Components.Find(species);
        return component >= 0 ? OfComponents.Value[component] : Index.Value.TryGetValue(species, out var i) ? OfSpecies.Value[i] : [];
    }

    private static KeyValuePair<string, double>[] Parts(int species)
    {
        int from = ThermoTables.SpeciesStart[species], to = ThermoTables.SpeciesStart[species + 1];
        var parts = new KeyValuePair<string, double>[to - from];
        for (var t = from; t < to; t++)
            parts[t - from] = KeyValuePair.Create(Components.Names[ThermoTables.SpeciesTerms[t]], ThermoTables.SpeciesCoefficients[t]);
        return parts;
    }

    /// <summary>Where the formation constant of a species comes from; null for a component or an inert ion, which have none.</summary>
    public static string? SourceOf(string species) => Index.Value.TryGetValue(species, out var i) ? ThermoTables.SpeciesSources[i] : null;
}
