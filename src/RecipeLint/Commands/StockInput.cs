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
        var run = Session.Open(world, [path], null, config, noConfig);
        if (run.Workspace.Asked.Count != 1)
        {
            throw new UsageException($"'{command}' takes one stock file.");
        }

        var file = run.Workspace.Asked.Single();
        if (run.Facts.FindStock(file) is { } stock)
        {
            return new StockInput(run.Workspace, stock);
        }

        throw new UsageException(run.Workspace.FindRecipe(file) is not null
            ? $"'{file}' is a recipe; '{command}' looks at one bottle: name the stock file."
            : $"'{file}' is no stock, or its volume cannot be read. 'recipelint check' says why.");
    }
}
