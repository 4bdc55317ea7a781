using System.Text.Json;
using RecipeLint.Workbench.Tables;

namespace RecipeLint.Chemistry.Tests.Physical;

/// <summary>Where the data and the generated files of the physical properties lie in the repository.</summary>
internal static class PhysicalData
{
    internal static readonly string Root = TableFolder.Root;

    internal static bool Update => Environment.GetEnvironmentVariable("RECIPELINT_UPDATE") == "1";

    internal static JsonElement Source(string name) => TableFolder.Physical(name);

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
}
