namespace RecipeLint.Chemistry.Substances;

/// <summary>What a name on a recipe can turn out to be.</summary>
public abstract record SubstanceLookup
{
    private SubstanceLookup()
    {
    }

    /// <summary>Exactly one substance fits.</summary>
    public sealed record Found(Substance Substance) : SubstanceLookup;

    /// <summary>
    /// The name fits several substances, such as two hydrates of one salt. Never decided for the user.
    /// </summary>
    /// <param name="Candidates">In the order of their ids.</param>
    public sealed record Ambiguous(IReadOnlyList<Substance> Candidates) : SubstanceLookup;

    /// <summary>Nothing fits; the nearest ids by spelling, best first, at most five.</summary>
    public sealed record Unknown(IReadOnlyList<string> Suggestions) : SubstanceLookup;
}
