using RecipeLint.Recipes.Shop;

namespace RecipeLint.Rules.Engine;

/// <summary>What became of a suppression in this run.</summary>
public enum SuppressionOutcome
{
    /// <summary>It kept at least one finding out of the report.</summary>
    Held,

    /// <summary>Nothing in this run fits it.</summary>
    MatchedNothing,

    /// <summary>A finding fits it but is worse than what was accepted, so it is reported.</summary>
    GotWorse,

    /// <summary>It states an accepted value, but the finding that fits carries no number to compare it with, so it is reported.</summary>
    NoNumber,

    /// <summary>Its last day has passed.</summary>
    Expired,
}

/// <summary>A suppression and what became of it.</summary>
/// <param name="Finding">The finding that fits, the worst where several do; null when none does.</param>
public sealed record SuppressionUse(Suppression Suppression, SuppressionOutcome Outcome, Finding? Finding)
{
    /// <summary>Path of ids of a suppression in its settings file, the same when others are inserted before it.</summary>
    public static string IdPathOf(Suppression suppression) =>
        string.Join('/', new[] { "suppressions", suppression.Rule, suppression.File, suppression.IdPath ?? "" }.Where(p => p.Length > 0));
}

/// <summary>A finding kept out of the report, and by what.</summary>
public sealed record SuppressedFinding(Finding Finding, Suppression Suppression);
