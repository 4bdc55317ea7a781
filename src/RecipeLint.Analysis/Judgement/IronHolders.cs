using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Analysis.Judgement;

/// <summary>Who holds the iron of a solution.</summary>
public static class IronHolders
{
    /// <summary>
    /// Chelating agents that are put in to hold iron, the strongest first: log K with iron(III) 35.1, 28.0, 25.1, 19.8
    /// (A. E. Martell and R. M. Smith, Critical Stability Constants, recalled) and 15.2 (makers of IDHA, recalled).
    /// </summary>
    public static readonly IReadOnlyList<(string Component, string Name)> Chelators =
        [(Component.Eddha, "EDDHA"), (Component.Dtpa, "DTPA"), (Component.Edta, "EDTA"), (Component.Hedta, "HEDTA"),
            (Component.Idha, "IDHA")];

    /// <summary>Share of the iron that each agent can take mole for mole, the strongest first; citrate takes what is left.</summary>
    public static IReadOnlyList<(string Name, double Share)> Of(ComponentMoles moles)
    {
        var iron = moles.GetValueOrDefault(Component.FerrousIron) + moles.GetValueOrDefault(Component.FerricIron);
        var left = iron;
        var holders = new List<(string Name, double Share)>();
        foreach (var (component, name) in Chelators.Append((Component.Citrate, "citrate")))
        {
            var taken = Math.Min(left, moles.GetValueOrDefault(component));
            left -= taken;
            if (taken > 0)
            {
                holders.Add((name, taken / iron));
            }
        }

        return holders;
    }
}
