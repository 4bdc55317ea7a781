using System.CommandLine;
using System.Diagnostics;
using System.Globalization;
using RecipeLint.Living;
using RecipeLint.Reports;
using RecipeLint.Reports.Formats;
using RecipeLint.Rules.Engine;
using RecipeLint.Shell;

namespace RecipeLint.Commands;

/// <summary>'check --watch': tells what a change to a file does to it and to all that draws on it, until it is stopped.</summary>
internal static class Watching
{
    public static int Run(Surroundings world, CheckOptions options, ParseResult parsed, Input input, EngineOptions engine)
    {
        var run = new WatchRun(input, engine, options.AtOnce(parsed));
        var now = run.Judge(null);
        using var watch = new FileWatch(now.Root);
        Tell(world, options, parsed, now);
        Say(world, string.Create(CultureInfo.InvariantCulture, $"watching {now.FilesChecked:N0} files in {now.Root}; Ctrl+C ends it"));
        try
        {
            while (true)
            {
                var touched = run.Relevant(watch.Next(world.Stop));
                if (touched is { Count: 0 })
                {
                    continue;
                }

                var clock = Stopwatch.StartNew();
                try
                {
                    now = run.Judge(touched);
                }
                catch (UsageException exception)
                {
                    // What is asked about may be away for a moment; the next change tells.
                    Say(world, exception.Message);
                    continue;
                }

                Tell(world, options, parsed, now);
                var count = now.Result.Findings.CountBy(f => f.Level).ToDictionary();
                Say(world, string.Create(
                    CultureInfo.InvariantCulture,
                    $"{Changed(touched, now.Root)}; in all {count.GetValueOrDefault(Level.Error):N0} errors, "
                        + $"{count.GetValueOrDefault(Level.Warning):N0} warnings, {count.GetValueOrDefault(Level.Note):N0} notes in "
                        + $"{now.FilesChecked:N0} files ({clock.ElapsedMilliseconds} ms)"));
            }
        }
        catch (OperationCanceledException)
        {
            return options.ExitCode(parsed, now.Result);
        }
    }

    /// <summary>The findings in what a change reaches; at first all.</summary>
    private static void Tell(Surroundings world, CheckOptions options, ParseResult parsed, WatchResult now)
    {
        var known = BaselineFile.For(world, now.Root, now.Baselines, options.Baseline(parsed));
        var result = known?.Apply(now.Result, new HashSet<string>(), out _) ?? now.Result;
        bool Concerns(Finding f) => now.Reached is not { } reached || reached.Contains($"{now.Root.TrimEnd('/')}/{f.Place.File}");
        options.Reports.Deliver(world, parsed, [(ReportFormats.Text, null)], new Report
        {
            Result = result with
            {
                Findings = [.. result.Findings.Where(Concerns)],
                Suppressed = [.. result.Suppressed.Where(s => Concerns(s.Finding))],
            },
            Sources = now.Sources,
            FilesChecked = now.Reached?.Count ?? now.FilesChecked,
            ToolVersion = ToolVersion.Text,
        });
    }

    private static string Changed(IReadOnlyCollection<string>? touched, string root)
    {
        if (touched is null)
        {
            return "files came or went";
        }

        var first = touched.Order(StringComparer.Ordinal).First();
        var name = first.StartsWith(root + "/", StringComparison.Ordinal) ? first[(root.Length + 1)..] : first;
        return touched.Count == 1
            ? $"{name} changed"
            : string.Create(CultureInfo.InvariantCulture, $"{name} and {touched.Count - 1} more changed");
    }

    private static void Say(Surroundings world, string line) => world.Error.WriteLine("recipelint: " + Printable.Show(line));
}
