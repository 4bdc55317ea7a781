using System.Collections.Concurrent;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Recipes.Documents;

/// <summary>
/// What a concentration counts as: grams per mole of a formula, and how many of what is meant one such formula stands for.
/// All masses follow from the CIAAW atomic weights; no factor is stored.
/// </summary>
/// <param name="Formula">As written after "as" ("CaCO3", "P2O5", "N").</param>
/// <param name="Count">How many of the meant element or ion one formula unit stands for (2 phosphorus in P2O5).</param>
internal sealed record ChemicalBasis(string Formula, double Count)
{
    private static readonly ConcurrentDictionary<string, MolarMass> Masses = new(StringComparer.Ordinal);

    public MolarMass MolarMass => Masses.GetOrAdd(Formula, f => FormulaParser.Parse(f).MolarMass);

    /// <summary>Moles of what is meant per litre.</summary>
    public AmountConcentration Convert(MassConcentration concentration) => concentration / MolarMass * Count;
}
