namespace RecipeLint.Advice.Splitting;

/// <summary>Names of the files that a split makes in thought.</summary>
internal static class SplitFiles
{
    /// <summary>Not a name anybody writes, so that no present file is taken for one of these.</summary>
    public const string Prefix = "split~";
}
