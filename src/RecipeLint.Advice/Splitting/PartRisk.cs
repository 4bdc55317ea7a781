using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Advice.Splitting;

/// <summary>What a clear part would do if it were not kept as it was made. Lower is better everywhere.</summary>
/// <param name="WithoutAcid">
/// Highest saturation index, at least 0, of what falls out by the gram once the pH stands at 6: when the acid is forgotten, used up by hard
/// water, or the part meets a feed. Trace metals drop milligrams and have no say here.
/// </param>
/// <param name="FreeIron">log10 of the share of its iron that no chelate holds; negative infinity without iron.</param>
/// <param name="Slow">Highest saturation index, at least 0, of a solid without iron that forms over weeks.</param>
internal readonly record struct PartRisk(double WithoutAcid, double FreeIron, double Slow)
{
    /// <summary>Feeds and unacidified stocks stand near it (common practice, no source).</summary>
    private const double PhOfFeed = 6;

    private const double HeavyGramsPerLitre = 1;

    private static readonly string[] Iron = [Component.FerrousIron, Component.FerricIron];

    /// <param name="mixed">The part as it is mixed.</param>
    public static PartRisk Of(SolutionMix mix, Equilibrium mixed)
    {
        var neutral = StateSolver.Solve(
            mix, new StateRequest(StateMoment.Mixing, new Temperature(SolutionMix.FilledAtCelsius), false, [])
            {
                SetPh = PhOfFeed,
                StartFrom = mixed,
            });
        return new PartRisk(
            neutral.IsSolved ? Heaviest(neutral) : double.PositiveInfinity,
            LogFreeIron(mixed, mix.KilogramsWaterPerLitre),
            Slowest(mixed));
    }

    /// <summary>The worst of several parts, each for itself.</summary>
    public static PartRisk Worst(IEnumerable<PartRisk> parts) =>
        parts.Aggregate((a, b) => new PartRisk(
            Math.Max(a.WithoutAcid, b.WithoutAcid), Math.Max(a.FreeIron, b.FreeIron), Math.Max(a.Slow, b.Slow)));

    private static double Heaviest(SolutionState neutral) =>
        neutral.Deposits
            .Where(d => d.Mass.GramsPerLitre >= HeavyGramsPerLitre)
            .Select(d => d.Index)
            .Append(0)
            .Max();

    private static double Slowest(Equilibrium state) =>
        state.Solids
            .Where(s => s.Solid.Role == SolidRole.FormsSlowly && !s.Solid.Composition.Any(c => Iron.Contains(c.Key)))
            .Select(s => s.Index)
            .Append(0)
            .Max();

    private static double LogFreeIron(Equilibrium state, double kilogramsWaterPerLitre)
    {
        var metals = MetalBook.Of(state, kilogramsWaterPerLitre).Metals.Where(m => Iron.Contains(m.Metal)).ToList();
        var all = metals.Sum(m => m.Dissolved.MolesPerLitre);
        return all > 0 ? Math.Log10(metals.Sum(m => m.Unchelated.MolesPerLitre) / all) : double.NegativeInfinity;
    }
}
