
namespace RecipeLint.Rules.Engine;

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
/// <param name="Check">What the rule compared.</param>
/// <param name="Left">The value as it was worked out line by line, rounded as printed.</param>
/// <param name="Right">The limit as printed.</param>
public sealed record TestStep(Check Check, Term Left, Term Right) : WorkingStep;

/// <summary>A statement that has to hold for a finding.</summary>
public sealed record ConditionStep(Check Check) : WorkingStep;

/// <summary>A remark between the lines, a full sentence.</summary>
public sealed record RemarkStep(string Text) : WorkingStep;

/// <summary>A verdict of one rule on one thing of one file, worked out step by step with the numbers of that file.</summary>
/// <param name="Title">What is worked out, without a full stop.</param>
/// <param name="Value">The number the verdict turns on, as worked out; null where there is none.</param>
public sealed record Working(string Title, IReadOnlyList<WorkingStep> Steps, Term? Value)
{
    /// <summary>The checks of the verdict, in the order of the steps.</summary>
    public IReadOnlyList<Check> Checks { get; } = [.. Steps.Select(CheckOf).OfType<Check>()];

    /// <summary>True when everything that has to hold for a finding holds.</summary>
    public bool Fires => Checks.Count > 0 && Checks.All(c => c.Holds);

    /// <summary>The first step that has to hold and does not; null when all hold.</summary>
    public WorkingStep? Prevented => Steps.FirstOrDefault(s => CheckOf(s) is { Holds: false });

    /// <summary>How near it is to a finding; 0 when it is one, infinite where a statement keeps it silent.</summary>
    public double Distance => Checks.Where(c => !c.Holds).Select(c => c.Distance).DefaultIfEmpty(0).Max();

    /// <summary>What a step asks; null for one that asks nothing.</summary>
    public static Check? CheckOf(WorkingStep step) => step switch
    {
        TestStep test => test.Check,
        ConditionStep condition => condition.Check,
        _ => null,
    };
}
