using System.CommandLine;
using RecipeLint.Living;
using RecipeLint.Reports;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;
using RecipeLint.Shell;

namespace RecipeLint.Commands;

/// <summary>Checks files and folders and reports findings.</summary>
internal static class CheckCommand
{
    public static Command Build(Surroundings world)
    {
        var options = new CheckOptions();
        var command = new Command("check", "Check stocks, recipes, waters, products and settings.");
        options.AddTo(command);
        command.SetAction(parsed => Run(world, options, parsed));
        return command;
    }

    private static int Run(Surroundings world, CheckOptions options, ParseResult parsed)
    {
        var input = options.Input(world, parsed);
        var targets = options.Reports.Targets(world, parsed);
        var engine = options.Engine(world, parsed);
        var wishes = options.Repairs.Of(parsed);
        var progress = new Progress(world.ErrorIsTerminal ? world.Error : null);
        if (!wishes.IsAny && !options.Reports.NeedsEverything(parsed)
            && PieceRun.Check(input, engine, options.AtOnce(parsed), progress) is { } pieces)
        {
            var known = BaselineFile.For(world, pieces.Root, pieces.Baselines, options.Baseline(parsed));
            return Tell(world, options, parsed, targets, new Report
            {
                Result = WithoutBaseline(world, pieces.Result, known, pieces.Sources.Keys),
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
                return ExitCode(world, judged.Result, options.FailOn(parsed));
            }
        }

        var report = Whole(world, judged, options.Baseline(parsed)) with { Repairs = mending.Shown(judged) };
        var code = Tell(world, options, parsed, targets, report);
        if (options.Reports.WantsStatistics(parsed))
        {
            options.Reports.TellStatistics(world, parsed, report, mending.SafeByRule(judged));
        }

        return code;
    }

    /// <summary>The report of a run that was read and judged as a whole.</summary>
    private static Report Whole(Surroundings world, Judged judged, string? baseline)
    {
        var workspace = judged.Workspace;
        var known = BaselineFile.For(world, workspace.Root, PieceRun.BaselinesNamedIn(workspace), baseline);
        return new Report
        {
            Result = WithoutBaseline(world, judged.Result, known, workspace.Sources.Keys),
            Sources = workspace.Sources,
            FilesChecked = workspace.Asked.Count,
            Asked = [.. workspace.Asked],
            Facts = judged.Facts,
            Assumptions = Assumed.Of(judged.Facts).Lines(),
            ToolVersion = ToolVersion.Text,
        };
    }

    private static int Tell(
        Surroundings world, CheckOptions options, ParseResult parsed, IReadOnlyList<(string Format, OutputFile? File)> targets,
        Report report)
    {
        options.Reports.Deliver(world, parsed, targets, report);
        return ExitCode(world, report.Result, options.FailOn(parsed));
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
