using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Rules.Precipitation;

/// <summary>Silicate beside acid or a metal sets to a gel.</summary>
public sealed class SilicateWithAcidOrMetal : SolidRule
{
    /// <summary>
    /// Silicate in its own alkali is there as chains and rings, for which the constants have no species: they announce silica gel in
    /// bottles that stay clear. Only where something else has lowered the pH by this much is silica judged (common practice, no source).
    /// </summary>
    private const double PhTakenDown = 0.5;

    private const string Silicate = "H4SiO4", Silica = "Amorphous silica";

    public override string Name => "silicate-with-acid-or-metal";

    protected override bool BlamesTheAnion => true;

    private protected override string Why(OwnedSolid owned) =>
        "The gel sets within minutes to days, plugs everything and cannot be dissolved again.";

    private protected override string Remedy(OwnedSolid owned, IReadOnlyList<Supplier> suppliers) =>
        suppliers.Count > 0
            ? $"Keep {suppliers[0].Name} in a bottle of its own, alkaline as it came, and pour it into the tank first"
            : "Keep silicate in a bottle of its own";

    private protected override bool IsPossible(StockFacts stock, Solid solid)
    {
        if (solid.Name != Silica)
        {
            return true;
        }

        var alone = SolutionMix.Of(
            Analysis.Solutions.ComponentMoles.Sum([.. stock.SuppliersOf(Silicate).Select(a => a.ComponentMoles)]), stock.Volume);
        if (alone.Failure is not null)
        {
            return true;
        }

        var state = EquilibriumSolver.Product.Solve(alone.Input(SolutionMix.FilledAtCelsius));
        return !state.Converged || stock.Chemistry.Mixing is not { IsSolved: true } mixing || mixing.PhBeforeDeposit < state.Ph - PhTakenDown;
    }
}
