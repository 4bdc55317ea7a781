using System.Collections.Frozen;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Analysis.Judgement;

/// <summary>How sure it is that a solid falls out.</summary>
public enum Sureness
{
    /// <summary>Over the limit, but this solid usually needs more than that to start.</summary>
    MayStayClear,

    /// <summary>
    /// Over the limit by less than the model or the constant is good for, or a salt too near to it to promise that it stays dissolved.
    /// </summary>
    NearTheLimit,

    /// <summary>Over the limit by more.</summary>
    Clear,
}

/// <summary>What a deposit has to pass before it counts.</summary>
public enum DepositBar
{
    /// <summary>The ion product, as a multiple of the one that stays dissolved, is over 1.</summary>
    PastTheLimit,

    /// <summary>The mean index of a salt is over the one from which it is close.</summary>
    CloseByTheMean,

    /// <summary>One of the two measures of a salt alone is near the limit.</summary>
    CloseByOneMeasure,

    /// <summary>The index of ideal mixed crystals with its kin is over 0.</summary>
    CloseAsMixedCrystals,

    /// <summary>g/L of it reach the visible amount.</summary>
    EnoughToSee,

    /// <summary>The part of a metal that leaves with it, %, reaches the share that matters.</summary>
    EnoughOfTheMetal,
}

/// <summary>One bar that a deposit passes or not.</summary>
public readonly record struct DepositTest(DepositBar Bar, double Value, double Limit)
{
    /// <summary>Amounts count from their limit on, indexes above it.</summary>
    public bool Holds => Bar is DepositBar.EnoughToSee or DepositBar.EnoughOfTheMetal ? Value >= Limit : Value > Limit;
}

/// <summary>
/// What the solids of one owner do at the moment at which most of them falls out, or a salt that comes close without crystallising.
/// </summary>
public sealed record JudgedDeposit
{
    /// <summary>Error of a saturation index from ionic strength 3 to 6 mol/kg.</summary>
    private const double ErrorOfStrongSolutions = 0.3;

    private const double WeakIonicStrength = 3;

    /// <summary>
    /// Beyond the model its error is a guess (no source): it grows from that of strong solutions to a factor of ten at twice its range.
    /// </summary>
    private const double ErrorAtTwiceTheRange = 1;

    private const double RangeOfModel = SaltVerdicts.HighestIonicStrength;

    /// <summary>Dilutions tried: to half each until one is inside the range, then between that and the one before.</summary>
    private const int DilutionSteps = 8;

    private const string MeasuredInSalts = "Gypsum";

    // What the measured solubilities of gypsum were made up of, pairs among them.
    private static readonly FrozenSet<string> MeasuredIons = FrozenSet.Create(
        StringComparer.Ordinal, Component.Sodium, Component.Potassium, Component.Ammonium, Component.Magnesium, Component.Calcium,
        Component.Chloride, Component.Nitrate, Component.Sulfate, "Ca(SO4)2-2", Component.Hydrogen);

    public required DepositOwner Owner { get; init; }

    /// <summary>The moment of the largest deposit.</summary>
    public required SolutionState State { get; init; }

    /// <summary>The solid of which most falls out, or the salt that comes close.</summary>
    public required Solid Solid { get; init; }

    /// <summary>Saturation index of <see cref="Solid"/>, six digits; for a salt the mean of its two measures.</summary>
    public required double Index { get; init; }

    /// <summary>Largest first; empty for a salt of which nothing crystallises.</summary>
    public required IReadOnlyList<SolidDeposit> Deposits { get; init; }

    /// <summary>
    /// How sure it is, here or in the same solution diluted into the range of the model: what surely falls out of that does not stay
    /// dissolved in less water.
    /// </summary>
    public Sureness Sureness => InWeaker is { } weaker && weaker.Here > Here ? weaker.Here : Here;

    /// <summary>How sure it is by the index and the doubt of this very solution.</summary>
    public required Sureness Here { get; init; }

    /// <summary>
    /// What the same solution drops of the solid when it is diluted to where the error of the model is known best; null where it is that
    /// weak, where nothing falls out then, and for salts, which have tables of their own.
    /// </summary>
    public JudgedDeposit? InWeaker => Weaker?.Value;

    internal Lazy<JudgedDeposit?>? Weaker { get; init; }

    /// <summary>What the index is good for, either way, log10 units.</summary>
    public required double Doubt { get; init; }

    /// <summary>
    /// True where it is past ten times its product, and past its start by three times what the index is good for inside the range of the
    /// model (common practice, no source): no error of the model explains that away, beyond its range either.
    /// </summary>
    public bool IsFarPast => Index >= Math.Max(1, Solid.StartsInStorage + (3 * (Doubt - (Owner.IsOfSalts ? 0 : BeyondRange(State)))));

    /// <summary>True when it falls out or crystallises; false for a salt that only comes close.</summary>
    public bool FallsOut { get; init; } = true;

    /// <summary>The two measures of a soluble salt; null for any other solid.</summary>
    public SaltVerdict? Salt { get; init; }

    /// <summary>Every bar it has to pass.</summary>
    public required IReadOnlyList<DepositTest> Tests { get; init; }

    /// <summary>True when it counts: a finding is given, and no reader of the bottle calls it clear.</summary>
    public bool Counts => Tests.All(t => t.Holds);

    /// <summary>g/L of all its solids together, six digits; 0 when nothing crystallises.</summary>
    public double GramsPerLitre => Rounding.SixDigits(Deposits.Sum(d => d.Mass.GramsPerLitre));

