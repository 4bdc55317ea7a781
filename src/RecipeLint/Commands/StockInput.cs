using RecipeLint.Analysis;
using RecipeLint.Recipes;
using RecipeLint.Shell;

namespace RecipeLint.Commands;

/// <summary>One stock named on the command line, with the workspace it stands in.</summary>
internal sealed record StockInput(Workspace Workspace, StockFacts Stock)
{
    /// <exception cref="UsageException">The path is not one stock with a readable volume.</exception>
    public static StockInput Open(Surroundings world, string command, string path, string? config, bool noConfig)
    {
        var (stock, _, file) = OpenEither(world, command, path, config, noConfig);
        return stock ?? throw new UsageException($"'{file}' is a recipe; '{command}' looks at one bottle: name the stock file.");
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
            throw new UsageException($"'{command}' takes one stock file.");
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
