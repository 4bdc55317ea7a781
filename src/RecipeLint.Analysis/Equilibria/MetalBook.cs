using System.Collections.Concurrent;
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

    /// <summary>The metals and agents a species is built of, which most are not; the same ones are asked for in every state.</summary>
    private static readonly ConcurrentDictionary<string, (int Metal, int Agent, double Count)[]> Roles = new(StringComparer.Ordinal);

    private static (int Metal, int Agent, double Count)[] RolesOf(string species)
    {
        if (Roles.TryGetValue(species, out var known))
        {
            return known;
        }

        // An inert ion, whose name comes out of a file, is built of nothing and is not kept.
        var parts = SpeciesComposition.Of(species);
        return parts.Count == 0 ? [] : Roles[species] =
        [
            .. parts.Select(part => (Array.IndexOf(Metals, part.Key), Array.IndexOf(Agents, part.Key), part.Value))
                .Where(part => part is not (< 0, < 0, _)),
        ];
    }

    public static (IReadOnlyList<ChelateShare> Shares, IReadOnlyList<DissolvedMetal> Metals) Of(
        Equilibrium state, double kilogramsWaterPerLitre)
    {
        var metal = new double[Metals.Length];
        var agent = new double[Agents.Length];
        var held = new double[Metals.Length, Agents.Length];
        foreach (ref readonly var species in state.AllSpecies)
        {
            foreach (var (m, a, count) in RolesOf(species.Name))
            {
                var moles = count * species.MolPerKg;
                if (a >= 0)
                {
                    agent[a] += moles;
                }

                if (m < 0)
                {
                    continue;
                }

                metal[m] += moles;
                foreach (var (_, with, _) in RolesOf(species.Name))
                {
                    if (with >= 0)
                    {
                        held[m, with] += moles;
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
