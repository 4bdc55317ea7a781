using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Engine;

public enum RuleScope
{
    Workspace,
    Stock,
    Recipe,
}

/// <summary>A number or word a shop may change.</summary>
/// <param name="Unit">Empty for a ratio or a word.</param>
/// <param name="IsNumber">Its default is a JSON number in rule.json; else it is a word.</param>
/// <param name="Source">Where the default comes from.</param>
public sealed record RuleOption(string Name, string Description, string Default, bool IsNumber, string Unit, string Source);

/// <summary>What a rule rests on.</summary>
/// <param name="Text">Citation, or "common practice, no source".</param>
/// <param name="Confidence">"found" (read there), "memory" (recalled), "derived" (arithmetic from others) or "practice".</param>
public sealed record RuleSource(string Text, string Confidence);

/// <summary>
/// What is known of a rule without running it. Made from rules/FAMILY/NAME/rule.json when the program is built, where what is lacking
/// stops the build; the explanation is the explanation.md beside it.
/// </summary>
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

    public IReadOnlyList<RuleOption> Options
    {
        get;
        init
        {
            field = value;
            Defaults = new(() => new OptionValues(value.Select(o => KeyValuePair.Create(o.Name, o.Default))));
        }
    }
    = [];

    /// <summary>The options as they hold where no shop says otherwise, made when first asked for.</summary>
    internal Lazy<OptionValues> Defaults { get; private init; } = new(() => new OptionValues([]));

    public IReadOnlyList<RuleSource> Sources { get; init; } = [];

    /// <summary>Kinds of reading problems this rule speaks for; empty outside the documents family.</summary>
    public IReadOnlyList<ProblemKind> ProblemKinds { get; init; } = [];

    /// <summary>Version that first had the rule.</summary>
    public required string Since { get; init; }

    /// <summary>
    /// True for a rule that is still on trial: its findings are notes, whatever their harm, unless the shop gives it a level. It leaves the
    /// trial with a minor version.
    /// </summary>
    public bool IsPreview { get; init; }

    /// <summary>Explanation as Markdown; one text for the terminal, SARIF and the handbook.</summary>
    public required Lazy<string> Explanation { get; init; }

    /// <summary>The text under one second-level heading of the explanation ("What it finds"); empty when it has none.</summary>
    public string Section(string heading) => SectionOf(Explanation.Value, heading);

    /// <summary>The text under one second-level heading of a Markdown text; empty when it has none.</summary>
    public static string SectionOf(string markdown, string heading)
    {
        var lines = markdown.Split('\n');
        var start = Array.FindIndex(lines, l => l.TrimEnd() == "## " + heading);
        if (start < 0)
        {
            return "";
        }

        var end = Array.FindIndex(lines, start + 1, l => l.StartsWith("## ", StringComparison.Ordinal));
        return string.Join('\n', lines[(start + 1)..(end < 0 ? lines.Length : end)]).Trim();
    }

    public bool Equals(RuleDescriptor? other) => other is not null && other.Id == Id;

    public override int GetHashCode() => StringComparer.Ordinal.GetHashCode(Id);
}
