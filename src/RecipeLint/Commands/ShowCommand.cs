using System.CommandLine;
using RecipeLint.Analysis.Batches;
using RecipeLint.Recipes.Editions;
using RecipeLint.Recipes.Schema;
using RecipeLint.Reports;
using RecipeLint.Reports.BenchSheets;
using RecipeLint.Reports.Show;
using RecipeLint.Shell;

namespace RecipeLint.Commands;

/// <summary>Shows what was computed of one file, or of a folder at a glance, as tables for people.</summary>
internal static class ShowCommand
{
    public static Command Build(Surroundings world)
    {
        var file = new Argument<string>("file") { Description = "A recipe, stock, water, profile or substances file, or a folder." };
        var width = SharedOptions.Width();
        var color = SharedOptions.Color();
        var config = SharedOptions.Config();
        var mixings = SharedOptions.Mixings();
        var noConfig = SharedOptions.NoConfig();
        var command = new Command(
            "show",
            "Show what the plants get from a recipe, what a stock holds and how much room it has, how a water, a product or a "
                + "profile was read, what came of a tank by its record, or a folder at a glance.")
        {
            file, width, color, mixings, config, noConfig,
        };
        command.SetAction(parsed =>
        {
            var run = Session.Open(world, [parsed.GetValue(file)!], null, parsed.GetValue(config), parsed.GetValue(noConfig));
            var options = new TextOptions(world.UseColor(parsed.GetValue(color)!), world.Width(parsed.GetValue(width)));
            SheetText.Write(world.Out, SheetOf(run, parsed.GetValue(file)!, parsed.GetValue(mixings) ?? 0), options);
            world.Out.Flush();
            return ExitCodes.Clean;
        });
        return command;
    }

    private static string StockOf(Session run, string batch) =>
        run.Workspace.Batches.FirstOrDefault(b => b.File == batch)?.StockFile ?? "STOCK";

    /// <exception cref="UsageException">There are no figures.</exception>
    private static Sheet SheetOf(Session run, string asked, int mixings)
    {
        if (run.Workspace.Asked.Count != 1 || DocumentKinds.FromFileName(run.Workspace.Asked.Single()) == DocumentKind.Settings)
        {
            return ShopSheet.Of(run.Facts, asked, run.Workspace.Asked);
        }

        var path = run.Workspace.Asked.Single();
        var record = run.Workspace.Batches.FirstOrDefault(b => b.File == path);
        if (record is not null && Edition.IsEarlier(run.Workspace, record))
        {
            throw new UsageException(BatchWords.Earlier(path, record));
        }

        if (record is { IsComplete: true, RecipeFile: not null } && BatchForecast.Of(run.Facts, record) is TankForecast tank)
        {
            return TankSheet.Of(tank);
        }

        return Sheets.Of(run.Facts, path, mixings) ?? throw new UsageException(DocumentKinds.FromFileName(path) switch
        {
            DocumentKind.Batch when record is null or { IsComplete: false } or { RecipeFile: not null } =>
                $"'{path}' cannot be read far enough to say what came of it. 'recipelint check {path}' says why.",
            DocumentKind.Batch =>
                $"'{path}' is the record of a batch; 'recipelint bench-sheet {StockOf(run, path)} --actual {path}' says what came of it.",
            DocumentKind.HouseRule => $"'{path}' is a rule of the shop; 'recipelint explain' with its name shows it.",
            _ => $"'{path}' has nothing to show: its volume or its values cannot be read. 'recipelint check' says why.",
        });
    }
}
