using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Analysis.Equilibria;

/// <summary>Who holds the metals of a solved solution.</summary>
internal static class MetalBook
{
    private static readonly string[] Metals =
        [Component.Calcium, Component.Magnesium, Component.FerrousIron, Component.FerricIron, Component.Manganese, Component.Zinc,
            Component.Copper, Component.Nickel, Component.Cobalt, Component.Aluminium];

    /// <summary>Agents that hold a metal as a chelate, strong ones first; the fruit acids and glycine hold it weakly.</summary>
    private static readonly string[] Agents = [.. Components.Holders];

    public static (IReadOnlyList<ChelateShare> Shares, IReadOnlyList<DissolvedMetal> Metals) Of(
        Equilibrium state, double kilogramsWaterPerLitre)
    {
        var metal = new double[Metals.Length];
        var agent = new double[Agents.Length];
        var held = new double[Metals.Length, Agents.Length];
        foreach (var species in state.Species)
        {
            var parts = SpeciesComposition.Of(species.Name);
            foreach (var (name, count) in parts)
            {
                if (Array.IndexOf(Agents, name) is >= 0 and var a)
                {
                    agent[a] += count * species.MolPerKg;
                }

                if (Array.IndexOf(Metals, name) is not (>= 0 and var m))
                {
                    continue;
                }

                metal[m] += count * species.MolPerKg;
                foreach (var (other, _) in parts)
                {
                    if (Array.IndexOf(Agents, other) is >= 0 and var with)
                    {
                        held[m, with] += count * species.MolPerKg;
                    }
                }
            }
        }

        var shares = new List<ChelateShare>();
        var metals = new List<DissolvedMetal>();
        for (var m = 0; m < Metals.Length; m++)
        {
            if (!(metal[m] > 0))
            {
                continue;
            }

            double bound = 0;
            for (var a = 0; a < Agents.Length; a++)
            {
                if (held[m, a] > 0)
                {
                    bound += held[m, a];
                    shares.Add(new ChelateShare(Metals[m], Agents[a], held[m, a] / metal[m], held[m, a] / agent[a]));
                }
            }

            metals.Add(new DissolvedMetal(
                Metals[m],
                new AmountConcentration(metal[m] * kilogramsWaterPerLitre),
                new AmountConcentration(Math.Max(0, metal[m] - bound) * kilogramsWaterPerLitre)));
        }

        return (shares, metals);
    }
}
