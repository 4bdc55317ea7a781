using System.Collections.Frozen;
using Component = RecipeLint.Chemistry.Equilibrium.Component;

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
        new("Ca", Component.Calcium, 2, [new("Ca", 1), new("CaCO3", 1), new("CaO", 1)]),
        new("Mg", Component.Magnesium, 2, [new("Mg", 1), new("CaCO3", 1), new("MgO", 1)]),
        new("Na", Component.Sodium, 1, [new("Na", 1)]),
        new("K", Component.Potassium, 1, [new("K", 1), new("K2O", 2)]),
        new("NH4", Component.Ammonium, 1, [new("NH4", 1), new("N", 1)]),
        new("NH4-N", Component.Ammonium, 1, [new("N", 1), new("NH4", 1)]),
        new("Fe", Component.FerrousIron, 2, [new("Fe", 1)]),
        new("Mn", Component.Manganese, 2, [new("Mn", 1)]),
        new("Zn", Component.Zinc, 2, [new("Zn", 1)]),
        new("Cu", Component.Copper, 2, [new("Cu", 1)]),
        new("B", Component.Boron, 0, [new("B", 1)]),
        new("Si", Component.Silicate, 0, [new("Si", 1), new("SiO2", 1)]),
        new("Cl", Component.Chloride, -1, [new("Cl", 1)]),
        new("F", "inert:F-1", -1, [new("F", 1)]),
        new("SO4", Component.Sulfate, -2, [new("SO4", 1), new("S", 1), new("SO3", 1)]),
        new("S", Component.Sulfate, -2, [new("S", 1), new("SO4", 1), new("SO3", 1)]),
        new("NO3", Component.Nitrate, -1, [new("NO3", 1), new("N", 1)]),
        new("NO3-N", Component.Nitrate, -1, [new("N", 1), new("NO3", 1)]),
        new("P", Component.Phosphate, 0, [new("P", 1), new("PO4", 1), new("P2O5", 2)]),
        new("PO4", Component.Phosphate, 0, [new("PO4", 1), new("P", 1), new("P2O5", 2)]),
        new("HCO3", Component.Carbonate, -1, [new("HCO3", 1), new("CaCO3", 2)]),
        new("CO3", Component.Carbonate, -2, [new("CO3", 1), new("CaCO3", 1)]),

        // Poisons of a well, by their element: so little of them that no charge is counted.
        new("As", "inert:As", 0, [new("As", 1)]),
        new("Cd", "inert:Cd", 0, [new("Cd", 1)]),
        new("Cr", "inert:Cr", 0, [new("Cr", 1)]),
        new("Hg", "inert:Hg", 0, [new("Hg", 1)]),
        new("Ni", Component.Nickel, 2, [new("Ni", 1)]),
        new("Pb", "inert:Pb", 0, [new("Pb", 1)]),
        new("Se", "inert:Se", 0, [new("Se", 1)]),
    }.ToFrozenDictionary(a => a.Key, StringComparer.Ordinal);
}
