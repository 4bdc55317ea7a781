using System.CommandLine;
using System.Globalization;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Recipes.Files;
using RecipeLint.Recipes.Shop;
using RecipeLint.Reports;
using RecipeLint.Reports.ComputedFacts;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;
using RecipeLint.Shell;

namespace RecipeLint.Commands;

/// <summary>Writes a suppression for one finding into the shop's settings, with its reason, its value and its last day.</summary>
internal static class AcceptCommand
{
    private const int MostListed = 6;

    public static Command Build(Surroundings world)
    {
        var finding = new Argument<string[]>("finding")
        {
            Description = "As a report heads it, such as stocks/a.stock.json:12:5: error RL0101; file and rule suffice where there is one.",
            Arity = ArgumentArity.OneOrMore,
        };
        var because = new Option<string>("--because")
        {
            Description = "Why it is accepted, for whoever reads the settings next.",
            HelpName = "reason",
            Required = true,
        };
        var until = new Option<string?>("--until") { Description = "The last day it holds, year-month-day.", HelpName = "date" };
        var command = new Command("accept", "Accept one finding in recipelint.json, with a reason; it comes back when it gets worse.")
        {
            finding,
            because,
            until,
        };
        command.SetAction(parsed =>
        {
            var asked = Asked.Read(parsed.GetValue(finding)!);
            var reason = parsed.GetValue(because)!.Trim();
            if (reason.Length == 0)
            {
                throw new UsageException("'--because' is blank; say why the finding is accepted, so that the next reader can judge it.");
            }

            var last = parsed.GetValue(until) is { } day ? SharedOptions.Date("--until", day) : (DateOnly?)null;
            if (last < world.Today)
            {
                throw new UsageException(string.Create(
                    CultureInfo.InvariantCulture, $"'--until {last:yyyy-MM-dd}' lies in the past, so nothing would be accepted."));
            }

            var alone = Session.Open(world, [asked.File], null, null, false);
            if (alone.Workspace.Asked.Count != 1)
            {
                throw new UsageException("'accept' takes one file and one rule.");
            }

            var run = Session.WithShopOf(world, alone, asked.File, null, false);
            var engine = StandardEngine.On(world.Today);
            var file = alone.Workspace.Asked.Single();
            var judged = new Judged(run.Workspace, run.Facts, LintEngine.Judge(run.Facts, engine));
            var found = Find(run, asked, file, asked.RuleIn(run.Workspace.SettingsFor(file)), judged.Result);
            Write(world, judged, run, engine, found, reason, last);
            return ExitCodes.Clean;
        });
        return command;
    }

    private static Finding Find(Session run, Asked asked, string file, RuleDescriptor rule, LintResult result)
    {
        var here = result.Findings.Where(f => f.Place.File == file && f.Rule.Id == rule.Id).ToList();
        if (here.Count == 0)
        {
            throw new UsageException(result.Suppressed.Any(s => s.Finding.Place.File == file && s.Finding.Rule.Id == rule.Id)
                ? $"{rule.Id} {rule.Name} is accepted in '{file}' already."
                : $"'{file}' has no finding of {rule.Id} {rule.Name}; 'recipelint check {asked.File}' lists what it has.");
        }

        int LineOf(Finding f) => Spot.Of(f.Place, run.Workspace.Sources).Lines.Start.Line;
        var fitting = asked.Line is { } line ? here.Where(f => LineOf(f) == line).ToList() : here;
        var lines = string.Join(
            ", ", here.Select(LineOf).Distinct().Order().Take(MostListed).Select(l => l.ToString(CultureInfo.InvariantCulture)));
        return fitting.DistinctBy(f => f.IdPath).ToList() switch
        {
            [var one] => fitting.First(f => f.IdPath == one.IdPath),
            [] => throw new UsageException($"{rule.Id} is not found on line {asked.Line} of '{file}', but on {lines}."),
            _ => throw new UsageException(
                $"{rule.Id} is found on several lines of '{file}': {lines}. Name one, such as {asked.File}:{LineOf(fitting[0])}."),
        };
    }

