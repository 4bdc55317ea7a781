namespace RecipeLint.Shell;

/// <summary>A path as a page or comment calls it.</summary>
internal static class ShownName
{
    /// <summary>As it was written; of a path from the root of the disk only the last part, which says nothing of the machine.</summary>
    public static string Of(string path) =>
        Path.IsPathRooted(path) && Path.GetFileName(path.TrimEnd('/', Path.DirectorySeparatorChar)) is { Length: > 0 } name ? name : path;
}
