using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Engine;

/// <summary>
/// What judging a part of the files has found, before suppressions: all that is needed of it once the files themselves are let go. Findings
/// hold no facts any more, so no repair can be made of them.
/// </summary>
public sealed record LintPiece
{
    /// <summary>By rule, then in the order in which the rule looks.</summary>
    internal IReadOnlyList<Finding> Findings { get; init; } = [];

    /// <summary>Verdicts at places that other pieces may speak of as well.</summary>
    internal IReadOnlyList<SharedVerdict> Shared { get; init; } = [];

    public required IReadOnlyList<RuleFault> Faults { get; init; }

    /// <summary>The distinct settings that hold for any file read.</summary>
    internal IReadOnlyList<ShopSettings> Shops { get; init; } = [];

    /// <summary>The settings of each file that a finding stands in.</summary>
    internal IReadOnlyDictionary<string, ShopSettings> SettingsOf { get; init; } = new Dictionary<string, ShopSettings>();

    /// <summary>Suppressions that this piece can speak about.</summary>
    internal IReadOnlyList<Suppression> InReach { get; init; } = [];

    internal RunInBrief Brief { get; init; } = new();

    /// <summary>The files that findings point into, for lines and excerpts.</summary>
    public required IReadOnlyDictionary<string, SourceFile> Sources { get; init; }
}

/// <summary>A verdict that fires at a place outside the stocks and recipes, where several recipes have a cause in common.</summary>
internal sealed record SharedVerdict(JudgingRule Rule, Verdict Verdict, RuleContext Context, Place Place);

/// <summary>A rule whose findings gather what several recipes have in common at one place.</summary>
internal interface IGathersByPlace
{
    /// <summary>One verdict of several at the same place.</summary>
    Verdict Gather(IReadOnlyList<Verdict> verdicts);
}

/// <summary>A rule on all that was read that needs to know little of it, and judges when every piece has been let go.</summary>
internal interface IJudgesInBrief
{
    IEnumerable<Finding> Judge(RunInBrief run, RuleContext context);
}
