namespace RecipeLint.Rules.Engine;

/// <summary>How a run judges.</summary>
public sealed record EngineOptions
{
    /// <summary>The day suppressions are held against; null leaves their last day unchecked.</summary>
    public DateOnly? Today { get; init; }

    /// <summary>The rules that speak; which there are is decided above the engine.</summary>
    public required IReadOnlyList<Rule> Rules { get; init; }

    /// <summary>
    /// What is known of all files where only some are judged, for rules that compare files with each other; null where all are judged.
    /// </summary>
    public RunInBrief? Around { get; init; }

    /// <summary>
    /// Writes the facts of a stock or recipe as JSON, for the rules that shops write themselves; without it those do not speak. Null for a
    /// file that has no facts.
    /// </summary>
    public Func<Analysis.Facts, string, ReadOnlyMemory<byte>?>? FactsDocument { get; init; }

    /// <summary>Runs what one rule does for one file or the whole run, for whoever measures; null runs it as it is.</summary>
    public Action<RuleDescriptor, Action>? Measure { get; init; }

    /// <summary>
    /// For trials, which count findings and read few: no message is told before it is read. Else each is told with its rule, whose fault it
    /// is where that fails.
    /// </summary>
    internal bool TellsWhenRead { get; init; }

    /// <summary>What is remembered of stocks that were judged before, where files are judged in parts; null judges each in full.</summary>
    public SilentRules? Silent { get; init; }
}

/// <summary>A rule that failed by its own fault; the others have spoken all the same.</summary>
/// <param name="File">The stock or recipe it was judging; null for a workspace rule.</param>
public sealed record RuleFault(string RuleId, string RuleName, string? File, Exception Cause)
{
    public string Message
    {
        get
        {
            var where = File is null ? "" : $" while judging '{File}'";
            return $"The rule {RuleId} '{RuleName}' failed{where}: {Cause.GetType().Name}: {Cause.Message}";
        }
    }
}

/// <summary>What one run has to say.</summary>
public sealed record LintResult
{
    /// <summary>By file, then place in the file by pointer, then rule, then message.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }

    /// <summary>Findings the shop has accepted, in the same order.</summary>
    public required IReadOnlyList<SuppressedFinding> Suppressed { get; init; }

    /// <summary>Empty unless a rule is broken; then the run must not pass.</summary>
    public required IReadOnlyList<RuleFault> Faults { get; init; }

    /// <summary>The gravest level among the findings; null when there are none.</summary>
    public Level? Worst => Findings.Count == 0 ? null : Findings.Max(f => f.Level);
}
