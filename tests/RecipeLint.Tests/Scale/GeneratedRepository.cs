using RecipeLint.Benchmarks.Repositories;
using RecipeLint.Recipes.Files;

namespace RecipeLint.Tests.Scale;

/// <summary>Repositories of invented shops that exist only in memory.</summary>
internal static class GeneratedRepository
{
    public const string Root = "/repository";

    public static MemoryFileTree Of(int shops, RepositoryLayout layout, double flawed = 0.5, int seed = 11)
    {
        var files = new MemoryFileTree(Root).AddFolder(Root + "/.git");
        foreach (var (path, text) in RepositoryGenerator.Files(new RepositoryWish(shops, layout, flawed, seed)))
        {
            files.Add(path, text);
        }

        return files;
    }
}
