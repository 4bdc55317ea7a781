using System.CommandLine;
using RecipeLint.Advice.Order;
using RecipeLint.Reports.Order;
using RecipeLint.Shell;

namespace RecipeLint.Commands;

/// <summary>Prints the order in which a stock is best mixed, with the reason for each place.</summary>
internal static class OrderCommand
{
    public static Command Build(Surroundings world)
    {
        var file = new Argument<string>("file") { Description = "A stock file." };
        var config = SharedOptions.Config();
        var noConfig = SharedOptions.NoConfig();
        var command = new Command(
            "order", "Print the best order to mix a stock in, why each addition stands where it does, and how much water to start with.")
        {
            file, config, noConfig,
        };
        command.SetAction(parsed =>
        {
            var input = StockInput.Open(world, "order", parsed.GetValue(file)!, parsed.GetValue(config), parsed.GetValue(noConfig));
            var order = MixingOrder.Of(input.Stock);
            order = order with { Objections = order.ObjectedIn(input.Workspace, world.Today) };
            world.Out.Write(OrderReport.Write(order));
            return ExitCodes.OfAdvice(order.Refused is not null || order.NothingButUnknown is not null, order.Objections);
        });
        return command;
    }
}
