namespace RecipeLint.Analysis.Hazards;

/// <summary>One hazard of a vessel.</summary>
/// <param name="From">What reacts first, such as the bleach; null where only a sign tells of it.</param>
/// <param name="With">What it reacts with; null where one alone does it.</param>
/// <param name="What">What the figure says: "available chlorine", "oxygen".</param>
/// <param name="Value">The figure that decides, in <paramref name="Unit"/>; 0 where a sign decides.</param>
/// <param name="Limit">From which it counts.</param>
public sealed record Hazard(HazardKind Kind, HazardGrade Grade, Held? From, Held? With, string What, double Value, double Limit,
    string Unit)
{
    public HazardText Text => HazardText.Of(Kind);

    /// <summary>True when nothing at all is advised but to leave it.</summary>
    public bool IsForLeaving => Rules("put") && Rules("filter");

    /// <summary>
    /// True when only parting the two takes the cause away. Fire, heat and fumes of pouring go when more water comes first; what is unknown
    /// has to be found out.
    /// </summary>
    public bool NeedsParting => Grade >= HazardGrade.Present && Kind is not (HazardKind.Fire or HazardKind.Heat or HazardKind.AcidFumes
        or HazardKind.UnknownContents or HazardKind.FermentationPressure or HazardKind.Slaking);

    /// <summary>True when the strength decides that the two have where one is poured onto the other, before they are mixed.</summary>
    public bool IsWhereTheyMeet => Unit == "%";

    /// <summary>Heat of what was put into an empty vessel: it comes once water does.</summary>
    public bool WaitsForWater { get; init; }

    /// <summary>True for what must not even meet in a tank or a drain.</summary>
    public bool IsNeverTogether => NeedsParting && IsForLeaving && Kind != HazardKind.OxygenPressure;

    /// <summary>True when this hazard forbids a handling.</summary>
    public bool Forbids(VesselAction handling) => Rules(HazardGate.Word(handling));

    /// <summary>True when nothing may be put in while it is there.</summary>
    public bool ForbidsPutting => Rules("put");

    /// <summary>Part of what is there that <see cref="Value"/> is, 0 to 1; null where that says nothing more.</summary>
    public double? Share { get; init; }

    /// <summary>True where a sign of it was told as well, whatever the contents say: then what a suspicion forbids counts beside.</summary>
    public bool IsNoticed { get; init; }

    private bool Rules(string act) =>
        HazardData.Forbids(Kind, Grade, act) || (IsNoticed && HazardData.Forbids(Kind, HazardGrade.Suspected, act));
}

/// <summary>Why something is not advised.</summary>
/// <param name="Action">What was asked: a handling, or null for putting something in.</param>
/// <param name="Reagent">What was to be put in; null for a handling.</param>
/// <param name="ByReagent">True when the hazard arises only once the reagent is in.</param>
public sealed record Refusal(Hazard Hazard, VesselAction? Action, Held? Reagent, bool ByReagent);
