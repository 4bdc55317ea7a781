using RecipeLint.Analysis;
using RecipeLint.Analysis.Mixing;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Rules.Procedure;

/// <summary>What the rules on the order of steps ask of a vessel's equilibrium.</summary>
internal static class BenchChemistry
{
    internal const string Calcium = "Ca+2", Sulfate = "SO4-2", Phosphate = "H2PO4-";

    /// <summary>Metals that drop as a hydroxide where neither acid nor chelate holds them.</summary>
    internal static readonly (string Component, string Name)[] Metals =
        [("Fe+3", "iron"), (Ferrous, "iron"), ("Cu+2", "copper"), ("Zn+2", "zinc"), ("Mn+2", "manganese")];

    internal const string Ferrous = "Fe+2";

    private static readonly string[] _agents = ["EDTA-4", "DTPA-5", "HEDTA-3", "EDDHA-4", "Citrate-3", "Gluconate-"];

    /// <summary>The clear solution after a step; null where the solver has no answer a verdict may rest on.</summary>
    internal static Equilibrium? Clear(MixingState state) =>
        state is { Failure: null, Clear: { } clear } && clear.Validity.Trust != Trust.OutOfRange ? clear : null;

    /// <summary>Solids that form while one looks on, and how far the solution is past each; worst first.</summary>
    internal static IEnumerable<SolidIndex> FormingReadily(Equilibrium state, Func<Solid, bool> fits) =>
        state.Solids.Where(s => s.Solid.Role == SolidRole.FormsReadily && fits(s.Solid)).OrderByDescending(s => s.Index).ThenBy(s => s.Solid.Name, StringComparer.Ordinal);

    internal static bool Holds(Solid solid, string component) => solid.Composition.Any(c => c.Key == component && c.Value > 0);

    internal static bool Brings(AdditionFacts addition, string component) => addition.ComponentMoles.GetValueOrDefault(component) > 0;

    /// <summary>True for a solid of calcium with sulfate or phosphate.</summary>
    internal static bool IsOfCalciumWithItsPartner(Solid solid) => Holds(solid, Calcium) && (Holds(solid, Sulfate) || Holds(solid, Phosphate));

    /// <summary>A chelating agent that comes without a metal of its own, or an acid.</summary>
    internal static bool Protects(AdditionFacts addition) =>
        addition.Substance.Kind == SubstanceKind.Acid
        || (_agents.Any(a => Brings(addition, a)) && !Metals.Any(m => Brings(addition, m.Component)));

    /// <summary>True for a hydroxide or basic salt of one of the metals.</summary>
    internal static bool IsHydroxideOfAny(Solid solid) => Metals.Any(m => IsHydroxide(solid, m.Component));

    /// <summary>Of the metal and water alone, or basic salts of sulfate and chloride: their formation sets protons free.</summary>
    internal static bool IsHydroxide(Solid solid, string metal) =>
        Holds(solid, metal)
        && solid.Composition.All(c => c.Key == metal || c.Key is "H+" or "H2O" or Sulfate or "Cl-")
        && solid.Composition.Any(c => c.Key == "H+" && c.Value < 0);
}
