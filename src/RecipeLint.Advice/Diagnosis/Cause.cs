using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Observations;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Advice.Diagnosis;

/// <summary>How a cause behaves in a test.</summary>
public enum Behaviour
{
    Yes,
    Partly,
    No,
}

/// <summary>Whether a bottle can be saved, and how.</summary>
public enum Rescue
{
    /// <summary>Nothing brings it back into the liquid: make it anew.</summary>
    None,
    Warm,
    Acid,
    Alkali,
    Stir,

    /// <summary>Water takes it up.</summary>
    Water,

    /// <summary>Filter it off; nothing of the recipe is lost.</summary>
    Filter,
    Skim,
    Discard,

    /// <summary>Nothing needs saving.</summary>
    Keep,
}

/// <summary>How often a cause is met, before anything is known of the stock.</summary>
public enum Frequency
{
    Common,
    Occasional,
    Rare,
}

/// <summary>What a deposit can do to people though no line of the recipe brings it.</summary>
/// <param name="From">What does it, by a name that says how it behaves ("black sulfide").</param>
public sealed record CauseDanger(HazardKind Kind, string From);

/// <summary>Something that makes a bottle look as it does: a deposit, a growth, a slip, or nothing wrong at all.</summary>
public sealed record Cause
{
    public required string Id { get; init; }

    /// <summary>What a grower calls it.</summary>
    public required string Name { get; init; }

    public required Frequency Frequency { get; init; }

    /// <summary>True when the bottle may be used as it is.</summary>
    public bool NothingWrong { get; init; }

    /// <summary>Names of solids in the constants; empty for causes outside equilibrium.</summary>
    public IReadOnlyList<string> Solids { get; init; } = [];

    /// <summary>Components without which it cannot come from this recipe.</summary>
    public IReadOnlyList<string> Needs { get; init; } = [];

    /// <summary>Components or traits of which one is needed.</summary>
    public IReadOnlyList<string> NeedsAnyOf { get; init; } = [];

    /// <summary>Traits of a stock that make it likely (see <see cref="StockTraits"/>).</summary>
    public IReadOnlyList<string> MadeLikelyBy { get; init; } = [];

    public required IReadOnlySet<string> Often { get; init; }

    /// <summary>True when it leaves something solid in the bottle.</summary>
    public bool IsDeposit => Rescue is not (Rescue.Keep or Rescue.Stir)
        && Often.Any(s => Vocabulary.Sign(s) is { Kind: SignKind.Form, Id: not ("bubbles" or "layers" or "ring") });

    public required IReadOnlySet<string> Sometimes { get; init; }

    public required IReadOnlySet<string> Never { get; init; }

    /// <summary>By sign id of a test.</summary>
    public required IReadOnlyDictionary<string, Behaviour> Tests { get; init; }

    public required Rescue Rescue { get; init; }

    /// <summary>Whether and how the bottle can be saved, in plain sentences.</summary>
    public required string RescueSay { get; init; }

    /// <summary>What the rescue would have somebody do: "acid", "alkali", "edta", "heat", "shake", "filter", "water".</summary>
    public IReadOnlyList<string> RescueUses { get; init; } = [];

    /// <summary>The part of the rescue that warms, said only where it was tried and helps; empty for none.</summary>
    public string RescueWarm { get; init; } = "";

    /// <summary>pH to which acid or alkali is tried where the engine knows of no solid and so of no pH; null for the usual one.</summary>
    public double? RescuePh { get; init; }

    /// <summary>How to change the recipe or the habit.</summary>
    public required string Change { get; init; }

    /// <summary>The part of the change that is done with acid, said only where it was tried and helps; empty for none.</summary>
    public string ChangeAcid { get; init; } = "";

    /// <summary>What the change would have somebody do, as in <see cref="RescueUses"/>.</summary>
    public IReadOnlyList<string> ChangeUses { get; init; } = [];

    /// <summary>pH to which the change would bring the stock, tried before it is advised; null where it changes none.</summary>
    public double? ChangePh { get; init; }

    /// <summary>What gives a poisonous gas off when this is the cause; empty for most.</summary>
    public IReadOnlyList<CauseDanger> Dangers { get; init; } = [];

    /// <summary>
    /// The hazard that this cause is itself: once a sign of it was told, the hazard alone says what to do. Null for most.
    /// </summary>
    public HazardKind? IsHazard { get; init; }

    /// <summary>Where looks and behaviour come from.</summary>
    public required string Source { get; init; }

    public required Confidence Confidence { get; init; }
}
