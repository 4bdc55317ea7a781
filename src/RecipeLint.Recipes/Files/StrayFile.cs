using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Schema;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Files;

/// <summary>A file in a folder that was asked for whose name is none of ours though it holds something of ours.</summary>
/// <param name="Path">Full path.</param>
/// <param name="Kind">What it holds.</param>
/// <param name="Name">What to call it, so that it is read.</param>
public sealed record StrayFile(string Path, DocumentKind Kind, string Name)
{
    /// <summary>Files of a folder that are looked into at most.</summary>
    public const int MostLookedInto = 200;

    /// <summary>Nobody writes a stock or recipe this long by hand; lock files and data are.</summary>
    private const int LongestByHand = 64 * 1024;

    private const string Ending = ".json";

    /// <summary>What the files of a kind have at their top, all of it, and no file of another trade has together.</summary>
    private static readonly (DocumentKind Kind, string Ending, string[] Has)[] Marks =
    [
        (DocumentKind.Stock, ".stock.json", ["makes", "steps"]),
        (DocumentKind.Recipe, ".recipe.json", ["final", "doses"]),
        (DocumentKind.Batch, ".batch.json", ["made", "stock"]),
        (DocumentKind.Batch, ".batch.json", ["made", "recipe"]),
        (DocumentKind.Water, ".water.json", ["format", "ions"]),
        (DocumentKind.Substances, ".substances.json", ["format", "substances"]),
    ];

    /// <summary>Those among files with names that are none of ours which hold something of ours, in order.</summary>
    public static IReadOnlyList<StrayFile> Among(IFileTree files, IEnumerable<string> paths) =>
        [.. paths.Select(p => Of(files, p)).OfType<StrayFile>()];

    internal static bool MayBe(string name) =>
        name.EndsWith(Ending, StringComparison.OrdinalIgnoreCase) && !name.StartsWith('.') && DocumentKinds.FromFileName(name) is null;

    private static StrayFile? Of(IFileTree files, string path)
    {
        if (files.Read(path, LongestByHand).Bytes is not { } bytes
            || JsonReading.Read("", bytes, LongestByHand).Source.Tree?.Root is not { Kind: JsonKind.Object } root)
        {
            return null;
        }

        foreach (var (kind, ending, has) in Marks)
        {
            if (Array.TrueForAll(has, key => root[key] is not null))
            {
                return new StrayFile(path, kind, FilePaths.NameOf(path)[..^Ending.Length] + ending);
            }
        }

        return null;
    }
}
