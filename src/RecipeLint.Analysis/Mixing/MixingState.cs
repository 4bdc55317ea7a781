using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Analysis.Mixing;

/// <summary>A solid in the vessel.</summary>
/// <param name="Solid">What it is; null for a salt that only its handbook solubility speaks for.</param>
/// <param name="Undissolved">The salt put in that has not dissolved; null for a solid that formed in the vessel.</param>
/// <param name="Index">Saturation index of the solution before this solid takes anything out of it; 0 for one of an earlier step.</param>
/// <param name="Mass">In the whole vessel.</param>
/// <param name="Locked">The part of the mass that outlasts the mixing, because the solid dissolves again only slowly.</param>
public sealed record VesselSolid(Solid? Solid, Substance? Undissolved, double Index, Mass Mass, Mass Locked)
{
    /// <summary>Name in the constant set, or of the substance.</summary>
    public string Name => Solid?.Name ?? Undissolved!.Name;
}

/// <summary>The vessel after one step, at equilibrium with what does not stay dissolved.</summary>
public sealed record MixingState
{
    public required Temperature At { get; init; }

    /// <summary>Why there are no numbers; null when there are.</summary>
    public string? Failure { get; init; }

    /// <summary>
    /// True while nothing but pure water, dry crystals or nothing at all stands in the vessel: then there is no pH to speak of.
    /// </summary>
    public bool IsEmpty { get; init; }

    /// <summary>Of the solution over what lies in it; null without one, and where ions nobody has stated decide it.</summary>
    public double? Ph { get; init; }

    /// <summary>mol per kg of water; null without a solution.</summary>
    public double? IonicStrengthMolPerKg { get; init; }

    /// <summary>Largest mass first.</summary>
    public IReadOnlyList<VesselSolid> Solids { get; init; } = [];

    /// <summary>
    /// pH in contact with the carbon dioxide of the air; computed only where iron(II) is there that no chelate holds, and the pH is known.
    /// </summary>
    public double? PhInAir { get; init; }

    /// <summary>Share of the iron(II) that no chelate holds which the air oxidises until the next step, 0 to 1; 0 without any.</summary>
    public double IronOxidised { get; init; }

    /// <summary>What that makes of rust.</summary>
    public Mass Rust { get; init; }

    public Validity Validity { get; init; } = new(Trust.InRange, []);

    /// <summary>The clear solution before this step's solids fall out of it; null without one.</summary>
    public Equilibrium? Clear { get; init; }

    /// <summary>The solution over its solids; null without one.</summary>
    public Equilibrium? Solution { get; init; }

    /// <summary>True where the steps before took all the work that is spent on one stock: the state was not asked for.</summary>
    public bool IsNotFollowed { get; init; }

    /// <summary>Newton steps that the state cost: the same on every machine.</summary>
    internal int Effort { get; init; }

    /// <summary>A vessel at bench temperature as if made in one stroke, at rest with all that falls out in the end. Pure.</summary>
    public static MixingState AtRest(VesselContents contents) =>
        VesselSettling.Settle(contents, VesselSettling.NothingLocked, VesselContents.BenchCelsius, inTime: false);

    /// <summary>The solid of a name; null when it is not there.</summary>
    public VesselSolid? Find(string solid) => Solids.FirstOrDefault(s => s.Name == solid);
}
