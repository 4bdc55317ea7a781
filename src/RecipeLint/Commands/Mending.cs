using RecipeLint.Reports;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;
using RecipeLint.Shell;

namespace RecipeLint.Commands;

/// <summary>Shows and applies repairs for 'check'. Files are written once, at the end, and only when everything could be.</summary>
internal sealed class Mending(Surroundings world, Session run, EngineOptions engine, RepairWishes wishes)
{
    /// <summary>Files without repairs that are named one by one.</summary>
    private const int MostNamed = 10;

    /// <summary>True when files are to change, or a difference is to be printed.</summary>
    public bool Changes => wishes.Fix || wishes.Apply.Count > 0;

    public bool PrintsDifference => wishes.DryRun;

    /// <summary>Applies what was asked for and returns the state afterwards.</summary>
    public Judged Apply(Judged before)
    {
        if (run.FromStandardInput is not null && !wishes.DryRun)
        {
            throw new UsageException("text from standard input cannot be mended in place; use '--dry-run', or name the file.");
        }

        var session = new RepairSession(run.Files, run.Asked, run.Load, engine, before);
        if (wishes.Fix)
        {
            session.FixSafe();
        }

        foreach (var (rule, key) in wishes.Apply)
        {
            session.Apply(rule.Id, key);
        }

        if (wishes.DryRun)
        {
            Print(session);
            Tell(session);
            return session.Now;
        }

        // A file and a link to it are one file on the disk, and it is written once.
        var once = session.Changed.GroupBy(f => run.Files.ResolveLinks(session.FullPathOf(f.Key)), StringComparer.Ordinal).ToList();
        var parted = WholeFiles.Write([.. once.Select(g => g.First()).Select(f => new WholeFile(session.FullPathOf(f.Key), f.Value)
        {
            IsNew = session.IsNew(f.Key),
            Expected = session.IsNew(f.Key) ? null : AsRead(before, session, f.Key),
        })]);
        world.TellOfOtherNames(parted);
        foreach (var (file, first) in once.SelectMany(g => g.Skip(1).Select(f => (f.Key, g.First().Key))))
        {
            Say($"{file}: leads to the same file as '{first}', which was written.");
        }

        Tell(session);
        return session.Now;
    }

    /// <summary>The bytes on the disk, with the mark in front that some editors write.</summary>
    /// <exception cref="UsageException">Somebody saved the file meanwhile, and keeps what was saved.</exception>
    private static byte[] AsRead(Judged before, RepairSession session, string file)
    {
        var now = session.BytesOnDisk(file);
        return !before.Workspace.Sources.TryGetValue(file, out var read) || now.AsSpan().EndsWith(read.Bytes)
            ? now
            : throw new UsageException($"'{file}' was changed while it was being read; nothing was written.");
    }

    /// <summary>The repairs of what is left; null when they were not asked for.</summary>
    public IReadOnlyDictionary<Finding, IReadOnlyList<VerifiedRepair>>? Shown(Judged judged)
    {
        if (!wishes.Show)
        {
            return null;
        }

        // What was written stands on the disk by now.
        var desk = new RepairDesk(run.Files, run.Load, engine, judged);
        var shown = new Dictionary<Finding, IReadOnlyList<VerifiedRepair>>(ReferenceEqualityComparer.Instance);
        foreach (var finding in judged.Result.Findings)
        {
            shown[finding] = desk.For(finding);
        }

        return shown;
    }

    /// <summary>Findings by rule id that '--fix' would mend in the files asked for.</summary>
    public IReadOnlyDictionary<string, int> SafeByRule(Judged judged)
    {
        var desk = new RepairDesk(run.Files, run.Load, engine, judged);
        return judged.Result.Findings
            .Where(f => judged.Workspace.Asked.Contains(f.Place.File) && desk.For(f, r => r.Kind == RepairKind.Safe).Count > 0)
            .GroupBy(f => f.Rule.Id, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.Count(), StringComparer.Ordinal);
    }

    /// <summary>What was done to each file, and what was left alone.</summary>
    private void Tell(RepairSession session)
    {
        foreach (var repair in session.Applied)
        {
            Say($"{repair.Finding.Place.File}: {repair.Name}: {repair.Repair.Title}");
        }

        foreach (var (rule, key) in wishes.Apply.Where(a => session.Applied.All(r => r.Finding.Rule.Id != a.Rule.Id)))
        {
            var found = session.Now.Result.Findings.Any(f => f.Rule.Id == rule.Id);
            Say(!found ? $"{rule.Id} {rule.Name} finds nothing here, so there was nothing to mend."
                : $"{rule.Id} {rule.Name}: {(key is null ? "no repair holds" : $"no repair '{key}' holds")}; '--repairs' lists those that "
                    + "do.");
        }

        if (!wishes.Fix)
        {
            return;
        }

        foreach (var (file, count) in session.LeftInOthers)
        {
            var many = count == 1 ? "one repair is" : FormattableString.Invariant($"{count} repairs are");
            Say($"{file}: {many} left, because this file was not asked for.");
        }

        var untouched = session.Now.Workspace.Asked.Where(f => session.Applied.All(r => r.Finding.Place.File != f)).ToList();
        foreach (var file in untouched.Take(MostNamed))
        {
            Say($"{file}: nothing to fix.");
        }

        if (untouched.Count > MostNamed)
        {
            Say(FormattableString.Invariant($"{untouched.Count - MostNamed} more files: nothing to fix."));
        }
    }

    private void Say(string line) => world.Error.WriteLine("recipelint: " + Printable.Show(line));

    private void Print(RepairSession session)
    {
        using var text = new StringWriter();
        foreach (var (file, bytes) in session.Changed)
        {
            UnifiedDiff.Write(text, file, session.BytesOnDisk(file), bytes, session.IsNew(file));
        }

        // A program that applies it needs every byte; on a terminal, what could steer it is shown instead.
        var difference = text.ToString();
        world.Out.Write(world.OutIsTerminal ? string.Join('\n', difference.Split('\n').Select(Printable.Show)) : difference);
        world.Out.Flush();
    }
}
