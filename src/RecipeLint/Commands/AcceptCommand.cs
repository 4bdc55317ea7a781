using System.CommandLine;
using System.Globalization;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Recipes.Files;
using RecipeLint.Recipes.Patching;
using RecipeLint.Recipes.Text;
using RecipeLint.Reports;
using RecipeLint.Rules;
using RecipeLint.Rules.Engine;
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
            var engine = new EngineOptions { Today = world.Today, Rules = RuleList.All };
            var found = Find(run, asked, alone.Workspace.Asked.Single(), LintEngine.Judge(run.Facts, engine));
            Write(world, run, engine, found, reason, last);
            return ExitCodes.Clean;
        });
        return command;
    }

    private static Finding Find(Session run, Asked asked, string file, LintResult result)
    {
        var here = result.Findings.Where(f => f.Place.File == file && f.Rule.Id == asked.Rule.Id).ToList();
        if (here.Count == 0)
        {
            throw new UsageException(result.Suppressed.Any(s => s.Finding.Place.File == file && s.Finding.Rule.Id == asked.Rule.Id)
                ? $"{asked.Rule.Id} {asked.Rule.Name} is accepted in '{file}' already."
                : $"'{file}' has no finding of {asked.Rule.Id} {asked.Rule.Name}; 'recipelint check {asked.File}' lists what it has.");
        }

        int LineOf(Finding f) => Spot.Of(f.Place, run.Workspace.Sources).Lines.Start.Line;
        var fitting = asked.Line is { } line ? here.Where(f => LineOf(f) == line).ToList() : here;
        var lines = string.Join(
            ", ", here.Select(LineOf).Distinct().Order().Take(MostListed).Select(l => l.ToString(CultureInfo.InvariantCulture)));
        return fitting.DistinctBy(f => f.IdPath).ToList() switch
        {
            [var one] => fitting.First(f => f.IdPath == one.IdPath),
            [] => throw new UsageException($"{asked.Rule.Id} is not found on line {asked.Line} of '{file}', but on {lines}."),
            _ => throw new UsageException(
                $"{asked.Rule.Id} is found on several lines of '{file}': {lines}. Name one, such as {asked.File}:{LineOf(fitting[0])}."),
        };
    }

    private static void Write(Surroundings world, Session run, EngineOptions engine, Finding finding, string reason, DateOnly? last)
    {
        var workspace = run.Workspace;
        var settings = workspace.SettingsFor(finding.Place.File);
        var file = settings.File ?? LoadOptions.SettingsFileName;
        var full = Path.Combine(workspace.Root, file);
        var folder = Path.GetDirectoryName(full)!;
        var relative = Path.GetRelativePath(folder, Path.Combine(workspace.Root, finding.Place.File)).Replace('\\', '/');
        if (!settings.IsReadable || relative.StartsWith("..", StringComparison.Ordinal))
        {
            throw new UsageException($"'{file}' cannot hold it; mend what 'recipelint check {file}' says of it first.");
        }

        var entry = Entry(finding, relative, reason, last);
        var exists = File.Exists(full);
        var patch = exists
            ? Patched(workspace.Sources[file], entry)
            : JsonPatcher.Create(new JsonEdit.NewFile(
                Place.Whole(file), new JsonDraft.Object([new DraftMember("suppressions", new JsonDraft.List([entry]))])));
        if (patch.Bytes is not { } bytes)
        {
            throw new UsageException($"'{file}' cannot be written: {patch.Refused}");
        }

        Verify(run, engine, finding, full, bytes);
        WholeFiles.Write([new WholeFile(full, bytes) { IsNew = !exists, Expected = exists ? File.ReadAllBytes(full) : null }]);
        var until = last is { } day ? string.Create(CultureInfo.InvariantCulture, $" until {day:yyyy-MM-dd}") : "";
        world.Out.WriteLine(Printable.Show(
            $"accepted in {file}: {finding.Rule.Id} {finding.Rule.Name} at '{finding.IdPath}' in {finding.Place.File}{until}"));
        world.Out.Flush();
    }

    private static JsonDraft.Object Entry(Finding finding, string file, string reason, DateOnly? last)
    {
        var members = new List<DraftMember> { new("rule", JsonDraft.Of(finding.Rule.Name)), new("file", JsonDraft.Of(file)) };
        if (finding.IdPath.Length > 0)
        {
            members.Add(new DraftMember("at", JsonDraft.Of(finding.IdPath)));
        }

        members.Add(new DraftMember("reason", JsonDraft.Of(reason)));
        if (BaselineEntry.Of(finding).Value is { } value)
        {
            members.Add(new DraftMember("accepted", new JsonDraft.Literal(value.ToString("R", CultureInfo.InvariantCulture))));
        }

        if (last is { } day)
        {
            members.Add(new DraftMember("expires", JsonDraft.Of(day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture))));
        }

        return new JsonDraft.Object(members);
    }

    private static PatchResult Patched(Recipes.Json.SourceFile source, JsonDraft.Object entry)
    {
        var root = Place.Whole(source.Path);
        return source.Tree?.Root["suppressions"] is { } list
            ? JsonPatcher.Apply(source, [new JsonEdit.InsertElement(root.Child("suppressions"), list.Items.Count, entry)])
            : JsonPatcher.Apply(source, [new JsonEdit.InsertMember(root, "suppressions", new JsonDraft.List([entry]))]);
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
    private sealed record Asked(string File, int? Line, RuleDescriptor Rule)
    {
        public static Asked Read(string[] words)
        {
            var parts = string.Join(' ', words).Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(w => w.TrimEnd(':', ',')).ToList();
            var rule = parts.Select(RuleBook.Find).OfType<RuleDescriptor>().FirstOrDefault()
                ?? throw new UsageException(
                    $"'{string.Join(' ', words)}' names no rule; write file and rule, such as stocks/a.stock.json:12 RL0101.");
            var left = parts.Where(p => RuleBook.Find(p) is null && p is not ("error" or "warning" or "note")).ToList();
            var where = left.FirstOrDefault(p => p.Contains(".json", StringComparison.OrdinalIgnoreCase))
                ?? throw new UsageException(
                    $"'{string.Join(' ', words)}' names no file; write file and rule, such as stocks/a.stock.json:12 {rule.Id}.");
            var end = where.LastIndexOf(".json", StringComparison.OrdinalIgnoreCase) + ".json".Length;
            var numbers = where[end..].Split(':', StringSplitOptions.RemoveEmptyEntries);
            return new Asked(
                where[..end],
                numbers.Length > 0 && int.TryParse(numbers[0], NumberStyles.None, CultureInfo.InvariantCulture, out var line) ? line : null,
                rule);
        }
    }
}
