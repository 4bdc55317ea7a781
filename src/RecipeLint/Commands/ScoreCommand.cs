using System.CommandLine;
using System.Text;
using RecipeLint.Advice.Scoring;
using RecipeLint.Reports;
using RecipeLint.Reports.Scoring;
using RecipeLint.Reports.Show;
using RecipeLint.Shell;

namespace RecipeLint.Commands;

/// <summary>Grades over all batch records what was foretold.</summary>
internal static class ScoreCommand
{
    public static Command Build(Surroundings world)
    {
        var paths = new Argument<string[]>("path")
        {
            Description = "Batch records, or folders with some.",
            Arity = ArgumentArity.OneOrMore,
        };
        var format = new Option<string>("--format")
        {
            Description = "How to print it.",
            DefaultValueFactory = _ => "text",
            HelpName = "text|json",
        };
        format.AcceptOnlyFromAmong("text", "json");
        var width = SharedOptions.Width();
        var color = SharedOptions.Color();
        var config = SharedOptions.Config();
        var noConfig = SharedOptions.NoConfig();
        var command = new Command(
            "score", "Grade the rules over all batch records: what they foretold against what was seen, readings against their windows.")
        {
            paths, format, width, color, config, noConfig,
        };
        command.SetAction(parsed =>
        {
            var run = Session.Open(world, parsed.GetValue(paths)!, null, parsed.GetValue(config), parsed.GetValue(noConfig));
            if (run.Workspace.Batches.Count == 0)
            {
                throw new UsageException("no batch record (*.batch.json) was found there; without any there is nothing to grade. "
                    + "'recipelint bench-sheet STOCK --record run.batch.json' begins one.");
            }

            var score = BatchScore.Of(run.Facts);
            if (parsed.GetValue(format) == "json")
            {
                world.Out.Write(Encoding.UTF8.GetString(ScoreReport.Json(score)));
            }
            else
            {
                var options = new TextOptions(world.UseColor(parsed.GetValue(color)!), world.Width(parsed.GetValue(width)));
                SheetText.Write(world.Out, ScoreReport.Sheet(score, string.Join(", ", run.Asked)), options);
            }

            world.Out.Flush();
            return ExitCodes.Clean;
        });
        return command;
    }
}
