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

/// <summary>
/// The one number a finding turns on, and the limit it broke. A value above the limit gets worse by growing, one below by shrinking;
/// that is what an accepted value in a suppression is compared with.
/// </summary>
/// <param name="Name">What it is ("sulfate", "relative uncertainty").</param>
/// <param name="Value">Finite.</param>
/// <param name="Limit">Finite.</param>
/// <param name="Unit">Of both, spelled as in the message; empty for a ratio.</param>
public sealed record Measured(string Name, double Value, double Limit, string Unit)
{
    /// <summary>True when this value is further from the limit than an accepted one, judged to six digits.</summary>
    public bool IsWorseThan(double accepted)
    {
        var slack = 1e-6 * Math.Max(Math.Abs(accepted), Math.Abs(Value));
        return Value >= Limit ? Value > accepted + slack : Value < accepted - slack;
    }
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
    /// Path of ids inside the file ("steps/edta/amount"), the same when lines or steps are inserted; with rule and file it makes the
    /// fingerprint.
    /// </summary>
    public required string IdPath { get; init; }

    /// <summary>What and by how much; why; what to do. Full sentences.</summary>
    public string Message => Told.Value;

    /// <summary>
    /// The message, told when it is first read: what to do can take longer to find than what is wrong, and of the findings that a trial of
    /// a repair compares hardly any is read.
    /// </summary>
    public required Lazy<string> Told { get; init; }

    public IReadOnlyList<RelatedPlace> Related { get; init; } = [];

    /// <summary>The number the verdict turns on; null where there is none (a duplicate key).</summary>
    public Measured? Measured { get; init; }

    /// <summary>Further numbers of the message, for machines.</summary>
    public IReadOnlyList<NamedValue> Values { get; init; } = [];

    /// <summary>What the rule found out there, for its repairs; null for a rule that only translates what the reader says.</summary>
    public Verdict? Verdict { get; init; }

    /// <summary>What the text most likely meant, as it would stand in the file; offered, never assumed.</summary>
    public IReadOnlyList<string> Suggestions { get; init; } = [];
}
