using RecipeLint.Workbench.Tables;

namespace RecipeLint.Chemistry.Tests;

/// <summary>Where the repository is, found from the test binaries upwards.</summary>
public static class Repository
{
    public static string Root => TableFolder.Root;

    /// <summary>Compares a generated file with what the repository holds; rewrites it when RECIPELINT_UPDATE=1.</summary>
    public static void Golden(string relativePath, string content)
    {
        var path = Path.Combine(Root, relativePath);
        if (Environment.GetEnvironmentVariable("RECIPELINT_UPDATE") == "1")
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllText(path, content);
            return;
        }
        var now = File.Exists(path) ? File.ReadAllText(path).ReplaceLineEndings("\n") : "";
        Assert.True(now == content, $"{relativePath} is stale: run the tests once with RECIPELINT_UPDATE=1 and check the difference.");
    }
}
