using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Judgement;
using Component = RecipeLint.Chemistry.Equilibrium.Component;

namespace RecipeLint.Rules.Chelation;

/// <summary>A metal that has taken the chelating agent from the iron of a final solution.</summary>
/// <param name="Key">"Cu".</param>
/// <param name="Name">"copper".</param>
/// <param name="HeldWithout">Share of the iron that would be held at the same pH without it.</param>
internal sealed record Robbery(string Key, string Name, double HeldWithout)
{
    /// <summary>Part of the iron that must be held more without the robber for it to be to blame.</summary>
    private const double LeastGain = 0.1;

    private static readonly (string Component, string Key, string Name)[] _robbers =
    [
        (Component.Copper, "Cu", "copper"), (Component.Zinc, "Zn", "zinc"), (Component.Manganese, "Mn", "manganese"),
        (Component.Nickel, "Ni", "nickel"), (Component.Cobalt, "Co", "cobalt"),
        (Component.Calcium, "Ca", "calcium"), (Component.Magnesium, "Mg", "magnesium"),
    ];

    /// <summary>
    /// The metal without which the iron would be held; null when none is to blame. Where one published limit of the chelate is passed only
    /// copper and zinc can be: for the others the pH is.
    /// </summary>
    /// <param name="held">Share of the iron that is held.</param>
    /// <param name="least">Share that should be.</param>
    public static Robbery? Of(RecipeFacts recipe, SolutionState state, double held, double least)
    {
        var window = ChelateWindow.Of(IronHolders.Of(recipe.ComponentMoles).MaxBy(h => h.Share).Name);
        if (state.Ph > window.Highest || Iron.ChelatorMoles(recipe.ComponentMoles) < least * Iron.Moles(recipe.ComponentMoles))
        {
            return null;
        }

        // Published constants of iron hydroxide lie a unit and more apart with its age; a robbery must show with the fresh one as well.
        var mix = (recipe.Chemistry.AdjustedMix ?? recipe.Chemistry.Mix).WithIronOxidised();
        if (Settled.Of(mix, state.Temperature.Celsius, state.PhBeforeDeposit, state.OpenToAir, fresh: true) is not { } mild
            || mild.HeldIronShare() >= least)
        {
            return null;
        }

        Robbery? best = null;
        foreach (var (component, key, name) in _robbers.Where(r => state.Ph <= window.HighFrom || r.Key is "Cu" or "Zn")
            .Where(r => IsTooMuch(recipe, r.Key)))
        {
            if (mix.Totals[component] > 0
                && Settled.Of(
                    mix, state.Temperature.Celsius, state.PhBeforeDeposit, state.OpenToAir, component)?.HeldIronShare() is { } without
                && without > (best?.HeldWithout ?? 0))
            {
                best = new Robbery(key, name, without);
            }
        }

        return best is not null && best.HeldWithout >= least && best.HeldWithout - held >= LeastGain ? best : null;
    }

    /// <summary>
    /// A trace metal at the level the crop wants is no robber: there is nothing to lower. Calcium and magnesium count as they are.
    /// </summary>
    private static bool IsTooMuch(RecipeFacts recipe, string key) =>
        key is "Ca" or "Mg" || !(recipe.MilligramsPerLitre(key) <= recipe.Profile.Find(key)?.SufficientHigh);
}
