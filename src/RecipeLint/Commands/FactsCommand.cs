using System.CommandLine;
using RecipeLint.Recipes.Schema;
using RecipeLint.Reports.ComputedFacts;
using RecipeLint.Shell;

namespace RecipeLint.Commands;

/// <summary>Prints the computed facts of one stock or recipe as JSON.</summary>
internal static class FactsCommand
{
    public static Command Build(Surroundings world)
    {
        var file = new Argument<string>("file") { Description = "A stock or recipe file." };
        var full = new Option<bool>("--full") { Description = "List every dissolved species of every state too." };
        var config = SharedOptions.Config();
        var mixings = SharedOptions.Mixings();
        var noConfig = SharedOptions.NoConfig();
        var command =
            new Command("facts", "Print what was computed for one stock or recipe as JSON (described by schema/facts.schema.json).")
        {
            file, full, mixings, config, noConfig,
        };
        command.SetAction(parsed =>
        {
            var run = Session.Open(world, [parsed.GetValue(file)!], null, parsed.GetValue(config), parsed.GetValue(noConfig));
            if (run.Workspace.Asked.Count != 1)
            {
                throw StockInput.OneFile(run, "facts", "stock or recipe file", [DocumentKind.Stock, DocumentKind.Recipe]);
            }

            var path = run.Workspace.Asked.Single();
            if (parsed.GetValue(mixings) > 0 && run.Facts.FindRecipe(path) is { } recipe)
            {
                var bottles = recipe.Doses.Select(d => d.Stock?.Stock.File).OfType<string>().Distinct(StringComparer.Ordinal).ToList();
                throw new UsageException($"'--mixings' tells of a stock, and '{path}' is a recipe. "
                    + (bottles.Count == 0 ? "It doses none." : $"Name one of its stocks: {string.Join(", ", bottles)}."));
            }

            if (!FactsWriter.TryWrite(run.Facts, path, world.Out, parsed.GetValue(full), parsed.GetValue(mixings) ?? 0))
            {
                throw new UsageException($"'{path}' has no facts: it is neither a stock nor a recipe, or its volume cannot be read. "
                    + "'recipelint check' says why.");
            }

            return ExitCodes.Clean;
        });
        return command;
    }
}
