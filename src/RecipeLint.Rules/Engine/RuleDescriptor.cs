namespace RecipeLint.Rules.Engine;

public enum RuleScope
{
    Workspace,
    Stock,
    Recipe,
}

/// <summary>A number or word a shop may change.</summary>
/// <param name="Unit">Empty for a ratio or a word.</param>
/// <param name="Source">Where the default comes from.</param>
public sealed record RuleOption(string Name, string Description, string Default, string Unit, string Source);

/// <summary>What is known of a rule without running it; read from rules/FAMILY/NAME/rule.json and explanation.md.</summary>
public sealed record RuleDescriptor
{
    /// <summary>"RL" and four digits; never reused.</summary>
    public required string Id { get; init; }

    /// <summary>kebab-case, names the bad thing.</summary>
    public required string Name { get; init; }

    public required string Family { get; init; }

    /// <summary>One sentence.</summary>
    public required string Title { get; init; }

    public required Level Level { get; init; }

    public required Certainty Certainty { get; init; }

    public required RuleScope Scope { get; init; }

    public IReadOnlyList<RuleOption> Options { get; init; } = [];

    /// <summary>Version that first had the rule.</summary>
    public required string Since { get; init; }

    /// <summary>Explanation as Markdown; one text for the terminal, SARIF and the handbook.</summary>
    public required Lazy<string> Explanation { get; init; }
}
