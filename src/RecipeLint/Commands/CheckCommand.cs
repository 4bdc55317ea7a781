using System.CommandLine;
using System.Text;
using RecipeLint.Living;
using RecipeLint.Reports;
using RecipeLint.Rules;
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
        var format = new Option<string>("--format") { Description = "How to report.", DefaultValueFactory = _ => "text", HelpName = "text|sarif" };
        format.AcceptOnlyFromAmong("text", "sarif");
        var output = new Option<string?>("--output", "-o") { Description = "Write the report to this file instead of standard output.", HelpName = "file" };
        var failOn = new Option<string>("--fail-on")
        {
            Description = "Lowest level that makes the exit code 1, itself included.",
            DefaultValueFactory = _ => "error",
            HelpName = "error|warning|note|never",
        };
        failOn.AcceptOnlyFromAmong("error", "warning", "note", "never");
        var quiet = new Option<bool>("--quiet", "-q") { Description = "One line for each finding, nothing else." };
        var withSuppressed = new Option<bool>("--with-suppressed") { Description = "List accepted findings too, with their reason; in SARIF they are marked as suppressed." };
        var baseline = new Option<string?>("--baseline") { Description = "Report only what is new or worse than in this file; 'recipelint baseline' writes it.", HelpName = "file" };
        var asOf = SharedOptions.AsOf();
        var width = SharedOptions.Width();
        var threads = new Option<int>("--threads") { Description = "How many files are judged at once; without it as many as this machine has processors. It changes no finding.", HelpName = "n" };
        threads.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<int>() is < 1 or > 256)
            {
                result.AddError("'--threads' takes a number from 1 to 256.");
            }
        });
        var repairs = new RepairOptions();
        var color = SharedOptions.Color();
        var config = SharedOptions.Config();
        var noConfig = SharedOptions.NoConfig();

        var command = new Command("check", "Check stocks, recipes, waters, products and settings.")
        {
            paths, format, output, failOn, quiet, width, color, config, noConfig, stdinName, withSuppressed, baseline, asOf, threads,
        };
        repairs.AddTo(command);
        command.SetAction(parsed =>
        {
            var input = Input.Of(world, parsed.GetValue(paths)!, parsed.GetValue(stdinName), parsed.GetValue(config), parsed.GetValue(noConfig));
            var today = parsed.GetValue(asOf) is { } day ? SharedOptions.Date("--as-of", day) : world.Today;
            var engine = new EngineOptions { Today = today, Rules = RuleList.All };
            var wishes = repairs.Of(parsed);
            var atOnce = parsed.GetValue(threads) is var wanted && wanted > 0 ? wanted : Environment.ProcessorCount;
            if (!wishes.IsAny && PieceRun.Check(input, engine, atOnce, new Progress(world.ErrorIsTerminal ? world.Error : null)) is { } pieces)
            {
                var kept = WithoutBaseline(world, pieces.Result, BaselineFile.For(world, pieces.Root, pieces.Baselines, parsed.GetValue(baseline)), pieces.Sources.Keys);
                return Tell(parsed, kept, new Report
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
                Assumptions = Assumed.Of(judged.Facts).Lines(),
                ToolVersion = ToolVersion.Text,
                Repairs = mending.Shown(judged),
            };
            return Tell(parsed, result, report);
        });
        return command;

        int Tell(ParseResult parsed, LintResult result, Report report)
        {
            var sarif = parsed.GetValue(format) == "sarif";
            Deliver(world, parsed.GetValue(output), writer =>
            {
                if (sarif)
                {
                    SarifReport.Write(writer, report, new SarifOptions(parsed.GetValue(withSuppressed)));
                }
                else
                {
                    var useColor = parsed.GetValue(output) is null ? world.UseColor(parsed.GetValue(color)!) : parsed.GetValue(color) == "always";
                    TextReport.Write(writer, report, new TextOptions(useColor, world.Width(parsed.GetValue(width)), parsed.GetValue(quiet), parsed.GetValue(withSuppressed)));
                }
            });
            return ExitCode(world, result, parsed.GetValue(failOn)!);
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
            world.Error.WriteLine(Printable.Show($"recipelint: {entries} of '{baseline.File}' no check finds any more; 'recipelint baseline prune' drops them."));
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

    /// <summary>To standard output, or to a file that appears whole or not at all.</summary>
    private static void Deliver(Surroundings world, string? path, Action<TextWriter> write)
    {
        if (path is null)
        {
            write(world.Out);
            world.Out.Flush();
            return;
        }

        var full = Path.GetFullPath(path, world.CurrentDirectory);
        if (path.Length == 0 || Directory.Exists(full) || Path.GetDirectoryName(full) is not { } folder || !Directory.Exists(folder))
        {
            throw new UsageException($"cannot write '{path}': {(Directory.Exists(full) ? "it is a folder" : "its folder does not exist")}.");
        }

        using var text = new MemoryStream();
        using (var writer = new StreamWriter(text, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false), leaveOpen: true) { NewLine = "\n" })
        {
            write(writer);
        }

        WholeFiles.Deliver(full, text.ToArray());
    }
}
