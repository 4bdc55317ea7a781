using System.Text.Json;

namespace RecipeLint.Chemistry.Tests.Physical;

/// <summary>Where the data and the generated files of the physical properties lie in the repository.</summary>
internal static class PhysicalData
{
    internal static readonly string Root = FindRoot();

    internal static bool Update => Environment.GetEnvironmentVariable("RECIPELINT_UPDATE") == "1";

    internal static JsonElement Source(string name) => Read(Path.Combine(Root, "src", "RecipeLint.Chemistry", "Data", "physical", name));

    internal static JsonElement Measured(string name) => Read(Path.Combine(Root, "tests", "RecipeLint.Chemistry.Tests", "Physical", "Data", name));

    /// <summary>Compares a generated or golden file with what it should hold now; writes it when RECIPELINT_UPDATE=1.</summary>
    internal static void AssertFresh(string relativePath, string expected)
    {
        var path = Path.Combine([Root, .. relativePath.Split('/')]);
        if (Update)
        {
            File.WriteAllText(path, expected);
            return;
        }

        Assert.True(File.Exists(path), $"{relativePath} is missing: run the tests once with RECIPELINT_UPDATE=1.");
        Assert.True(
            File.ReadAllText(path).ReplaceLineEndings("\n") == expected,
            $"{relativePath} is stale: run the tests with RECIPELINT_UPDATE=1 (a second time when a table changed) and read the difference.");
    }

    private static JsonElement Read(string path)
    {
        using var document = JsonDocument.Parse(File.ReadAllBytes(path));
        return document.RootElement.Clone();
    }

    private static string FindRoot()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "RecipeLint.sln")))
                return folder.FullName;
        }

        throw new InvalidOperationException("The repository root (RecipeLint.sln) was not found above the test binaries.");
    }
}
