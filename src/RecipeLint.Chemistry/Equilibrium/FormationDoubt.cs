namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>
/// How well the formation constants of complexes are known, as Data/thermo/species.json states it: by the work a value comes from, or by
/// how it was come by.
/// </summary>
public static class FormationDoubt
{
    /// <summary>How far log10 K of a species may be off (about 95 %); 0 for a component or an inert ion, which have no constant.</summary>
    public static double Of(string species) =>
        Array.IndexOf(ThermoTables.SpeciesNames, species) is >= 0 and var index ? ThermoTables.SpeciesDoubt[index] : 0;

    /// <summary>
    /// Species that are made of two components, and of water and acid besides; with H+ first, those that hold acid and nothing else.
    /// </summary>
    internal static IEnumerable<int> Complexes(string first, string second)
    {
        for (var species = 0; species < ThermoTables.SpeciesNames.Length; species++)
        {
            var parts = SpeciesComposition.Of(ThermoTables.SpeciesNames[species]).Select(p => p.Key).ToList();
            if (parts.Contains(first) && parts.Contains(second)
                && parts.TrueForAll(p => p == first || p == second || p is Component.Hydrogen or Component.Water))
            {
                yield return species;
            }
        }
    }
}
