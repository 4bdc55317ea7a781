using System.CommandLine;
using System.Globalization;
using RecipeLint.Install;
using RecipeLint.Living;
using RecipeLint.Reports;
using RecipeLint.Reports.ComputedFacts;
using RecipeLint.Rules.Engine;
using RecipeLint.Shell;

namespace RecipeLint.Commands;

/// <summary>Writes down the findings a shop has today, so that only new and worse ones are reported from then on.</summary>
internal static class BaselineCommand
{
    public static Command Build(Surroundings world)
    {
        var action = new Argument<string>("action")
        {
            Description =
                "update: write what is found today; prune: drop what is no longer found; compare: list what is new, worse or gone.",
        };
        action.AcceptOnlyFromAmong("update", "prune", "compare");
        var paths = new Argument<string[]>("path") { Description = "Files and folders to check.", Arity = ArgumentArity.ZeroOrMore };
        var file = new Option<string?>("--file")
        {
            Description = $"The baseline; left out, the one the settings name, else {BaselineFile.UsualName} in the current folder.",
            HelpName = "file",
        };
        var config = SharedOptions.Config();
        var command = new Command("baseline", "Write down today's findings, so that only new and worse ones are reported.")
        {
            action,
            paths,
            file,
            config,
        };
        command.SetAction(parsed =>
        {
            var asked = parsed.GetValue(paths) is { Length: > 0 } some ? some : ["."];
            var run = Session.Open(world, asked, null, parsed.GetValue(config), noConfig: false);
            var named = Named(world, run, parsed.GetValue(file));
            var full = Path.GetFullPath(named, world.CurrentDirectory);
            var result = LintEngine.Judge(run.Facts, StandardEngine.On(world.Today));
            var read = run.Workspace.Sources.Keys.ToHashSet(StringComparer.Ordinal);
            return parsed.GetValue(action) switch
            {
                "update" => Update(world, named, full, result, read, IsNamed(run, full)),
                "prune" => Prune(world, named, full, result, read),
                _ => Compare(world, named, result, read),
            };
        });
        return command;
    }

    /// <summary>
    /// The file as asked for, else the one that the settings name: what 'check' reads is what is written. From the current folder.
    /// </summary>
    private static string Named(Surroundings world, Session run, string? asked)
    {
        var inSettings = PieceRun.BaselinesNamedIn(run.Workspace);
        return asked is not null || inSettings.Count == 0 ? asked ?? BaselineFile.UsualName
            : inSettings.Count == 1
                ? Path.GetRelativePath(world.CurrentDirectory, Path.GetFullPath(inSettings[0], run.Workspace.Root)).Replace('\\', '/')
                : throw new UsageException("the settings of these files name several baselines ("
                    + string.Join(", ", inSettings) + "): say which one with '--file', or check one shop at a time.");
    }

    private static bool IsNamed(Session run, string full) => PieceRun.BaselinesNamedIn(run.Workspace)
        .Any(b => string.Equals(Path.GetFullPath(b, run.Workspace.Root), full, StringComparison.Ordinal));

    private static int Update(Surroundings world, string named, string full, LintResult result, HashSet<string> read, bool isNamed)
    {
        var bytes = BaselineFile.BytesIfThere(world, named);
        var before = bytes is null ? [] : BaselineFile.Parse(bytes, named).Entries;

        // What was not read this time stays as it was.
        var entries = before.Where(e => !read.Contains(e.File)).Concat(result.Findings.Select(BaselineEntry.Of)).ToList();
        Write(world, full, entries, bytes);
        Say(
            world,
            isNamed ? $"wrote {Count(entries.Count)} to {named}, which the settings name"
                : $"wrote {Count(entries.Count)} to {named}; name it in recipelint.json as \"baseline\", or give it to check with "
                    + "--baseline");
        return ExitCodes.Clean;
    }

    private static int Prune(Surroundings world, string named, string full, LintResult result, HashSet<string> read)
    {
        var bytes = BaselineFile.Bytes(world, named);
        var baseline = BaselineFile.Parse(bytes, named);
        baseline.Apply(result, read, out var unused);
        var left = baseline.Entries.Except(unused, ReferenceEqualityComparer.Instance).Cast<BaselineEntry>().ToList();
        if (unused.Count > 0)
        {
            Write(world, full, left, bytes);
        }

        Say(world, $"dropped {Count(unused.Count)} that no check finds any more; {Count(left.Count)} left in {named}");
        return ExitCodes.Clean;
    }

    private static int Compare(Surroundings world, string named, LintResult result, HashSet<string> read)
    {
        var baseline = BaselineFile.Parse(BaselineFile.Bytes(world, named), named);
        var then = baseline.Entries.ToLookup(e => (e.Rule, e.File, e.At));
        var left = baseline.Apply(result, read, out var unused).Findings;
        if (baseline.Data is { Length: > 0 } data && data != DataVersion.Text)
        {
            Say(world, $"data  {data} then, {DataVersion.Text} now; a verdict on a file that has not changed follows from that");
        }

        foreach (var finding in left)
        {
            var was = then[(finding.Rule.Id, finding.Place.File, finding.IdPath)].FirstOrDefault();
            var now = finding.Measured is { } measured && was?.Value is { } old
                ? string.Create(CultureInfo.InvariantCulture, $" ({old:G6} then, {measured.Value:G6} now)")
                : "";
            Say(world, $"{(now.Length > 0 ? "worse" : "new  ")} {finding.Place.File}: {finding.Rule.Id} {finding.Rule.Name} at "
                + $"'{finding.IdPath}'{now}");
        }

        var worse = left.Select(f => (f.Rule.Id, f.Place.File, f.IdPath)).ToHashSet();
        foreach (var entry in unused.Where(u => !worse.Contains((u.Rule, u.File, u.At))))
        {
            Say(world, $"gone  {entry.File}: {entry.Rule} {RuleBook.Find(entry.Rule)?.Name} at '{entry.At}'");
        }

        world.Out.Flush();
        return left.Count > 0 ? ExitCodes.Findings : ExitCodes.Clean;
    }

    /// <param name="before">What was read there; null where nothing stood.</param>
    private static void Write(Surroundings world, string full, IEnumerable<BaselineEntry> entries, byte[]? before) =>
        world.TellOfOtherNames(
            WholeFiles.Write([new WholeFile(full, BaselineFile.Write(entries)) { Expected = before, IsNew = before is null }]));

    private static string Count(int count) => string.Create(CultureInfo.InvariantCulture, $"{count} finding{(count == 1 ? "" : "s")}");

    private static void Say(Surroundings world, string line) => world.Out.WriteLine(Printable.Show(line));
}
