using RecipeLint.Analysis.Profiles;
using RecipeLint.Benchmarks.Repositories;
using RecipeLint.Recipes;
using RecipeLint.Recipes.Files;
using RecipeLint.Rules;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Benchmarks;

/// <summary>The generated shops that the benchmarks of layers look at, in memory, so that no disk is in a figure.</summary>
internal static class GeneratedShops
{
    /// <summary>Shops in a repository: enough to be cut into pieces, few enough for many rounds.</summary>
    public const int Shops = 24;

    private const string Folder = "/shops";

    public static IFileTree Files()
    {
        var tree = new MemoryFileTree(Folder);
        foreach (var (path, text) in RepositoryGenerator.Files(new RepositoryWish(Shops, RepositoryLayout.FolderForEachShop, 0.1, 7)))
        {
            tree.Add($"{Folder}/{path}", text);
        }

        return tree;
    }

    public static LoadOptions Load { get; } = new() { Profiles = ProfileLibrary.AllNames };

    public static IReadOnlyList<string> Asked { get; } = [Folder];

    public static Workspace Read(IFileTree files) => WorkspaceLoader.Load(files, Asked, Load);

    public static EngineOptions Engine(string? family = null) => new()
    {
        Today = new DateOnly(2026, 1, 1),
        Rules = family is null ? RuleList.All : [.. RuleList.All.Where(r => RuleBook.Of(r).Family == family)],
    };
}
