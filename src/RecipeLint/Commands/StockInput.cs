using RecipeLint.Analysis;
using RecipeLint.Recipes;
using RecipeLint.Recipes.Schema;
using RecipeLint.Shell;

namespace RecipeLint.Commands;

/// <summary>One stock named on the command line, with the workspace it stands in.</summary>
internal sealed record StockInput(Workspace Workspace, StockFacts Stock)
{
    private const int MostNamed = 5;

    /// <exception cref="UsageException">The path is not one stock with a readable volume.</exception>
    public static StockInput Open(Surroundings world, string command, string path, string? config, bool noConfig)
    {
        var (stock, _, file) = OpenEither(world, command, path, config, noConfig);
        return stock ?? throw new UsageException($"'{file}' is a recipe; '{command}' looks at one bottle: name the stock file.");
    }

    /// <summary>A folder was named where a command takes one file: the files of it that would do are named.</summary>
    /// <param name="what">What the command takes, in words.</param>
    /// <param name="kinds">Kinds of file that would do; all where none is given.</param>
    public static UsageException OneFile(Session run, string command, string what, IReadOnlyList<DocumentKind> kinds)
    {
        var fitting = run.Workspace.Asked.Order(StringComparer.Ordinal)
            .Where(f => kinds.Count == 0 || (DocumentKinds.FromFileName(f) is { } kind && kinds.Contains(kind)))
            .ToList();
        var there = fitting.Count == 0 ? "" : $"; there are {string.Join(", ", fitting.Take(MostNamed))}"
            + (fitting.Count > MostNamed ? $" and {fitting.Count - MostNamed} more" : "");
        return new UsageException($"'{command}' takes one {what}{(fitting.Count == 1 ? $"; there is {fitting[0]}" : there)}.");
    }

    /// <summary>A bottle, or a recipe: what stands in tank and lines.</summary>
    /// <exception cref="UsageException">The path is neither one stock with a readable volume nor one recipe that can be
    /// reckoned.</exception>
    public static (StockInput? Stock, RecipeFacts? Recipe, string File) OpenEither(
        Surroundings world, string command, string path, string? config, bool noConfig)
    {
        var run = Session.Open(world, [path], null, config, noConfig);
        if (run.Workspace.Asked.Count != 1)
        {
            throw OneFile(run, command, "stock file", [DocumentKind.Stock]);
        }

        var file = run.Workspace.Asked.Single();
        if (run.Facts.FindStock(file) is { } stock)
        {
            return (new StockInput(run.Workspace, stock), null, file);
        }

        if (run.Facts.Recipes.FirstOrDefault(r => r.Recipe.File == file) is { } recipe)
        {
            return (null, recipe, file);
        }

        throw new UsageException(run.Workspace.FindRecipe(file) is not null
            ? $"the volume or the doses of '{file}' cannot be read. 'recipelint check' says why."
            : $"'{file}' is no stock, or its volume cannot be read. 'recipelint check' says why.");
    }
}
