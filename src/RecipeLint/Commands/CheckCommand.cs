using System.CommandLine;
using RecipeLint.Install;
using RecipeLint.Living;
using RecipeLint.Recipes.Files;
using RecipeLint.Reports;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;
using RecipeLint.Shell;

namespace RecipeLint.Commands;

/// <summary>Checks files and folders and reports findings.</summary>
internal static class CheckCommand
{
    /// <summary>Characters; those of the program have twelve.</summary>
    private const int LongestDataName = 40;

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
        var timings = options.Timings(parsed);
        var engine = options.Engine(world, parsed) with { Measure = timings is null ? null : timings.Rule };
        if (options.Watches(input, parsed))
        {
            return Watching.Run(world, options, parsed, input, engine);
        }

        var wishes = options.Repairs.Of(parsed);
        var shard = options.Part(parsed);
        var changes = options.Changes(input, parsed);
        if (changes is not null)
        {
            input = changes.Input(wishes.IsAny);
            // What a repair changes would not show in it.
            engine = wishes.IsAny ? engine : engine with { Around = changes.Around };
            if (changes.Reached.Count == 0)
            {
                world.Error.WriteLine(Printable.Show($"recipelint: nothing of ours has changed {changes.When}."));
            }
        }

        var progress = new Progress(world.ErrorIsTerminal ? world.Error : null);
        if (!wishes.IsAny && !options.Reports.NeedsEverything(parsed)
            && PieceRun.Check(input, engine, options.AtOnce(parsed), progress, shard: shard, timings: timings) is { } pieces)
        {
            SayOtherData(world, pieces.PinnedData);
            SayNotRead(world, input.Files, pieces.NotOurs, pieces.Root);
            var known = BaselineFile.For(world, pieces.Root, pieces.Baselines, options.Baseline(parsed));
            var sources = pieces.Sources;
            var result = changes?.Told(pieces.Result, pieces.Root, engine, ref sources) ?? pieces.Result;
            return Tell(world, options, parsed, targets, timings, new Report
            {
                Result = WithoutBaseline(world, result, known, Read(pieces.Read.Concat(sources.Keys), pieces.Root, changes)),
                Sources = sources,
                FilesChecked = pieces.FilesChecked,
                Assumptions = pieces.Assumptions,
                ToolVersion = ToolVersion.Text,
            });
        }

        return Together(world, options, parsed, targets, input, engine, changes, timings);
    }

    /// <summary>Reads everything together, which repairs and figures take.</summary>
    private static int Together(
        Surroundings world, CheckOptions options, ParseResult parsed, IReadOnlyList<(string Format, OutputFile? File)> targets, Input input,
        EngineOptions engine, ChangedFiles? changes, Timings? timings)
    {
        var run = Session.Open(input, timings);
        var wishes = options.Repairs.Of(parsed);
        var judged = new Judged(
            run.Workspace, run.Facts, Timings.Phase(timings, "judge", () => LintEngine.Judge(run.Facts, engine)));
        var mending = new Mending(world, run, engine, wishes);
        if (mending.Changes && mending.Apply(judged) is { } mended)
        {
            judged = mended;
            if (mending.PrintsDifference)
            {
                return ExitCode(world, judged.Result, options, parsed);
            }
        }

        SayNotRead(world, input.Files, run.Workspace.NotOurs, run.Workspace.Root);
        var report = Whole(world, judged, options.Baseline(parsed), changes, engine) with { Repairs = mending.Shown(judged) };
        var code = Tell(world, options, parsed, targets, timings, report);
        if (options.Reports.WantsStatistics(parsed))
        {
            options.Reports.TellStatistics(world, parsed, report, mending.SafeByRule(judged));
        }

        return code;
    }

    /// <summary>The report of a run that was read and judged as a whole.</summary>
    private static Report Whole(Surroundings world, Judged judged, string? baseline, ChangedFiles? changes, EngineOptions engine)
    {
        var workspace = judged.Workspace;
        var sources = workspace.Sources;
        var result = changes?.Told(judged.Result, workspace.Root, engine, ref sources) ?? judged.Result;
        SayOtherData(world, PieceRun.DataPinnedIn(workspace));
        var known = BaselineFile.For(world, workspace.Root, PieceRun.BaselinesNamedIn(workspace), baseline);
        return new Report
        {
            Result = WithoutBaseline(world, result, known, Read(sources.Keys, workspace.Root, changes)),
            Sources = sources,
            FilesChecked = workspace.Asked.Count,
            Asked = [.. workspace.Asked],
            Facts = judged.Facts,
            Assumptions = Assumed.Of(judged.Facts).Lines(),
            ToolVersion = ToolVersion.Text,
        };
    }

    /// <summary>The files whose findings the run tells, relative to its root.</summary>
    private static IEnumerable<string> Read(IEnumerable<string> files, string root, ChangedFiles? changes) =>
        changes is null ? files : files.Where(f => changes.Reached.Contains(Path.IsPathRooted(f) ? f : $"{root.TrimEnd('/')}/{f}"));

    private static int Tell(
        Surroundings world, CheckOptions options, ParseResult parsed, IReadOnlyList<(string Format, OutputFile? File)> targets,
        Timings? timings, Report report)
    {
        var code = Timings.Phase(timings, "report", () =>
        {
            options.Reports.Deliver(world, parsed, targets, report);
            return ExitCode(world, report.Result, options, parsed);
        });
        foreach (var line in timings?.Lines(report.FilesChecked) ?? [])
        {
            world.Error.WriteLine(Printable.Show(line));
        }

        return code;
    }

    /// <summary>Who pinned the data is told that others judge now, and how to see what that changes.</summary>
    private static void SayOtherData(Surroundings world, IReadOnlyList<string> pinned)
    {
        foreach (var data in pinned.Where(d => d != DataVersion.Text))
        {
            var named = data.Length > LongestDataName ? data[..LongestDataName] + "..." : data;
            world.Error.WriteLine(Printable.Show(
                $"recipelint: the settings were written for the data {named}, this program has {DataVersion.Text}; 'recipelint baseline "
                    + "compare' lists the verdicts that change, then write the new name."));
        }
    }

    /// <summary>Who called a stock 'part-a.json' is told once that nobody read it.</summary>
    private static void SayNotRead(Surroundings world, IFileTree files, IReadOnlyList<string> notOurs, string root)
    {
        if (NotRead.Line(files, notOurs, root) is { } line)
        {
            world.Error.WriteLine(Printable.Show("recipelint: " + line));
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

    private static int ExitCode(Surroundings world, LintResult result, CheckOptions options, ParseResult parsed)
    {
        foreach (var fault in result.Faults)
        {
            world.Error.WriteLine("recipelint: internal fault: " + Printable.Show(fault.Message));
        }

        if (result.Faults.Count > 0)
        {
            return ExitCodes.Fault;
        }

        return options.ExitCode(parsed, result);
    }
}
