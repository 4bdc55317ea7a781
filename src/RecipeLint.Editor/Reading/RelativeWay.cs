namespace RecipeLint.Editor.Reading;

/// <summary>Ways from one file to another, as files refer to each other. Paths relative to one root, forward slashes.</summary>
internal static class RelativeWay
{
    /// <param name="folder">Empty for the root.</param>
    public static string Of(string folder, string target)
    {
        var up = "";
        var at = folder;
        while (at.Length > 0 && !target.StartsWith(at + "/", StringComparison.Ordinal))
        {
            at = at.Contains('/', StringComparison.Ordinal) ? at[..at.LastIndexOf('/')] : "";
            up += "../";
        }

        return up + (at.Length == 0 ? target : target[(at.Length + 1)..]);
    }
}
