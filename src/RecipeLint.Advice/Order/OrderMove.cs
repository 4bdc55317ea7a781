using RecipeLint.Analysis.Mixing;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Advice.Order;

/// <summary>How a solid comes about while an order is followed.</summary>
public enum SolidOrigin
{
    /// <summary>A salt that the water there cannot dissolve yet.</summary>
    Undissolved,

    /// <summary>It falls out of the stirred vessel.</summary>
    FallsOut,

    /// <summary>It forms where what is poured meets the vessel.</summary>
    WhereTheyMeet,

    /// <summary>The air turns unprotected iron(II) into it while the vessel stands.</summary>
    Rust,
}

/// <summary>A solid that an addition brings about beyond what the finished stock drops anyway.</summary>
/// <param name="Solid">Null for a salt that only its handbook solubility speaks for, and for rust.</param>
/// <param name="Salt">The undissolved salt; null otherwise.</param>
/// <param name="Concentration">g per litre: of the vessel's contents, or of the local mixture where they meet.</param>
/// <param name="Milligrams">What it counts, mg per litre of finished stock.</param>
/// <param name="Permanent">True when it outlasts the mixing.</param>
/// <param name="Ph">There.</param>
public sealed record OrderSolid(
    SolidOrigin Origin, Solid? Solid, Substance? Salt, MassConcentration Concentration, double Milligrams, bool Permanent, double? Ph)
{
    /// <summary>Less than this counts as none, mg per litre of finished stock.</summary>
    public const double CountedFromMilligrams = 0.5;

    /// <summary>Name in the constant set, or of the salt.</summary>
    public string Name => Solid?.Name ?? Salt?.Name ?? "Rust";
}

/// <summary>One addition put into what is in the vessel by then.</summary>
/// <param name="Locked">Solids that outlast the mixing, afterwards.</param>
internal sealed record OrderMove(
    OrderUnit Unit, VesselContents After, MixingState State, ComponentMoles Locked,
    IReadOnlyList<OrderSolid> Solids, OrderCost Cost);
