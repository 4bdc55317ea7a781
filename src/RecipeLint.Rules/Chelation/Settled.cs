using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Rules.Chelation;

/// <summary>
/// A solution over what readily falls out of it, for questions of the kind "what if": another pH, one metal less, other water.
/// </summary>
internal sealed class Settled
{
    private const string AgedHydroxide = "Ferrihydrite (aged)";

    private readonly SolutionState _state;

    private Settled(SolutionState state) => _state = state;

    /// <summary>pH over the deposit.</summary>
    public double Ph => _state.Ph;

    /// <summary>Lets everything fall out that forms readily.</summary>
    /// <param name="ph">pH before anything falls out; null where it follows from what is in it.</param>
    /// <param name="openToAir">At rest with the carbon dioxide of the air.</param>
    /// <param name="without">A component to leave out; only with a given pH, because its charge goes too.</param>
    /// <param name="fresh">True where iron may only fall out as fresh, most soluble hydroxide: the mildest reading of the
    /// constants.</param>
    /// <returns>Null when the equilibrium is not found.</returns>
    public static Settled? Of(
        SolutionMix mix, double celsius, double? ph = null, bool openToAir = false, string? without = null, bool fresh = false)
    {
        var asked = without is null || mix.Failure is not null ? mix : mix with { Totals = mix.Totals.With(without, 0) };
        var state = StateSolver.Solve(asked, new StateRequest(StateMoment.Tank, new Temperature(celsius), openToAir, [])
        {
            SetPh = ph,
            Narrow = fresh ? s => s.Solid.Name != AgedHydroxide : null,
        });
        return state.IsSolved ? new Settled(state) : null;
    }

    /// <summary>Share of a component that lies in the deposits, or in some of them, 0 to 1.</summary>
    public double LostShare(string component, Func<Solid, bool>? into = null)
    {
        var all = _state.Mix.Totals[component] * _state.KilogramsWaterPerLitre;
        var lost = _state.Deposits.Where(d => into is null || into(d.Solid)).Sum(d => d.Amount.MolesPerLitre * CountOf(d.Solid, component));
        return all > 0 ? Math.Clamp(lost / all, 0, 1) : 0;
    }

    /// <summary>g per litre of some of the deposits.</summary>
    public double GramsPerLitre(Func<Solid, bool> of) =>
        _state.Deposits.Where(d => of(d.Solid)).Sum(d => d.Mass.GramsPerLitre);

    /// <summary>Share of all iron that an agent holds in solution, 0 to 1.</summary>
    public double HeldIronShare()
    {
        double held = 0;
        foreach (var species in _state.Solution!.Species)
        {
            var parts = SpeciesComposition.Of(species.Name);
            if (parts.Any(p => Iron.Agents.Contains(p.Key)))
            {
                held += species.MolPerKg * parts.Where(p => p.Key is Iron.Ferrous or Iron.Ferric).Sum(p => p.Value);
            }
        }

        var all = _state.Mix.Totals[Iron.Ferrous] + _state.Mix.Totals[Iron.Ferric];
        return all > 0 ? Math.Clamp(held * _state.KilogramsWaterLeftPerLitre / _state.KilogramsWaterPerLitre / all, 0, 1) : 0;
    }

    public static double CountOf(Solid solid, string component) => solid.Composition.FirstOrDefault(c => c.Key == component).Value;
}