    /// <summary>
    /// The metal of its owner of which the largest share leaves, and that share, 0 to 1; null where its owner names none.
    /// </summary>
    public (string Metal, double Share)? Loss { get; init; }

    /// <summary>The first of its solids of which nothing tells how it changes with temperature; null when of all something does.</summary>
    public Solid? Untold => Deposits.Select(d => d.Solid).Prepend(Solid).FirstOrDefault(s => !s.TemperatureKnown);

    /// <summary>
    /// The chelating agent, known at one temperature only, that holds most of a metal of its solids; null where none does.
    /// </summary>
    public string? UntoldHolder =>
        Deposits.Select(d => d.Solid).Prepend(Solid).Select(s => UntoldHold.Of(State, s)).FirstOrDefault(a => a is not null);

    /// <summary>Why the state it is judged in is an estimate or outside the model; empty inside its range.</summary>
    public IReadOnlyList<string> Doubts => State.Validity.Reasons;

    /// <summary>Where the constants of its solids, their spread and their start come from.</summary>
    public IReadOnlyList<string> Sources =>
        [.. Deposits.Select(d => d.Solid).DefaultIfEmpty(Solid).SelectMany(s => s.Sources).Distinct(StringComparer.Ordinal)];

    /// <summary>Share of a metal that leaves a solution with some deposits, 0 to 1, six digits.</summary>
    internal static double ShareOf(string metal, SolutionState state, IReadOnlyList<SolidDeposit> deposits)
    {
        var lost = deposits.Sum(d => d.Amount.MolesPerLitre * d.Solid.Composition.Where(c => c.Key == metal).Sum(c => c.Value));
        if (!(lost > 0))
        {
            return 0;
        }

        var left = state.Metals.FirstOrDefault(m => m.Metal == metal)?.Dissolved.MolesPerLitre ?? 0;
        return Rounding.SixDigits(lost / (lost + left));
    }

    /// <summary>
    /// What a saturation index is good for, either way, log10 units. In strong solutions the error of the model grows; for gypsum only as
    /// far as the strength comes from ions in whose solutions its solubility was not measured.
    /// </summary>
    internal static double DoubtOf(SolutionState state, Solid solid, double modelError)
    {
        if (state.Clear is not { IonicStrength: >= WeakIonicStrength } clear)
        {
            return Math.Max(modelError, solid.Spread);
        }

        var unmeasured = solid.Name == MeasuredInSalts ? UnmeasuredShare(clear) : 1;
        return Math.Max(Math.Max(modelError, modelError + (unmeasured * (ErrorOfStrongSolutions - modelError))), solid.Spread)
            + BeyondRange(state);
    }

    /// <summary>What is added to the doubt beyond the range of the model; it grows from nothing, so that no verdict turns there.</summary>
    private static double BeyondRange(SolutionState state) =>
        Math.Clamp(((state.Clear?.IonicStrength ?? 0) / RangeOfModel) - 1, 0, 1) * (ErrorAtTwiceTheRange - ErrorOfStrongSolutions);

    /// <summary>
    /// The state of the same solution diluted into the range in which the error of the model is known best; null where it is in it, or
    /// never comes there.
    /// </summary>
    internal static SolutionState? Diluted(SolutionState state) => state.Clear is not { } clear || IsInRange(clear) ? null
        : state.Details is { } details ? details.Derived.Of(details, _ => new Weakened(ComputeDiluted(state))).State
        : ComputeDiluted(state);

    private static SolutionState? ComputeDiluted(SolutionState state)
    {
        var request = new StateRequest(state.Moment, state.Temperature, state.OpenToAir, [])
        {
            SetPh = state.Details?.PhIsSet == true ? state.PhBeforeDeposit : null,
        };
        double weak = 0, strong = 1;
        for (var i = 0; i < DilutionSteps; i++)
        {
            var middle = weak == 0 ? strong / 2 : Math.Sqrt(weak * strong);
            if (StateSolver.Clear(state.Mix.Times(middle), request) is { Converged: true } there && IsInRange(there))
            {
                weak = middle;
            }
            else
            {
                strong = middle;
            }
        }

        return weak > 0 ? StateSolver.Solve(state.Mix.Times(weak), request) : null;
    }

    /// <summary>Kept beside a state: several solids of one state ask.</summary>
    private sealed record Weakened(SolutionState? State);

    private static bool IsInRange(Equilibrium clear) => clear.IonicStrength < WeakIonicStrength && clear.Validity.Trust == Trust.InRange;

    /// <summary>Share of the ionic strength that comes from ions without measured solubilities of gypsum, 0 to 1.</summary>
    private static double UnmeasuredShare(Equilibrium clear)
    {
        double all = 0, unmeasured = 0;
        foreach (var species in clear.Species)
        {
            var part = species.Charge * species.Charge * species.MolPerKg;
            all += part;
            unmeasured += MeasuredIons.Contains(species.Name) ? 0 : part;
        }

        return all > 0 ? unmeasured / all : 0;
    }

    /// <summary>How sure a solid falls out that is past its limit by an index.</summary>
    internal static Sureness SurenessOf(double index, Solid solid, double doubt) =>
        index <= solid.StartsInStorage ? Sureness.MayStayClear
        : index <= solid.StartsInStorage + doubt ? Sureness.NearTheLimit
        : Sureness.Clear;
}