    private static void Write(
        Surroundings world, Judged judged, Session run, EngineOptions engine, Finding finding, string reason, DateOnly? last)
    {
        var (file, patch) = Acceptance.Of(judged, finding, reason, last);
        if (patch is null)
        {
            throw new UsageException($"'{file}' cannot hold it; mend what 'recipelint check {file}' says of it first.");
        }

        if (patch.Bytes is not { } bytes)
        {
            throw new UsageException($"'{file}' cannot be written: {patch.Refused}");
        }

        var full = Path.Combine(judged.Workspace.Root, file);
        Verify(run, engine, finding, full, bytes);
        var before = Before(run, file, full);
        world.TellOfOtherNames(WholeFiles.Write([new WholeFile(full, bytes) { IsNew = before is null, Expected = before }]));
        var until = last is { } day ? string.Create(CultureInfo.InvariantCulture, $" until {day:yyyy-MM-dd}") : "";
        world.Out.WriteLine(Printable.Show(
            $"accepted in {file}: {finding.Rule.Id} {finding.Rule.Name} at '{finding.IdPath}' in {finding.Place.File}{until}"));
        if (finding.Rule.ProblemKinds.Count > 0 && finding.Level == Level.Error)
        {
            world.Out.WriteLine("What it speaks of still cannot be read: figures and rules that need it stay without it, and say nothing.");
        }

        world.Out.Flush();
    }

    /// <summary>The settings as they were read, with the mark in front that some editors write; null where there were none.</summary>
    /// <exception cref="UsageException">Somebody saved them since.</exception>
    private static byte[]? Before(Session run, string file, string full)
    {
        if (!run.Workspace.Sources.TryGetValue(file, out var read))
        {
            return null;
        }

        var now = run.Files.Read(full.Replace('\\', '/'), int.MaxValue).Bytes ?? [];
        return now.AsSpan().EndsWith(read.Bytes)
            ? now
            : throw new UsageException($"'{file}' was changed while it was being read; nothing was written.");
    }

    /// <summary>The settings as they would stand are read and judged first: what would not hold the finding back is not written.</summary>
    private static void Verify(Session run, EngineOptions engine, Finding finding, string full, byte[] bytes)
    {
        var tree = new OverlayFileTree(run.Files, full.Replace('\\', '/'), bytes);
        var after =
            LintEngine.Judge(Analyzer.Analyse(WorkspaceLoader.Load(tree, run.Asked, run.Load with { Root = run.Workspace.Root })), engine);
        if (after.Findings.Any(f => f.Rule.Id == finding.Rule.Id && f.Place.File == finding.Place.File && f.IdPath == finding.IdPath))
        {
            throw new UsageException($"{finding.Rule.Id} cannot be accepted: its finding cannot be held back. Nothing was written.");
        }
    }

    /// <summary>What somebody wrote to name a finding.</summary>
    /// <param name="Words">All of it; the name of a rule is among them, one of the shop's own perhaps.</param>
    private sealed record Asked(string File, int? Line, IReadOnlyList<string> Words)
    {
        public static Asked Read(string[] words)
        {
            var parts = string.Join(' ', words).Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(w => w.TrimEnd(':', ',')).ToList();
            var where = parts.FirstOrDefault(p => p.Contains(".json", StringComparison.OrdinalIgnoreCase))
                ?? throw new UsageException(
                    $"'{string.Join(' ', words)}' names no file; write file and rule, such as stocks/a.stock.json:12 RL0101.");
            var end = where.LastIndexOf(".json", StringComparison.OrdinalIgnoreCase) + ".json".Length;
            var numbers = where[end..].Split(':', StringSplitOptions.RemoveEmptyEntries);
            return new Asked(
                where[..end],
                numbers.Length > 0 && int.TryParse(numbers[0], NumberStyles.None, CultureInfo.InvariantCulture, out var line) ? line : null,
                parts);
        }

        /// <exception cref="UsageException">Nothing of it names a rule that there is.</exception>
        public RuleDescriptor RuleIn(ShopSettings shop) =>
            Words.Select(w => HouseRules.Find(shop, w)).OfType<RuleDescriptor>().FirstOrDefault()
            ?? throw new UsageException(
                $"'{string.Join(' ', Words)}' names no rule; write file and rule, such as {File}:12 RL0101.");
    }
}
