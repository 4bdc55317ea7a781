namespace RecipeLint.Rules.Workings;

/// <summary>How two numbers of a working are compared.</summary>
public enum Relation
{
    Over,
    AtLeast,
    Under,
    AtMost,
}

/// <summary>One line of a working.</summary>
public abstract record WorkingStep;

/// <summary>A number that is taken from somewhere.</summary>
/// <param name="What">What it is, without an article at the front where it reads well.</param>
/// <param name="Unit">Empty for a ratio or a pH.</param>
/// <param name="From">Where it comes from, to stand in brackets: "file", "engine", "option 'limit'".</param>
public sealed record GivenStep(string What, Term Number, string Unit, string From) : WorkingStep;

/// <summary>A number that is worked out from those before it.</summary>
/// <param name="Formula">In words: "mass / display step".</param>
/// <param name="Numbers">The same with the printed numbers put in.</param>
/// <param name="Result">Rounded as printed.</param>
public sealed record ResultStep(string What, string Formula, Term Numbers, Term Result, string Unit) : WorkingStep;

/// <summary>A comparison that has to hold for a finding.</summary>
/// <param name="What">What is asked: "fewer display steps than the limit".</param>
public sealed record TestStep(string What, Term Left, Relation Relation, Term Right, string Unit) : WorkingStep
{
    public bool Holds => Relation switch
    {
        Relation.Over => Left.Value > Right.Value,
        Relation.AtLeast => Left.Value >= Right.Value,
        Relation.Under => Left.Value < Right.Value,
        _ => Left.Value <= Right.Value,
    };

    /// <summary>
    /// How far the comparison is from turning over: 0 at the limit, 1 at twice or half of it, infinite for nothing at all; for indices, which may
    /// be negative, their difference.
    /// </summary>
    public double Distance => (Left.Value, Right.Value) switch
    {
        ( > 0, > 0) => Math.Abs(Math.Log2(Left.Value / Right.Value)),
        (0, > 0) => double.PositiveInfinity,
        _ => Math.Abs(Left.Value - Right.Value),
    };
}

/// <summary>A condition without a number that has to hold for a finding.</summary>
/// <param name="What">A statement about the file that is true or not: "the file names no preservative".</param>
public sealed record ConditionStep(string What, bool Holds) : WorkingStep;

/// <summary>A remark between the lines, a full sentence.</summary>
public sealed record RemarkStep(string Text) : WorkingStep;

/// <summary>A verdict of one rule on one thing of one file, worked out step by step with the numbers of that file.</summary>
/// <param name="Title">What is worked out, without a full stop.</param>
/// <param name="Value">The number the verdict turns on, as worked out; null where there is none.</param>
public sealed record Working(string Title, IReadOnlyList<WorkingStep> Steps, Term? Value)
{
    /// <summary>True when everything that has to hold for a finding holds.</summary>
    public bool Fires => Steps.All(s => s is not (TestStep { Holds: false } or ConditionStep { Holds: false })) && Steps.Any(s => s is TestStep or ConditionStep);

    /// <summary>The first thing that has to hold and does not; null when all hold.</summary>
    public WorkingStep? Prevented => Steps.FirstOrDefault(s => s is TestStep { Holds: false } or ConditionStep { Holds: false });

    /// <summary>How near it is to a finding; 0 when it is one, infinite where a condition without a number keeps it silent.</summary>
    public double Distance =>
        Steps.Max(s => s switch
        {
            TestStep { Holds: false } test => test.Distance,
            ConditionStep { Holds: false } => double.PositiveInfinity,
            _ => 0,
        });
}
