using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Analysis.Equilibria;

/// <summary>Acid-neutralising capacity from a solved solution.</summary>
internal static class Alkalinity
{
    /// <summary>
    /// Carbonate alkalinity in eq per kg of water: what the hydrogen carbonate and carbonate species, free or paired, and hydroxide take up
    /// on the way to carbonic acid, less the hydrogen ions already there.
    /// </summary>
    public static double OfCarbonates(Equilibrium state)
    {
        double sum = 0;
        foreach (var species in state.Species)
        {
            double carbonate = 0, hydrogen = 0;
            foreach (var (name, count) in SpeciesComposition.Of(species.Name))
            {
                carbonate += name == Component.Carbonate ? count : 0;
                hydrogen += name == Component.Hydrogen ? count : 0;
            }

            sum += species.Name switch
            {
                Component.Hydrogen => -species.MolPerKg,
                "OH-" => species.MolPerKg,
                _ when carbonate > 0 => ((2 * carbonate) - hydrogen) * species.MolPerKg,
                _ => 0,
            };
        }

        return sum;
    }
}
