using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Chemistry.Composition;

/// <summary>A parsed chemical formula: atoms counted, charge, and the water written as hydrate.</summary>
/// <param name="Text">The formula in our spelling, hydrate dot as "·".</param>
/// <param name="Atoms">Atoms per formula unit, hydrate water included.</param>
/// <param name="Charge">Net charge in elementary charges.</param>
/// <param name="HydrateWater">Molecules of water written after a hydrate dot.</param>
/// <param name="MolarMass">From the CIAAW abridged standard atomic weights.</param>
public sealed record Formula(string Text, IReadOnlyDictionary<Element, double> Atoms, int Charge, double HydrateWater, MolarMass MolarMass)
{
    public override string ToString() => Text;
}
