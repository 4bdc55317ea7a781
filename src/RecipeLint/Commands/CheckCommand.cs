using System.CommandLine;
using RecipeLint.Living;
using RecipeLint.Reports;
using RecipeLint.Reports.ComputedFacts;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;
using RecipeLint.Shell;

namespace RecipeLint.Commands;

/// <summary>Checks files and folders and reports findings.</summary>
internal static class CheckCommand
{
    public static Command Build(Surroundings world)
    {
        var paths = new Argument<string[]>("path")
        {
            Description = "Files, folders or patterns such as 'stocks/*.stock.json'; '-' reads one file from standard input.",
            Arity = ArgumentArity.OneOrMore,
        };
        var stdinName = new Option<string?>("--stdin-name")
        {
            Description = "The name the text from standard input has, such as stocks/a.stock.json.",
            HelpName = "file",
        };
        var failOn = new Option<string>("--fail-on")
        {
            Description = "Lowest level that makes the exit code 1, itself included.",
            DefaultValueFactory = _ => "error",
            HelpName = "error|warning|note|never",
        };
        failOn.AcceptOnlyFromAmong("error", "warning", "note", "never");
        var reports = new ReportOptions();
        var baseline = new Option<string?>("--baseline")
        {
            Description = "Report only what is new or worse than in this file; 'recipelint baseline' writes it.",
            HelpName = "file",
        };
        var asOf = SharedOptions.AsOf();
        var threads = new Option<int>("--threads")
        {
            Description = "How many files are judged at once; without it as many as this machine has processors. It changes no finding.",
            HelpName = "n",
        };
        threads.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<int>() is < 1 or > 256)
            {
                result.AddError("'--threads' takes a number from 1 to 256.");
            }
        });
        var repairs = new RepairOptions();
        var config = SharedOptions.Config();
        var noConfig = SharedOptions.NoConfig();

        var command = new Command("check", "Check stocks, recipes, waters, products and settings.")
        {
            paths, failOn, config, noConfig, stdinName, baseline, asOf, threads,
        };
        reports.AddTo(command);
        repairs.AddTo(command);
        command.SetAction(parsed =>
        {
            var input =
                Input.Of(world, parsed.GetValue(paths)!, parsed.GetValue(stdinName), parsed.GetValue(config), parsed.GetValue(noConfig));
            var targets = reports.Targets(world, parsed);
            var today = parsed.GetValue(asOf) is { } day ? SharedOptions.Date("--as-of", day) : world.Today;
            var engine = StandardEngine.On(today);
            var wishes = repairs.Of(parsed);
            var atOnce = parsed.GetValue(threads) is var wanted && wanted > 0 ? wanted : Environment.ProcessorCount;
            var progress = new Progress(world.ErrorIsTerminal ? world.Error : null);
            if (!wishes.IsAny && !reports.NeedsEverything(parsed) && PieceRun.Check(input, engine, atOnce, progress) is { } pieces)
            {
                var kept = WithoutBaseline(
                    world,
                    pieces.Result,
                    BaselineFile.For(world, pieces.Root, pieces.Baselines, parsed.GetValue(baseline)),
                    pieces.Sources.Keys);
                return Tell(parsed, targets, new Report
                {
                    Result = kept,
                    Sources = pieces.Sources,
                    FilesChecked = pieces.FilesChecked,
                    Assumptions = pieces.Assumptions,
                    ToolVersion = ToolVersion.Text,
                });
            }

            var run = Session.Open(input);
            var judged = new Judged(run.Workspace, run.Facts, LintEngine.Judge(run.Facts, engine));
            var mending = new Mending(world, run, engine, wishes);
            if (mending.Changes && mending.Apply(judged) is { } mended)
            {
                judged = mended;
                if (mending.PrintsDifference)
                {
                    return ExitCode(world, judged.Result, parsed.GetValue(failOn)!);
                }
            }

            var known = BaselineFile.For(world, judged.Workspace.Root, BaselineFile.NamedIn(judged.Workspace), parsed.GetValue(baseline));
            var result = WithoutBaseline(world, judged.Result, known, judged.Workspace.Sources.Keys);
            var report = new Report
            {
                Result = result,
                Sources = judged.Workspace.Sources,
                FilesChecked = judged.Workspace.Asked.Count,
                Asked = [.. judged.Workspace.Asked],
                Facts = judged.Facts,
                Assumptions = Assumed.Of(judged.Facts).Lines(),
                ToolVersion = ToolVersion.Text,
                Repairs = mending.Shown(judged),
            };
            var code = Tell(parsed, targets, report);
            if (reports.WantsStatistics(parsed))
            {
                reports.TellStatistics(world, parsed, report, mending.SafeByRule(judged));
            }

            return code;
        });
        return command;

        int Tell(ParseResult parsed, IReadOnlyList<(string Format, OutputFile? File)> targets, Report report)
        {
            reports.Deliver(world, parsed, targets, report);
            return ExitCode(world, report.Result, parsed.GetValue(failOn)!);
        }
    }

    private static LintResult WithoutBaseline(Surroundings world, LintResult result, Baseline? baseline, IEnumerable<string> read)
    {
        if (baseline is null)
        {
            return result;
        }

        var kept = baseline.Apply(result, read.ToHashSet(StringComparer.Ordinal), out var unused);
        if (unused.Count > 0)
        {
            var entries = unused.Count == 1 ? "1 entry" : FormattableString.Invariant($"{unused.Count} entries");
            world.Error.WriteLine(Printable.Show(
                $"recipelint: {entries} of '{baseline.File}' no check finds any more; 'recipelint baseline prune' drops them."));
        }

        return kept;
    }

    private static int ExitCode(Surroundings world, LintResult result, string failOn)
    {
        foreach (var fault in result.Faults)
        {
            world.Error.WriteLine("recipelint: internal fault: " + Printable.Show(fault.Message));
        }

        if (result.Faults.Count > 0)
        {
            return ExitCodes.Fault;
        }

        Level? threshold = failOn switch
        {
            "error" => Level.Error,
            "warning" => Level.Warning,
            "note" => Level.Note,
            _ => null,
        };
        return threshold is { } least && result.Worst >= least ? ExitCodes.Findings : ExitCodes.Clean;
    }
}
