using System.Globalization;
using System.Text.RegularExpressions;
using Newtonsoft.Json;
using RecipeLint.Rules.Engine;
using Sarif = Microsoft.CodeAnalysis.Sarif;

namespace RecipeLint.Reports;

/// <summary>
/// Puts the logs of the shards of one run together to the log that the whole run would have written, byte for byte. Reads and writes
/// through the SARIF library.
/// </summary>
internal static partial class SarifLogMerger
{
    /// <exception cref="InvalidDataException">A text is no log of ours, or the logs are not of one version.</exception>
    public static (Sarif.SarifLog Log, Level? Worst, bool Faults) Merge(IReadOnlyList<(string Name, string Text)> logs)
    {
        var runs = logs.Select(l => RunOf(l.Name, l.Text)).ToList();
        var first = runs[0];
        var other = runs.FindIndex(r => r.Tool.Driver.Version != first.Tool.Driver.Version);
        if (other >= 0)
        {
            throw new InvalidDataException(
                $"'{logs[other].Name}' was written by version {runs[other].Tool.Driver.Version}, '{logs[0].Name}' by "
                    + $"{first.Tool.Driver.Version}: only logs of one version make one log");
        }

        var rules = runs.SelectMany(r => r.Tool.Driver.Rules)
            .GroupBy(r => r.Id, StringComparer.Ordinal)
            .OrderBy(g => g.Key, StringComparer.Ordinal)
            .Select(g => g.FirstOrDefault(r => r.Help?.Markdown is not null) ?? g.First())
            .ToList();
        var index = rules.Select((r, i) => (r.Id, i)).ToDictionary(p => p.Id, p => p.i, StringComparer.Ordinal);
        // A file that several shards read is told of alike by each; its findings are one.
        var all = runs.SelectMany(r => r.Results ?? [])
            .DistinctBy(r => (r.RuleId, FileOf(r), r.Message.Text, r.PartialFingerprints?.Values.FirstOrDefault(), Start(r)))
            .OrderBy(FileOf, StringComparer.Ordinal)
            .ToList();
        var kept = all.Count <= SarifReport.MaxResults
            ? all
            : [.. all.Select((r, i) => (Result: r, Index: i)).OrderByDescending(r => LevelOf(r.Result)).ThenBy(r => r.Index)
                .Take(SarifReport.MaxResults).OrderBy(r => r.Index).Select(r => r.Result)];
        foreach (var result in kept)
        {
            result.RuleIndex = index[result.RuleId];
        }

        WithoutHelpThatNothingKeeps(rules, kept, runs);
        first.Tool.Driver.Rules = rules;
        first.Results = kept;
        first.Invocations = [Invocation(runs, all.Count - kept.Count, index)];
        var log = new Sarif.SarifLog { SchemaUri = new Uri(SarifLogWriter.Schema), Version = Sarif.SarifVersion.Current, Runs = [first] };
        return (log, all.Count == 0 ? null : all.Max(LevelOf), !first.Invocations[0].ExecutionSuccessful);
    }

    private static Sarif.Run RunOf(string name, string text)
    {
        try
        {
            // Dates stay the text that they are; the library would write them anew.
            var settings = new JsonSerializerSettings
            {
                DateParseHandling = DateParseHandling.None,
                Culture = CultureInfo.InvariantCulture,
            };
            return JsonConvert.DeserializeObject<Sarif.SarifLog>(text, settings) is { Runs: [{ } run] }
                && run.Tool?.Driver is { Name: "RecipeLint", Rules: not null } && IsWhole(run)
                ? run
                : throw new InvalidDataException($"'{name}' is no SARIF log of one run of RecipeLint");
        }
        catch (Exception exception) when (IsOfTheText(exception))
        {
            throw new InvalidDataException(
                $"'{name}' is no SARIF log; 'merge' takes those that 'check --shard ... --format sarif' wrote", exception);
        }
    }

    /// <summary>What the libraries throw for a text that is no log: each part of theirs has its own way to refuse.</summary>
    private static bool IsOfTheText(Exception exception) => exception is JsonException or FormatException or OverflowException
        or ArgumentException or InvalidCastException or InvalidOperationException or NullReferenceException or NotSupportedException;

    /// <summary>Whether everything that is put together has what it is put together by.</summary>
    private static bool IsWhole(Sarif.Run run)
    {
        var rules = run.Tool.Driver.Rules;
        if (rules.Any(r => string.IsNullOrEmpty(r?.Id)))
        {
            return false;
        }

        var ids = rules.Select(r => r.Id).ToHashSet(StringComparer.Ordinal);
        return (run.Results ?? []).All(r => r is { Message: not null, RuleId: { } rule } && ids.Contains(rule))
            && (run.Invocations ?? []).All(i => i is not null && (i.ToolExecutionNotifications ?? []).All(n => n?.Message is not null));
    }

    /// <summary>Where a rule spoke only in results that are left out, the whole run would not carry its help.</summary>
    private static void WithoutHelpThatNothingKeeps(
        List<Sarif.ReportingDescriptor> rules, List<Sarif.Result> kept, List<Sarif.Run> runs)
    {
        var speaking = kept.Select(r => r.RuleId).ToHashSet(StringComparer.Ordinal);
        for (var i = 0; i < rules.Count; i++)
        {
            if (rules[i].Help?.Markdown is not null && !speaking.Contains(rules[i].Id))
            {
                rules[i] = runs.SelectMany(r => r.Tool.Driver.Rules).FirstOrDefault(r => r.Id == rules[i].Id && r.Help?.Markdown is null)
                    ?? rules[i];
            }
        }
    }

    private static Sarif.Invocation Invocation(List<Sarif.Run> runs, long leftOut, Dictionary<string, int> index)
    {
        var notifications = new List<Sarif.Notification>();
        foreach (var said in runs.SelectMany(r => r.Invocations ?? []).SelectMany(i => i.ToolExecutionNotifications ?? []))
        {
            if (said.AssociatedRule is null && LeftOut().Match(said.Message.Text ?? "") is { Success: true } match)
            {
                leftOut += long.Parse(match.Groups[1].ValueSpan, CultureInfo.InvariantCulture);
                continue;
            }

            if (said.AssociatedRule is { Id: { } id } rule && index.TryGetValue(id, out var at))
            {
                rule.Index = at;
            }

            notifications.Add(said);
        }

        if (leftOut > 0)
        {
            notifications.Add(SarifLogWriter.LeftOut(leftOut));
        }

        return new Sarif.Invocation
        {
            ExecutionSuccessful = runs.TrueForAll(r => (r.Invocations ?? []).All(i => i.ExecutionSuccessful)),
            ToolExecutionNotifications = notifications.Count == 0 ? null : notifications,
        };
    }

    private static string FileOf(Sarif.Result result) =>
        Uri.UnescapeDataString(result.Locations?.FirstOrDefault()?.PhysicalLocation?.ArtifactLocation?.Uri?.OriginalString ?? "");

    private static (int, int) Start(Sarif.Result result) =>
        result.Locations?.FirstOrDefault()?.PhysicalLocation?.Region is { } region ? (region.StartLine, region.StartColumn) : (0, 0);

    private static Level LevelOf(Sarif.Result result) => result.Level switch
    {
        Sarif.FailureLevel.Error => Level.Error,
        Sarif.FailureLevel.Warning => Level.Warning,
        _ => Level.Note,
    };

    [GeneratedRegex("^([0-9]{1,12}) more results are left out;")]
    private static partial Regex LeftOut();
}
