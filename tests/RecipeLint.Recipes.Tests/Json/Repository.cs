namespace RecipeLint.Recipes.Tests.Json;

/// <summary>Finds files of the repository from wherever the tests were built to.</summary>
internal static class Repository
{
    public static string Root { get; } = FindRoot();

    public static string PathOf(params string[] parts) => Path.Combine([Root, .. parts]);

    /// <summary>Compares with a stored file; RECIPELINT_UPDATE=1 stores the new text instead.</summary>
    public static void Golden(string relativePath, string content)
    {
        var path = PathOf(relativePath);
        if (Environment.GetEnvironmentVariable("RECIPELINT_UPDATE") == "1")
        {
            File.WriteAllText(path, content);
            return;
        }

        Assert.True(File.Exists(path), $"{relativePath} is missing; run once with RECIPELINT_UPDATE=1 and read it.");
        Assert.Equal(File.ReadAllText(path).ReplaceLineEndings("\n"), content);
    }

    private static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "RecipeLint.sln")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new DirectoryNotFoundException("RecipeLint.sln is in no folder above the tests.");
    }
}
