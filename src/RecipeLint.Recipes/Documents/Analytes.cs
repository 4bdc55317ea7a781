using System.Collections.Frozen;

namespace RecipeLint.Recipes.Documents;

/// <summary>One key of a water analysis.</summary>
/// <param name="Key">As files write it.</param>
/// <param name="Component">The solution component it dissolves as.</param>
/// <param name="Charge">Charge of the ion as it stands in water, which meq/L counts; 0 where that depends on the pH.</param>
/// <param name="Bases">What a mass may count as, the key's own meaning first; counts are moles of component per formula.</param>
internal sealed record Analyte(string Key, string Component, int Charge, IReadOnlyList<ChemicalBasis> Bases);

/// <summary>The keys of a water analysis and what their values may count as.</summary>
internal static class Analytes
{
    /// <summary>
    /// "as CaCO3" counts charge: the mass of calcium carbonate that carries as much of it (Standard Methods for the Examination of
    /// Water and Wastewater, method 2340; recalled). One CaCO3 carries two charges, so it stands for one Ca+2, one Mg+2 or two HCO3-.
    /// Bicarbonate is carbonate with a proton: its component is CO3-2, the proton is in the alkalinity.
    /// </summary>
    public static FrozenDictionary<string, Analyte> All { get; } = new Analyte[]
    {
        new("Ca", "Ca+2", 2, [new("Ca", 1), new("CaCO3", 1), new("CaO", 1)]),
        new("Mg", "Mg+2", 2, [new("Mg", 1), new("CaCO3", 1), new("MgO", 1)]),
        new("Na", "Na+", 1, [new("Na", 1)]),
        new("K", "K+", 1, [new("K", 1), new("K2O", 2)]),
        new("NH4", "NH4+", 1, [new("NH4", 1), new("N", 1)]),
        new("Fe", "Fe+2", 2, [new("Fe", 1)]),
        new("Mn", "Mn+2", 2, [new("Mn", 1)]),
        new("Zn", "Zn+2", 2, [new("Zn", 1)]),
        new("Cu", "Cu+2", 2, [new("Cu", 1)]),
        new("B", "B(OH)3", 0, [new("B", 1)]),
        new("Si", "H4SiO4", 0, [new("Si", 1), new("SiO2", 1)]),
        new("Cl", "Cl-", -1, [new("Cl", 1)]),
        new("F", "inert:F-1", -1, [new("F", 1)]),
        new("SO4", "SO4-2", -2, [new("SO4", 1), new("S", 1), new("SO3", 1)]),
        new("S", "SO4-2", -2, [new("S", 1), new("SO4", 1), new("SO3", 1)]),
        new("NO3", "NO3-", -1, [new("NO3", 1), new("N", 1)]),
        new("NO3-N", "NO3-", -1, [new("N", 1), new("NO3", 1)]),
        new("P", "H2PO4-", 0, [new("P", 1), new("PO4", 1), new("P2O5", 2)]),
        new("PO4", "H2PO4-", 0, [new("PO4", 1), new("P", 1), new("P2O5", 2)]),
        new("HCO3", "CO3-2", -1, [new("HCO3", 1), new("CaCO3", 2)]),
        new("CO3", "CO3-2", -2, [new("CO3", 1), new("CaCO3", 1)]),
    }.ToFrozenDictionary(a => a.Key, StringComparer.Ordinal);
}
