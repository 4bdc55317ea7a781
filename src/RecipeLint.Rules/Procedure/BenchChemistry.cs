using RecipeLint.Analysis.Mixing;
using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Rules.Procedure;

/// <summary>What the rules on the order of steps ask of a vessel's equilibrium.</summary>
internal static class BenchChemistry
{
    /// <summary>The clear solution after a step; null where the solver has no answer a verdict may rest on.</summary>
    internal static Equilibrium? Clear(MixingState state) =>
        state is { Failure: null, Clear: { } clear } && clear.Validity.Trust != Trust.OutOfRange ? clear : null;

    /// <summary>Solids that form while one looks on, and how far the solution is past each; worst first.</summary>
    internal static IEnumerable<SolidIndex> FormingReadily(Equilibrium state, Func<Solid, bool> fits) =>
        state.Solids.Where(s => s.Solid.Role == SolidRole.FormsReadily && fits(s.Solid)).OrderByDescending(s => s.Index).ThenBy(s => s.Solid.Name, StringComparer.Ordinal);

    internal static bool Holds(Solid solid, string component) => solid.Composition.Any(c => c.Key == component && c.Value > 0);
}
