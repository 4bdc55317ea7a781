using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Analysis.Equilibria;

/// <summary>Undissociated benzoic and sorbic acid in a solved solution.</summary>
internal static class PreservativeBook
{
    private static readonly (string Acid, string Component, string Species, string Solid)[] Acids =
    [
        ("benzoic acid", Component.Benzoate, "H(Benzoate)", "Benzoic acid"),
        ("sorbic acid", Component.Sorbate, "H(Sorbate)", "Sorbic acid"),
    ];

    /// <param name="clear">Before anything falls out: decides the index.</param>
    /// <param name="final">Over the deposit: decides what is dissolved.</param>
    public static IReadOnlyList<PreservativeAcid> Of(Equilibrium clear, Equilibrium final, double kilogramsWaterPerLitre)
    {
        var result = new List<PreservativeAcid>();
        foreach (var (acid, component, species, solid) in Acids)
        {
            // Most solutions hold neither: then their solids have no index.
            if (clear.SaturationIndex(solid) is not { } index)
            {
                continue;
            }

            double all = 0;
            foreach (var s in final.AllSpecies)
            {
                foreach (var (name, count) in SpeciesComposition.Of(s.Name))
                {
                    all += name == component ? count * s.MolPerKg : 0;
                }
            }

            if (all > 0)
            {
                var whole = final.Molality(species);
                var gramsPerMole = ConstantSet.Product.FindSolid(solid)!.MolarMassGramsPerMole;
                result.Add(new PreservativeAcid(
                    acid, component, new MassConcentration(whole * gramsPerMole * kilogramsWaterPerLitre), whole / all, index));
            }
        }

        return result;
    }
}
