using System.Text.Json;

namespace RecipeLint.Workbench.Tables;

/// <summary>Where the data stand that the tables are made of.</summary>
internal static class TableFolder
{
    internal static string Root { get; } = Find();

    /// <summary>A file of Data/physical.</summary>
    internal static JsonElement Physical(string name)
    {
        using var document = JsonDocument.Parse(File.ReadAllBytes(Path.Combine(Root, "src", "RecipeLint.Chemistry", "Data", "physical", name)));
        return document.RootElement.Clone();
    }

    private static string Find()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "RecipeLint.sln")))
                return folder.FullName;
        }

        throw new BenchException("There is no RecipeLint.sln above the program's own folder.");
    }
}
