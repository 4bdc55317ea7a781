namespace RecipeLint.Rules.Engine;

/// <summary>
/// What a rule found out about one thing that it looked at, whether it fires or not. Each rule has a kind of its own with every number and
/// place that its message, working and repairs need, so that nothing is decided a second time.
/// </summary>
public abstract record Verdict
{
    /// <summary>What has to hold for a finding, in the order in which a working shows it.</summary>
    public required IReadOnlyList<Check> Checks { get; init; }

    /// <summary>
    /// The stocks, recipes or waters it is about. The engine knows that of a rule on one stock or recipe; a rule on the whole workspace
    /// says it.
    /// </summary>
    public IReadOnlyList<string> Files { get; init; } = [];

    /// <summary>True when all that has to hold for a finding holds.</summary>
    public bool Fires
    {
        get
        {
            for (var i = 0; i < Checks.Count; i++)
            {
                if (!Checks[i].Holds)
                {
                    return false;
                }
            }

            return Checks.Count > 0;
        }
    }
}
