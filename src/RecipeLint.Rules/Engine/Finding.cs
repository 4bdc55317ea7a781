using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Engine;

/// <summary>SARIF's words, ordered from mild to grave.</summary>
public enum Level
{
    Note,
    Warning,
    Error,
}

/// <summary>What a verdict rests on.</summary>
public enum Certainty
{
    /// <summary>Follows from the numbers in the file and well-known constants.</summary>
    Computed,

    /// <summary>A simplified calculation or a constant with a wide spread.</summary>
    Estimate,

    /// <summary>Common practice of the trade.</summary>
    Practice,
}

/// <summary>One thing a rule has to say.</summary>
public sealed record Finding
{
    public required RuleDescriptor Rule { get; init; }

    public required Level Level { get; init; }

    public required Certainty Certainty { get; init; }

    /// <summary>The smallest place that has to change.</summary>
    public required Place Place { get; init; }

    /// <summary>
    /// Path of ids inside the file ("steps/edta/amount"), the same when lines or steps are inserted; with rule and file it makes the fingerprint.
    /// </summary>
    public required string IdPath { get; init; }

    /// <summary>What and by how much; why; what to do. Full sentences.</summary>
    public required string Message { get; init; }

    public IReadOnlyList<RelatedPlace> Related { get; init; } = [];

    /// <summary>Value, limit and margin for machines.</summary>
    public IReadOnlyList<NamedValue> Values { get; init; } = [];
}
