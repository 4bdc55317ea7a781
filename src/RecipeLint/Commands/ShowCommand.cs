using System.CommandLine;
using RecipeLint.Reports;
using RecipeLint.Reports.Show;
using RecipeLint.Shell;

namespace RecipeLint.Commands;

/// <summary>Shows what was computed of one recipe, stock or water, as tables for people.</summary>
internal static class ShowCommand
{
    public static Command Build(Surroundings world)
    {
        var file = new Argument<string>("file") { Description = "A recipe, stock or water file." };
        var width = SharedOptions.Width();
        var color = SharedOptions.Color();
        var config = SharedOptions.Config();
        var mixings = SharedOptions.Mixings();
        var noConfig = SharedOptions.NoConfig();
        var command = new Command(
            "show", "Show what the plants get from a recipe, what a stock holds and how much room it has, or how a water was read.")
        {
            file, width, color, mixings, config, noConfig,
        };
        command.SetAction(parsed =>
        {
            var run = Session.Open(world, [parsed.GetValue(file)!], null, parsed.GetValue(config), parsed.GetValue(noConfig));
            if (run.Workspace.Asked.Count != 1)
            {
                throw new UsageException("'show' takes one recipe, stock or water file.");
            }

            var options = new TextOptions(world.UseColor(parsed.GetValue(color)!), world.Width(parsed.GetValue(width)));
            SheetText.Write(world.Out, SheetOf(run, run.Workspace.Asked.Single(), parsed.GetValue(mixings) ?? 0), options);
            world.Out.Flush();
            return ExitCodes.Clean;
        });
        return command;
    }

    /// <exception cref="UsageException">The file has no figures.</exception>
    private static Sheet SheetOf(Session run, string path, int mixings) =>
        Sheets.Of(run.Facts, path, mixings)
        ?? throw new UsageException(
            $"'{path}' has nothing to show: it is no recipe, stock or water, or its volume cannot be read. 'recipelint check' says why.");
}
