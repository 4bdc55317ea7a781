using System.CommandLine;
using RecipeLint.Advice.Stretching;
using RecipeLint.Reports.Stretching;
using RecipeLint.Shell;

namespace RecipeLint.Commands;

/// <summary>Prints how much stronger or weaker a stock may be made with the same final solution.</summary>
internal static class StretchCommand
{
    public static Command Build(Surroundings world)
    {
        var file = new Argument<string>("stock") { Description = "A stock file." };
        var config = SharedOptions.Config();
        var noConfig = SharedOptions.NoConfig();
        var command = new Command(
            "stretch",
            "Print how strong and how weak a stock may be made for the same final solution, and what stops it at each temperature.")
        {
            file, config, noConfig,
        };
        command.SetAction(parsed =>
        {
            var one = StockInput.Open(world, "stretch", parsed.GetValue(file)!, parsed.GetValue(config), parsed.GetValue(noConfig));
            var stretch = StockStretch.Of(one.Workspace, one.Stock, world.Today);
            world.Out.Write(StretchReport.Write(stretch));
            return ExitCodes.OfAdvice(stretch.Refused is not null || stretch.Unknown is not null, stretch.Present);
        });
        return command;
    }
}
