using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Analysis.Equilibria;

/// <summary>When in its life a solution is looked at.</summary>
public enum StateMoment
{
    /// <summary>As it is made, at bench temperature, iron as added.</summary>
    Mixing,

    /// <summary>At the coldest storage temperature.</summary>
    Coldest,

    /// <summary>At the warmest storage temperature.</summary>
    Warmest,

    /// <summary>After months on the shelf: the air has turned iron(II) to iron(III).</summary>
    Aged,

    /// <summary>
    /// At the end of its time in the bottle, at the warmest: part of its pyrophosphate has turned to orthophosphate, of its sulfamate to
    /// ammonium and sulfate.
    /// </summary>
    Turned,

    /// <summary>The final solution as it is poured together, closed to the air.</summary>
    Tank,

    /// <summary>The final solution after it has come to rest with the carbon dioxide of the air.</summary>
    TankInAir,

    /// <summary>The final solution with its pH adjusted, at rest with the air.</summary>
    TankAdjusted,
}

/// <summary>A solid that falls out.</summary>
/// <param name="Solid">What forms.</param>
/// <param name="Index">Saturation index before anything falls out; for a soluble salt judged by the handbook alone, the product
/// index.</param>
/// <param name="Amount">mol of solid per litre of solution.</param>
/// <param name="Mass">g of solid per litre of solution, hydrate water included.</param>
/// <param name="ByHandbook">True when the amount rests on the handbook solubility because activities cannot be trusted that far.</param>
public sealed record SolidDeposit(Solid Solid, double Index, AmountConcentration Amount, MassConcentration Mass, bool ByHandbook)
{
    /// <summary>
    /// Less than this of a solid is not counted as a deposit: about what turns a litre faintly hazy (common practice, no source).
    /// </summary>
    public const double VisibleGramsPerLitre = 0.01;

    /// <summary>True when there is too little of it to see.</summary>
    public bool IsTrace => Mass.GramsPerLitre < VisibleGramsPerLitre;
}

/// <summary>How near a solid is that does not fall out, or has fallen out.</summary>
/// <param name="Index">Saturation index before anything falls out: 0 saturated, positive above.</param>
public sealed record SolidStanding(Solid Solid, double Index);

/// <summary>Part of a metal that a chelating agent holds.</summary>
/// <param name="Metal">Component name ("Fe+3").</param>
/// <param name="Agent">Component name of the agent ("EDTA-4", "Citrate-3").</param>
/// <param name="OfMetal">Share of the dissolved metal, 0 to 1.</param>
/// <param name="OfAgent">Share of the dissolved agent, 0 to 1.</param>
public sealed record ChelateShare(string Metal, string Agent, double OfMetal, double OfAgent);

/// <summary>A metal in solution.</summary>
/// <param name="Metal">Component name.</param>
/// <param name="Dissolved">All of it that is dissolved.</param>
/// <param name="Unchelated">What no chelating agent holds: free ions and their complexes with water, sulfate, phosphate ...</param>
public sealed record DissolvedMetal(string Metal, AmountConcentration Dissolved, AmountConcentration Unchelated);

/// <summary>A preservative acid.</summary>
/// <param name="Acid">"benzoic acid" or "sorbic acid".</param>
/// <param name="Component">Component name ("Benzoate-").</param>
/// <param name="Undissociated">The form that acts, dissolved: g of acid per litre.</param>
/// <param name="Share">Undissociated share of what is dissolved, 0 to 1.</param>
/// <param name="Index">Saturation index of the solid acid.</param>
public sealed record PreservativeAcid(string Acid, string Component, MassConcentration Undissociated, double Share, double Index)
{
    /// <summary>True when the acid does not crystallise.</summary>
    public bool StaysDissolved => Index <= 0;
}

/// <summary>Electrical conductivity at 25 °C, or why none is given.</summary>
/// <param name="At25">Null when <paramref name="NotGivenBecause"/> says why.</param>
public sealed record ConductivityAt25(Conductivity? At25, IReadOnlyList<string> EstimateBecause, string? NotGivenBecause);

/// <summary>
/// One solution at one moment, at equilibrium with whatever falls out of it. When <see cref="Failure"/> is set there are no numbers: they
/// are zero or empty and mean nothing.
/// </summary>
public sealed record SolutionState
{
    public required StateMoment Moment { get; init; }

    /// <summary>The solution it is a state of.</summary>
    public required SolutionMix Mix { get; init; }

    /// <summary>
    /// What was computed for; the storage temperature is moved into the range of the model, 0 to 45 °C, which <see cref="Validity"/> then
    /// says.
    /// </summary>
    public required Temperature Temperature { get; init; }

