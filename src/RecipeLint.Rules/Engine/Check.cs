namespace RecipeLint.Rules.Engine;

/// <summary>What a meter shows that a check compares.</summary>
public enum Meter
{
    None,

    /// <summary>The pH of a stock itself.</summary>
    StockPh,

    /// <summary>The pH of a tank.</summary>
    TankPh,

    /// <summary>The conductivity of a tank, mS/cm at 25 °C.</summary>
    TankConductivity,
}

/// <summary>How two numbers of a verdict are compared.</summary>
public enum Relation
{
    Over,
    AtLeast,
    Under,
    AtMost,

    /// <summary>No comparison: a statement that is true or not.</summary>
    True,
}

/// <summary>
/// One thing that has to hold for a finding: a comparison of two numbers, or a statement about the file. It is the only place where a rule
/// compares; message, working and repairs read what came of it.
/// </summary>
/// <param name="What">What is asked, as it stands in a working: "fewer display steps than the limit", "the file names no
/// preservative".</param>
/// <param name="Value">In the unit; 1 or 0 for a statement.</param>
/// <param name="Limit">In the unit; 1 for a statement.</param>
/// <param name="Unit">Of both; empty for a ratio, a pH or a statement.</param>
public sealed record Check(string What, double Value, Relation Relation, double Limit, string Unit = "")
{
    /// <summary>The meter that can tell whether the rule was right; none for what no meter shows.</summary>
    public Meter Meter { get; init; }

    /// <summary>Where the value is the distance of a reading from this; null where it is the reading itself.</summary>
    public double? From { get; init; }

    /// <summary>The same check of what was read.</summary>
    public Check Read(double reading) => this with { Value = From is { } from ? Math.Abs(reading - from) : reading };

    public bool Holds => Relation switch
    {
        Relation.Over => Value > Limit,
        Relation.AtLeast => Value >= Limit,
        Relation.Under => Value < Limit,
        Relation.AtMost => Value <= Limit,
        _ => Value > 0,
    };

    /// <summary>
    /// How far the comparison is from turning over: 0 at the limit, 1 at twice or half of it, infinite for nothing at all and for a
    /// statement; for indices, which may be negative, their difference.
    /// </summary>
    public double Distance => (Relation, Value, Limit) switch
    {
        (Relation.True, _, _) => double.PositiveInfinity,
        (_, > 0, > 0) => Math.Abs(Math.Log2(Value / Limit)),
        (_, 0, > 0) => double.PositiveInfinity,
        _ => Math.Abs(Value - Limit),
    };

    /// <summary>Past its limit by a factor of two or more; a statement never is.</summary>
    public bool IsTwice => Relation != Relation.True && Holds && Distance >= 1;

    /// <summary>A statement about the file.</summary>
    public static Check That(string what, bool holds) => new(what, holds ? 1 : 0, Relation.True, 1);
}
