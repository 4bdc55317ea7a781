using System.CommandLine;
using System.Globalization;
using RecipeLint.Recipes;
using RecipeLint.Reports;
using RecipeLint.Reports.Hazards;
using RecipeLint.Reports.Labels;
using RecipeLint.Shell;

namespace RecipeLint.Commands;

/// <summary>Draws the label of a bottle.</summary>
internal static class LabelCommand
{
    private const int MostCopies = 100;

    public static Command Build(Surroundings world)
    {
        var file = new Argument<string>("file") { Description = "A stock file." };
        var size = new Option<string?>("--size")
        {
            Description =
                "Width and height in mm. Left out: the smallest common one that the regulation asks for by content and everything fits on.",
            HelpName = string.Join('|', LabelSize.Common),
        };
        var format = new Option<string>("--format")
        {
            Description = "One label as svg, or a page of them.",
            DefaultValueFactory = _ => "svg",
            HelpName = "svg|html",
        };
        format.AcceptOnlyFromAmong("svg", "html");
        var copies = new Option<int>("--copies")
        {
            Description = "How many on the page, 1 to 100.",
            DefaultValueFactory = _ => 1,
            HelpName = "number",
        };
        var made = new Option<string?>("--made")
        {
            Description = "Day it was made, such as 2026-03-01. Left out: a line to write on.",
            HelpName = "date",
        };
        var batch = Text("--batch", "text", "Number of the batch. Left out: a line to write on.");
        var output = Text("--output", "file", "Write to this file instead of standard output.", "-o");
        var config = SharedOptions.Config();
        var noConfig = SharedOptions.NoConfig();
        var command = new Command(
            "label", "Draw the label of a stock: contents, dilution, dates, hazards as a mixture, what to keep apart, a code of the file.")
        {
            file, size, format, copies, made, batch, output, config, noConfig,
        };
        command.SetAction(parsed =>
        {
            var input = StockInput.Open(world, "label", parsed.GetValue(file)!, parsed.GetValue(config), parsed.GetValue(noConfig));
            if (IsRefused(world, input.Stock))
            {
                return ExitCodes.Findings;
            }

            var wishes = new LabelWishes(Day(parsed.GetValue(made)), parsed.GetValue(batch));
            var label = BottleLabel.Of(input.Stock, input.Workspace.Sources[input.Stock.Stock.File], wishes);
            var count = parsed.GetValue(copies) is >= 1 and <= MostCopies and var many
                ? many
                : throw new UsageException("'--copies' takes 1 to 100.");
            var chosen = Chosen(parsed.GetValue(size), label, input.Stock.Volume);
            var svg = LabelSvg.Of(label, chosen)!;
            var text = parsed.GetValue(format) == "html" || count > 1 ? LabelSheet.Of(svg, label, chosen, count, ToolVersion.Text) : svg;
            Tell(world, parsed.GetValue(output), input.Workspace, text);
            return ExitCodes.Clean;
        });
        return command;
    }

    private static Option<string?> Text(string name, string help, string description, params string[] aliases) =>
        new(name, aliases) { Description = description, HelpName = help };

    /// <summary>
    /// True for a stock that must not be mixed: why is said, and standard output is left for the drawing, or for nothing.
    /// </summary>
    private static bool IsRefused(Surroundings world, Analysis.StockFacts stock)
    {
        if (BottleLabel.Refused(stock) is not { } refusal)
        {
            return false;
        }

        HazardWords.Refused(refusal).Prepend(BottleLabel.NotDrawn).ToList()
            .ForEach(line => world.Error.WriteLine("recipelint: " + Printable.Show(line)));
        return true;
    }

    private static void Tell(Surroundings world, string? path, Workspace workspace, string text)
    {
        if (path is not null)
        {
            OutputFile.Of(world, path, workspace).Write(writer => writer.Write(text));
            return;
        }

        world.Out.Write(text);
        world.Out.Flush();
    }

    /// <exception cref="UsageException">It is no size, or the label does not fit on it.</exception>
    private static LabelSize Chosen(string? asked, BottleLabel label, Chemistry.Quantities.Volume content)
    {
        if (asked is null)
        {
            var least = LabelSize.For(content);
            return LabelSize.Common.Where(s => s.Width >= least.Width && s.Height >= least.Height && LabelSvg.Of(label, s) is not null)
                .Select(s => (LabelSize?)s)
                .FirstOrDefault()
                    ?? throw new UsageException("what the label has to say fits on no common size; name a larger one with '--size'.");
        }

        var size =
            LabelSize.Read(asked)
                ?? throw new UsageException(
                    asked.Trim().ToUpperInvariant() is "A4" or "LETTER"
                        ? $"'{asked}' is a sheet and no label: '--size 105x74 --copies 8' lays eight on one."
                        : $"'{asked}' is no size; write width and height in mm, such as 105x74, or a paper size, A8 to A5.");
        return LabelSvg.Of(label, size) is not null ? size : throw new UsageException(
            $"what the label has to say does not fit on {size} mm in letters one can read"
            + (LabelSvg.SmallestFor(label) is { } fits ? $"; it fits on {fits}." : "; name a larger size."));
    }

    private static DateOnly? Day(string? text) => text is null ? null
        : DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day
        : throw new UsageException($"'{text}' is no day; write it as 2026-03-01.");
}
