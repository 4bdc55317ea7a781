using System.CommandLine;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Reports;
using RecipeLint.Reports.BenchSheets;
using RecipeLint.Shell;

namespace RecipeLint.Commands;

/// <summary>Writes one page for whoever mixes a batch.</summary>
internal static class BenchSheetCommand
{
    public static Command Build(Surroundings world)
    {
        var file = new Argument<string>("file") { Description = "A stock file." };
        var batch = new Option<string?>("--batch")
        {
            Description = "How much is made, such as \"2 L\". Left out: what the file makes.",
            HelpName = "volume",
        };
        var output = new Option<string?>("--output", "-o")
        {
            Description = "Write a page to print to this file; else the sheet is printed as text.",
            HelpName = "file",
        };
        var width = SharedOptions.Width();
        var color = SharedOptions.Color();
        var config = SharedOptions.Config();
        var noConfig = SharedOptions.NoConfig();
        var command = new Command(
            "bench-sheet", "Write one page for who mixes: weights as the scale shows them, what to expect, when to stop, what to check.")
        {
            file, batch, output, width, color, config, noConfig,
        };
        command.SetAction(parsed =>
        {
            var input = StockInput.Open(world, "bench-sheet", parsed.GetValue(file)!, parsed.GetValue(config), parsed.GetValue(noConfig));
            var sheet = BenchSheet.Of(input.Workspace, input.Stock, Batch(parsed.GetValue(batch), input.Stock.Volume));
            if (parsed.GetValue(output) is { } path)
            {
                OutputFile.Of(world, path, input.Workspace).Write(writer => writer.Write(BenchSheetPage.Of(sheet, ToolVersion.Text)));
                world.Out.WriteLine($"wrote {Printable.Show(path)}; open it in a browser and print it");
            }
            else
            {
                BenchSheetText.Write(
                    world.Out, sheet, new TextOptions(world.UseColor(parsed.GetValue(color)!), world.Width(parsed.GetValue(width))));
                world.Out.Flush();
            }

            return sheet.Refused.Count == 0 ? ExitCodes.Clean : ExitCodes.Findings;
        });
        return command;
    }

    private static Volume Batch(string? text, Volume makes)
    {
        if (text is null)
        {
            return makes;
        }

        if (!QuantityReader.TryRead(text, Due.Volume, out var quantity, out var fault))
        {
            throw new UsageException($"The batch '{text}' cannot be used. {fault.Message}");
        }

        // More than a truck or less than a spoon is a slip of the unit (common practice, no source).
        return quantity.Low == quantity.High && quantity.Low is >= 0.01 and <= 20_000
            ? new Volume(quantity.Low)
            : throw new UsageException($"The batch '{text}' cannot be used: it takes one volume from 10 mL to 20 m³.");
    }
}
