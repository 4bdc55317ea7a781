using RecipeLint.Recipes.Patching;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Repairs;

/// <summary>
/// A repair that was tried out on the stock and on every recipe that uses it: its finding goes, and nothing as grave comes.
/// </summary>
public sealed record VerifiedRepair
{
    public required Finding Finding { get; init; }

    public required Repair Repair { get; init; }

    /// <summary>What the user names it by: rule and key ("RL0101:weaker").</summary>
    public string Name => $"{Finding.Rule.Id}:{Repair.Key}";

    /// <summary>What is written, by file.</summary>
    public required IReadOnlyDictionary<string, PatchResult> Patches { get; init; }

    /// <summary>Other findings that go with it.</summary>
    public required IReadOnlyList<Finding> AlsoRemoved { get; init; }

    /// <summary>Milder findings that come instead.</summary>
    public required IReadOnlyList<Finding> Brings { get; init; }

    /// <summary>Findings that could not be made before because something could not be read.</summary>
    public required IReadOnlyList<Finding> Reveals { get; init; }

    /// <summary>Findings that stay and get worse.</summary>
    public required IReadOnlyList<Finding> Worsens { get; init; }

    /// <summary>Elements of final solutions, beside those the finding is about, that move by more than their tolerance: it is another
    /// recipe then.</summary>
    public required IReadOnlyList<ElementShift> Shifts { get; init; }

    /// <summary>What changes in stocks and final solutions.</summary>
    public required IReadOnlyList<SolutionChange> Changes { get; init; }
}
