using RecipeLint.Recipes.Schema;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Shop;

/// <summary>What a house rule looks at, one at a time.</summary>
public enum HouseRuleScope
{
    Stock,
    Recipe,
}

/// <summary>A file or several that show a house rule at work.</summary>
/// <param name="What">What they show, in a few words.</param>
/// <param name="File">The one the rule is to speak of, or to be silent about.</param>
/// <param name="Files">Every file by its name, whole.</param>
/// <param name="At">The place where a failing example has to be found fault with; null for any.</param>
public sealed record HouseRuleExample(string What, string File, IReadOnlyDictionary<string, byte[]> Files, string? At, Place Place);

/// <summary>
/// A rule of the shop's own: a JSON Schema (2020-12) that the facts of each stock or recipe must fulfil. It serves the shop it lies in.
/// </summary>
public sealed record HouseRuleDocument
{
    public required string File { get; init; }

    public Place Place => Place.Whole(File);

    /// <summary>"HR" and four digits.</summary>
    public required Located<string> Id { get; init; }

    /// <summary>kebab-case, names the bad thing.</summary>
    public required Located<string> Name { get; init; }

    /// <summary>"note", "warning" or "error".</summary>
    public required string Level { get; init; }

    public required HouseRuleScope LooksAt { get; init; }

    /// <summary>One sentence.</summary>
    public required string Title { get; init; }

    /// <summary>
    /// What is wrong; "{/pointer}" stands for a fact, "{0}" for the value that does not fit, "{1/key}" for one beside it.
    /// </summary>
    public required string Message { get; init; }

    /// <summary>Why the shop wants it so.</summary>
    public required string Reason { get; init; }

    /// <summary>Longer, in Markdown; empty where there is none.</summary>
    public string Explanation { get; init; } = "";

    public required HouseSchema Must { get; init; }

    public IReadOnlyList<HouseRuleExample> Failing { get; init; } = [];

    public IReadOnlyList<HouseRuleExample> Passing { get; init; } = [];
}
