using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Analysis.Hazards;

/// <summary>The words on one kind of hazard, from hazards.json.</summary>
/// <param name="Name">"chlorine gas".</param>
/// <param name="Happens">Ends a sentence: "sets chlorine free ...".</param>
/// <param name="Notice">What a person sees, smells and feels.</param>
/// <param name="First">What to do first, whole sentences.</param>
/// <param name="Help">When to call for help, whole sentences.</param>
/// <param name="When">Ends a sentence on a hazard that is only possible: "when any acid gets to it".</param>
/// <param name="Instead">How the cause is taken away, whole sentences.</param>
/// <param name="Signs">Signs of the diagnosis that point to it.</param>
/// <param name="Source">Where limits and behaviour come from.</param>
public sealed record HazardText(
    HazardKind Kind, string Name, string Happens, string Notice, string First, string Help, string When, string Instead,
    IReadOnlyList<string> Signs, string Source, string Confidence)
{
    /// <summary>Closes every page: who decides.</summary>
    public static string Deference => HazardData.Deference;

    public static HazardText Of(HazardKind kind) => HazardData.Text(kind);

    public static IReadOnlyList<HazardText> All => HazardData.Texts;
}

/// <summary>One row of roles.json: a behaviour. A substance of the catalogue names its row in 'behavesAs'.</summary>
public sealed record HazardRoleRow(string Id, IReadOnlySet<HazardRole> Roles, string Why, string Source, Confidence Confidence);

/// <summary>One amount from which a hazard counts.</summary>
/// <param name="Confidence">"found", "memory", "derived" or "practice".</param>
public sealed record HazardLimit(string Name, double Value, string Unit, string What, string Source, string Confidence);