    /// <summary>True when it stands open to the carbon dioxide of the air.</summary>
    public bool OpenToAir { get; init; }

    /// <summary>Why there is no state; null when there is one.</summary>
    public string? Failure { get; init; }

    public bool IsSolved => Failure is null;

    /// <summary>pH of the solution over its deposit.</summary>
    public double Ph { get; init; }

    /// <summary>
    /// False when <see cref="Ph"/> is a figure of the salts alone, since nothing tells what else brings acid or lye, or beyond the model.
    /// </summary>
    public bool PhIsKnown => PhDoubt.Of(this) is null;

    /// <summary>
    /// False where nothing tells what decides the pH, so that <see cref="Ph"/> is no figure to print or to judge by. Beyond the model one
    /// still tells on which side it lies.
    /// </summary>
    public bool TellsPh => IsSolved && !PhDoubt.In(Mix);

    /// <summary>pH before anything falls out.</summary>
    public double PhBeforeDeposit { get; init; }

    /// <summary>mol per kg of water.</summary>
    public double IonicStrengthMolPerKg { get; init; }

    /// <summary>At <see cref="Temperature"/>; null when the volume model gives none.</summary>
    public Density? Density => Details?.Density;

    /// <summary>What a meter shows at 25 °C.</summary>
    public ConductivityAt25 Conductivity => Details?.Conductivity ?? new(null, [], "the state has no solution");

    /// <summary>MPa at <see cref="Temperature"/>, at most zero; null when the model's water activity is impossible.</summary>
    public double? OsmoticPotentialMPa => Details?.OsmoticPotentialMPa;

    /// <summary>Activity of water, 0 to 1.</summary>
    public double WaterActivity { get; init; }

    /// <summary>kg of water in a litre of the solution as it is filled.</summary>
    public double KilogramsWaterPerLitre { get; init; }

    /// <summary>kg of water left over the deposit of a litre: hydrates take some; 0 without a state.</summary>
    public double KilogramsWaterLeftPerLitre => Details?.KilogramsWaterLeftPerLitre ?? 0;

    /// <summary>What falls out, largest mass first.</summary>
    public IReadOnlyList<SolidDeposit> Deposits { get; init; } = [];

    /// <summary>Solids of some weight at or near saturation before anything falls out, highest index first.</summary>
    public IReadOnlyList<SolidStanding> NearSaturation => Details?.NearSaturation ?? [];

    /// <summary>Verdicts on soluble salts whose ions are present.</summary>
    public IReadOnlyList<SaltVerdict> Salts { get; init; } = [];

    /// <summary>What stays dissolved, mol per litre of solution as filled; components by name without hydrogen ions.</summary>
    public ComponentMoles DissolvedMolesPerLitre =>
        Details?.DissolvedMolesPerLitre ?? ComponentMoles.Empty;

    public IReadOnlyList<ChelateShare> Chelates => Details?.Chelates ?? [];

    public IReadOnlyList<DissolvedMetal> Metals => Details?.Metals ?? [];

    public IReadOnlyList<PreservativeAcid> Preservatives => Details?.Preservatives ?? [];

    /// <summary>Acid-neutralising capacity of the carbonates, with hydroxide and less hydrogen ions.</summary>
    public ChargeConcentration CarbonateAlkalinity => Details?.CarbonateAlkalinity ?? default;

    /// <summary>Whether the numbers are inside the range of the model, and if not, why.</summary>
    public Validity Validity => Details?.Validity ?? new(Trust.OutOfRange, Failure is null ? [] : [Failure]);

    /// <summary>True where the activities over the deposit are a guess: outside the range of the model, or without a state.</summary>
    public bool IsBeyondTheModel => Solution is null || Solution.Validity.Trust == Trust.OutOfRange;

    /// <summary>Newton steps that the state cost, found or not: the same on every machine.</summary>
    internal int Effort { get; init; }

    internal StateDetails? Details { get; init; }

    /// <summary>The same at the same moment, once the air has oxidised all its iron(II); this state where there is none.</summary>
    public SolutionState OnceIronIsOxidised() => Details?.OnceIronIsOxidised(this) ?? this;

    /// <summary>The solution over its deposit, with every species; null without a state.</summary>
    public Equilibrium? Solution { get; init; }

    /// <summary>The deposit of a solid by name; null when it does not form.</summary>
    public SolidDeposit? Deposit(string solid) => Deposits.FirstOrDefault(d => d.Solid.Name == solid);

    /// <summary>Saturation index of a solid before anything falls out; null when its ions are not all present.</summary>
    public double? Index(string solid) => Clear?.SaturationIndex(solid);

    /// <summary>The clear, possibly supersaturated solution before anything falls out; null without a state.</summary>
    public Equilibrium? Clear { get; init; }
}
