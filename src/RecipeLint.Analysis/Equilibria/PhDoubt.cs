using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Analysis.Equilibria;

/// <summary>
/// The one place that says whether a pH is known here: not where ions are in it that nobody has stated (contents of unknown composition,
/// formulas whose ions are not known), not of bleach, which is sold with lye that keeps it, of which its label tells nothing, so that it
/// stands at pH 11 to 13 (common practice, no source) where its salts alone would be neutral; and beyond the range of the model only on
/// which side. How well a pH is known that labels leave open says <see cref="GuessedPh"/>.
/// </summary>
public static class PhDoubt
{
    /// <summary>What is said instead of a figure, to finish "pH ...".</summary>
    public const string NotKnown = "not known: bleach holds lye that its label does not tell";

    /// <summary>
    /// Hypochlorite from which its lye counts, mol/L: 10 mg/L of available chlorine, from which the hazard gate counts it.
    /// </summary>
    private const double LeastHypochlorite = 1.4e-4;

    /// <summary>The scale of a meter: what is computed beyond it says no more than that it is a strong acid or lye.</summary>
    private const double LowestRead = 0, HighestRead = 14;

    private const string Hypochlorite = "inert:ClO-1";

    /// <summary>
    /// Moles of what sets free ions that the model does not know, as a share of the charge of all cations that it knows, from which they
    /// decide the pH (common practice, no source); less is what rounded labels leave.
    /// </summary>
    private const double LeastUnread = 0.03;

    /// <summary>
    /// mol of charge taken for a gram of contents nobody states: as much as a liquid with 5 % of potassium hydroxide or 6 % of citric acid
    /// brings (molar masses, CIAAW weights; extracts are boiled with the one or kept with the other: common practice, no source). A powder
    /// holds five times as much dry matter.
    /// </summary>
    private const double NamelessLiquid = 0.001, NamelessSolid = 0.005;

    /// <summary>True when the pH of a solution cannot be told.</summary>
    public static bool In(SolutionMix mix) => Why(mix) is not null;

    /// <summary>Why the pH of a solution cannot be told, to finish "pH ..."; null when it can.</summary>
    public static string? Why(SolutionMix mix) =>
        mix.MolesPerLitre.GetValueOrDefault(Hypochlorite) >= LeastHypochlorite ? NotKnown
        : Decides(mix.UnreadPerLitre, mix.MolesPerLitre)
            ? $"not known: which ions {string.Join(" and ", mix.UnreadPerLitre.Keys)} {(mix.UnreadPerLitre.Count == 1 ? "sets" : "set")} "
                + "free is not known here"
        : null;

    /// <summary>Why the pH of a state is not known, to finish "pH ..."; null when it is.</summary>
    public static string? Of(SolutionState state) => Why(state.Mix) is { } why ? why
        : !state.IsSolved || IsInTheModel(state.Ph) ? null
        : state.Ph < 0 ? "not known: below 0, in an acid stronger than the model covers"
        : "not known: above 14, in a lye stronger than the model covers";

    /// <summary>False for a figure that says no more than that it is a strong acid or lye.</summary>
    public static bool IsInTheModel(double ph) => ph is >= SolutionInput.LowestPh and <= SolutionInput.HighestPh;

    /// <summary>Said instead of a pH that no meter reads; null for one on its scale.</summary>
    public static string? OffTheScale(double ph) => ph switch
    {
        < LowestRead => "below 0",
        > HighestRead => "above 14",
        _ => null,
    };

    /// <summary>True for two beyond the same end of the scale: no meter tells them apart.</summary>
    public static bool ReadAlike(double? one, double? other) => one is { } first && other is { } second
        && OffTheScale(first) is { } side && side == OffTheScale(second);

    /// <summary>True when the pH of a vessel with these additions cannot be told.</summary>
    /// <param name="litres">Volume of the contents, above 0.</param>
    public static bool In(IEnumerable<AdditionFacts> additions, double litres) =>
        additions.Sum(a => a.ComponentMoles.GetValueOrDefault(Hypochlorite)) / litres >= LeastHypochlorite
        || Decides(
            Unread(additions.Select(a => (a, 1.0)), new Volume(litres)),
            ComponentMoles.Sum([.. additions.Select(a => a.ComponentMoles)]).Times(1 / litres));

    /// <summary>
    /// The pH where all ions that nobody has stated are taken for strong lye, so that the solution is no more alkaline than this; the
    /// computed one where there are none, null where it cannot be computed. What is below a limit by this pH is surely below it.
    /// </summary>
    public static double? AtMost(SolutionState state)
    {
        var unread = state.Mix.UnreadPerLitre.Sum(u => u.Value);
        if (!state.IsSolved || unread <= 0)
        {
            return state.IsSolved ? state.PhBeforeDeposit : null;
        }

        var lye = ComponentMoles.Sum(
            [state.Mix.MolesPerLitre, ComponentMoles.Of([new(Component.Hydrogen, -unread), new(Component.Potassium, unread)])]);
        var most = StateSolver.Solve(
            SolutionMix.Of(lye, new Volume(1)), new StateRequest(state.Moment, state.Temperature, state.OpenToAir, []));
        return most.IsSolved ? most.PhBeforeDeposit : null;
    }

    /// <summary>What sets free ions that are not known, by its name; mol/L. Drops of a dye do not count.</summary>
    /// <param name="parts">With the part of each that goes in.</param>
    internal static ComponentMoles Unread(IEnumerable<(AdditionFacts Addition, double Times)> parts, Volume volume) => ComponentMoles.Of(
        parts.Where(p => p.Addition.Substance is { Dissolves.Count: 0, Kind: not SubstanceKind.Dye })
            .GroupBy(p => p.Addition.Substance.Name, StringComparer.Ordinal)
            .Select(g => KeyValuePair.Create(g.Key, g.Sum(p => p.Times * Moles(p.Addition)) / volume.Litres)));

    private static double Moles(AdditionFacts addition) => addition.Substance switch
    {
        { Formula: { } formula } => addition.Mass.Grams / formula.MolarMass.GramsPerMole,
        { Form: PhysicalForm.Solid } => NamelessSolid * addition.Mass.Grams,
        _ => NamelessLiquid * addition.Mass.Grams,
    };

    private static bool Decides(ComponentMoles unread, ComponentMoles known) => unread.Sum(u => u.Value) is > 0 and var moles
        && moles >= LeastUnread * known.Sum(m => SolutionComponent.TryParse(m.Key, out var ion) && ion.Name != Component.Hydrogen
            ? Math.Max(0, ion.Charge) * m.Value : 0);
}
