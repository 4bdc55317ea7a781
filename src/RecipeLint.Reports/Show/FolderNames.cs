namespace RecipeLint.Reports.Show;

/// <summary>Names of files as they are told apart within one folder.</summary>
internal static class FolderNames
{
    /// <summary>The folder that holds all of them, with its slash; it would say the same in every line. Empty for none.</summary>
    public static string Common(IEnumerable<string> files) => files
        .Select(f => f[..(f.LastIndexOf('/') + 1)])
        .Aggregate((string?)null, (common, folder) =>
        {
            while (common is not null && !folder.StartsWith(common, StringComparison.Ordinal))
            {
                common = common[..(common.TrimEnd('/').LastIndexOf('/') + 1)];
            }

            return common ?? folder;
        }) ?? "";

    /// <summary>A name without that folder; one from elsewhere stays whole.</summary>
    public static string Within(string common, string file) =>
        file.StartsWith(common, StringComparison.Ordinal) ? file[common.Length..] : file;
}
