namespace RecipeLint.Rules.Engine;

/// <summary>Levels and certainties as they stand in files and reports.</summary>
public static class Words
{
    public static string Of(Level level) => level switch
    {
        Level.Note => "note",
        Level.Warning => "warning",
        _ => "error",
    };

    public static string Of(Certainty certainty) => certainty switch
    {
        Certainty.Computed => "computed",
        Certainty.Estimate => "estimate",
        _ => "practice",
    };
}
