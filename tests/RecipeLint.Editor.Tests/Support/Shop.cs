using System.Text;
using RecipeLint.Recipes.Files;
using RecipeLint.Reports.Tests.Support;

namespace RecipeLint.Editor.Tests.Support;

/// <summary>The example shop in memory, so that tests may do with it what they like.</summary>
internal static class Shop
{
    public const string Root = "/quillmere";

    public const string Lettuce = "file:///quillmere/recipes/lettuce.recipe.json";

    public const string PartA = "file:///quillmere/stocks/part-a.stock.json";

    public static IEnumerable<(string Path, string Text)> Files(string example = "quillmere")
    {
        var folder = Path.Combine(Repository.Root, "examples", example);
        return Directory.EnumerateFiles(folder, "*.json", SearchOption.AllDirectories).Order(StringComparer.Ordinal)
            .Select(f => (Path.GetRelativePath(folder, f).Replace('\\', '/'), File.ReadAllText(f)));
    }

    public static MemoryFileTree InMemory()
    {
        var files = new MemoryFileTree("/");
        foreach (var (path, text) in Files())
        {
            files.Add($"{Root}/{path}", text);
        }

        return files;
    }

    public static string Text(string uri) => Encoding.UTF8.GetString(InMemory().Read(uri["file://".Length..], int.MaxValue).Bytes!);
}
