using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Rules.Chelation;

/// <summary>A solution over what readily falls out of it, for questions of the kind "what if": another pH, one metal less, other water.</summary>
internal sealed class Settled
{
    private const string AgedHydroxide = "Ferrihydrite (aged)";

    private readonly ComponentTotals _totals;
    private readonly PrecipitationResult _result;
    private readonly double _kilogramsWaterPerLitre;

    private Settled(ComponentTotals totals, PrecipitationResult result, double kilogramsWaterPerLitre)
    {
        _totals = totals;
        _result = result;
        _kilogramsWaterPerLitre = kilogramsWaterPerLitre;
    }

    /// <summary>pH over the deposit.</summary>
    public double Ph => _result.Final.Ph;

    /// <summary>Lets everything fall out that forms readily.</summary>
    /// <param name="ph">pH before anything falls out; null where it follows from what is in it.</param>
    /// <param name="openToAir">At rest with the carbon dioxide of the air.</param>
    /// <param name="without">A component to leave out; only with a given pH, because its charge goes too.</param>
    /// <param name="fresh">True where iron may only fall out as fresh, most soluble hydroxide: the mildest reading of the constants.</param>
    /// <returns>Null when the equilibrium is not found.</returns>
    public static Settled? Of(
        SolutionMix mix, double celsius, double? ph = null, bool openToAir = false, string? without = null, bool fresh = false)
    {
        if (mix.Failure is not null)
        {
            return null;
        }

        var solver = EquilibriumSolver.Product;
        var totals = without is null ? mix.Totals : mix.Totals.With(without, 0);
        var input = mix.Input(celsius, openToAir ? StateSolver.CarbonDioxideOfAirAtm : null) with { Totals = totals, FixedPh = ph };
        var result = solver.Precipitate(
            input, solver.Constants.Solids.Where(s => s.Role == SolidRole.FormsReadily && !(fresh && s.Name == AgedHydroxide)));
        return result.Converged ? new Settled(totals, result, mix.KilogramsWaterPerLitre) : null;
    }

    /// <summary>Share of a component that lies in the deposits, or in some of them, 0 to 1.</summary>
    public double LostShare(string component, Func<Solid, bool>? into = null)
    {
        var all = _totals[component];
        var lost = _result.Deposits.Where(d => into is null || into(d.Solid)).Sum(d => d.MolPerKgInitialWater * CountOf(d.Solid, component));
        return all > 0 ? Math.Clamp(lost / all, 0, 1) : 0;
    }

    /// <summary>g per litre of some of the deposits.</summary>
    public double GramsPerLitre(Func<Solid, bool> of) =>
        _result.Deposits.Where(d => of(d.Solid)).Sum(d => d.GramsPerKgInitialWater) * _kilogramsWaterPerLitre;

    /// <summary>Share of all iron that an agent holds in solution, 0 to 1.</summary>
    public double HeldIronShare()
    {
        double held = 0;
        foreach (var species in _result.Final.Species)
        {
            var parts = SpeciesComposition.Of(species.Name);
            if (parts.Any(p => Iron.Agents.Contains(p.Key)))
            {
                held += species.MolPerKg * parts.Where(p => p.Key is Iron.Ferrous or Iron.Ferric).Sum(p => p.Value);
            }
        }

        var all = _totals[Iron.Ferrous] + _totals[Iron.Ferric];
        return all > 0 ? Math.Clamp(held * _result.FinalWaterKg / all, 0, 1) : 0;
    }

    public static double CountOf(Solid solid, string component) => solid.Composition.FirstOrDefault(c => c.Key == component).Value;
}
