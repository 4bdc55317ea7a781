using RecipeLint.Analysis;
using RecipeLint.Analysis.Mixing;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Rules.Procedure;

/// <summary>What the rules on the order of steps ask of a vessel's equilibrium.</summary>
internal static class BenchChemistry
{
    internal const string Calcium = Component.Calcium, Sulfate = Component.Sulfate, Phosphate = Component.Phosphate;

    /// <summary>Metals that drop as a hydroxide where neither acid nor chelate holds them.</summary>
    internal static readonly (string Component, string Name)[] Metals =
        [
            (Component.FerricIron, "iron"), (Ferrous, "iron"), (Component.Copper, "copper"), (Component.Zinc, "zinc"),
            (Component.Manganese, "manganese"),
        ];

    internal const string Ferrous = Component.FerrousIron;

    private static readonly string[] _agents =
    [
        Component.Edta, Component.Dtpa, Component.Hedta, Component.Eddha, Component.Idha, Component.Citrate, Component.Gluconate,
    ];

    /// <summary>The clear solution after a step; null where the solver has no answer a verdict may rest on.</summary>
    internal static Equilibrium? Clear(MixingState state) =>
        state is { Failure: null, Clear: { } clear } && clear.Validity.Trust != Trust.OutOfRange ? clear : null;

    /// <summary>Solids that form while one looks on, and how far the solution is past each; worst first.</summary>
    internal static IEnumerable<SolidIndex> FormingReadily(Equilibrium state, Func<Solid, bool> fits) =>
        state.Solids
            .Where(s => s.Solid.Role == SolidRole.FormsReadily && fits(s.Solid))
            .OrderByDescending(s => s.Index)
            .ThenBy(s => s.Solid.Name, StringComparer.Ordinal);

    internal static bool Holds(Solid solid, string component) => solid.Composition.Any(c => c.Key == component && c.Value > 0);

    internal static bool Brings(AdditionFacts addition, string component) => addition.ComponentMoles.GetValueOrDefault(component) > 0;

    /// <summary>True for a solid of calcium with sulfate or phosphate.</summary>
    internal static bool IsOfCalciumWithItsPartner(Solid solid) =>
        Holds(solid, Calcium) && (Holds(solid, Sulfate) || Holds(solid, Phosphate));

    /// <summary>A chelating agent that comes without a metal of its own, or an acid.</summary>
    internal static bool Protects(AdditionFacts addition) =>
        addition.Substance.Kind == SubstanceKind.Acid
        || (_agents.Any(a => Brings(addition, a)) && !Metals.Any(m => Brings(addition, m.Component)));

    /// <summary>True for a hydroxide or basic salt of one of the metals.</summary>
    internal static bool IsHydroxideOfAny(Solid solid) => Metals.Any(m => IsHydroxide(solid, m.Component));

    /// <summary>Of the metal and water alone, or basic salts of sulfate and chloride: their formation sets protons free.</summary>
    internal static bool IsHydroxide(Solid solid, string metal) =>
        Holds(solid, metal)
        && solid.Composition.All(c => c.Key == metal || c.Key is Component.Hydrogen or Component.Water or Sulfate or Component.Chloride)
        && solid.Composition.Any(c => c.Key == Component.Hydrogen && c.Value < 0);
}
