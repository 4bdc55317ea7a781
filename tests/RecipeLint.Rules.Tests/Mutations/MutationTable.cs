using System.Globalization;
using System.Text;
using System.Text.Json;
using RecipeLint.Rules.Tests.Folders;

namespace RecipeLint.Rules.Tests.Mutations;

/// <summary>The study as a table, and the reasons for its misses, which are written by hand.</summary>
internal static class MutationTable
{
    internal static readonly string File = Path.Combine(RuleFolder.Repository, "tests", "RecipeLint.Rules.Tests", "Tables", "mutations.md");

    private static readonly string _reasons = Path.Combine(RuleFolder.Repository, "tests", "RecipeLint.Rules.Tests", "Mutations", "mutations.reasons.json");

    internal static string Score(int caught, int of) => string.Create(CultureInfo.InvariantCulture, $"{caught} of {of} caught ({100.0 * caught / of:0.0} %)");

    /// <summary>Harmful mutants that a plain check stops with exit code 1.</summary>
    internal static int Stopped => MutationStudy.Harmful.Count(o => o.Stops);

    /// <summary>Misses that are made with and without targets.</summary>
    internal static IReadOnlyList<Outcome> Missed => [.. MutationStudy.Harmful.Where(o => o.WithTargets is null)];

    /// <summary>Misses that only targets would catch.</summary>
    internal static IReadOnlyList<Outcome> MissedWithoutTargets => [.. MutationStudy.HarmfulWithoutTargets.Where(o => o.WithoutTargets is null && o.WithTargets is not null)];

    /// <summary>By the whole name of a mutant, or by its kind of slip where the same holds for all.</summary>
    internal static IReadOnlyDictionary<string, string> Reasons(string part)
    {
        using var json = JsonDocument.Parse(System.IO.File.ReadAllBytes(_reasons));
        return json.RootElement.GetProperty(part).EnumerateObject().ToDictionary(p => p.Name, p => p.Value.GetString()!);
    }

    internal static string? KeyOf(Outcome outcome, IReadOnlyDictionary<string, string> reasons) =>
        new[] { outcome.Mutant.Key, outcome.Mutant.Operator }.FirstOrDefault(reasons.ContainsKey);

    internal static string Write()
    {
        var text = new StringBuilder();
        text.Append("# What single mistakes the rules catch\n\n")
            .Append("Written by MutationTests; rewritten with RECIPELINT_UPDATE=1. The reasons stand in Mutations/mutations.reasons.json and are written by hand.\n\n")
            .Append("Every mutant is one mistake in one of two clean shops: the example `examples/quillmere`, and `Mutations/tarnhollow` (well water with nitric acid, vinegar and benzoate in the trace stock, bench sheets with labels).\n")
            .Append("It is caught when a finding at warning or above names its place or the mutated element: the substance, what it brings, the stock or the instrument.\n\n")
            .Append(CultureInfo.InvariantCulture, $"- with targets: {Score(MutationStudy.Harmful.Count(o => o.WithTargets is not null), MutationStudy.Harmful.Count)}\n")
            .Append(CultureInfo.InvariantCulture, $"- without targets: {Score(MutationStudy.HarmfulWithoutTargets.Count(o => o.WithoutTargets is not null), MutationStudy.HarmfulWithoutTargets.Count)}\n")
            .Append(CultureInfo.InvariantCulture, $"- a plain check exits 1: {Stopped} of {MutationStudy.Harmful.Count} harmful mutants ({100.0 * Stopped / MutationStudy.Harmful.Count:0.0} %), {MutationStudy.Outcomes.Count(o => o.IsHarmless && o.Stops)} of {MutationStudy.Outcomes.Count(o => o.IsHarmless)} harmless ones\n")
            .Append(CultureInfo.InvariantCulture, $"- harmless by the criterion below, and left out of both: {MutationStudy.Outcomes.Count(o => o.IsHarmless)} of {MutationStudy.Outcomes.Count}\n\n")
            .Append("A mutant is harmless when\n\n");
        foreach (var point in Harm.Criterion)
        {
            text.Append("- ").Append(point).Append('\n');
        }

        text.Append("\n## By kind of slip\n\n| slip | mutants | harmless | caught | missed | exits 1 | caught without targets | missed without targets |\n|---|---|---|---|---|---|---|---|\n");
        foreach (var slip in MutationStudy.Outcomes.GroupBy(o => o.Mutant.Operator).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            var harmful = slip.Where(o => !o.IsHarmless).ToList();
            var without = harmful.Where(o => !o.Mutant.InTargets).ToList();
            text.Append(CultureInfo.InvariantCulture, $"| {slip.Key} | {slip.Count()} | {slip.Count(o => o.IsHarmless)} | {harmful.Count(o => o.WithTargets is not null)} | {harmful.Count(o => o.WithTargets is null)} | {harmful.Count(o => o.Stops)} | ")
                .Append(CultureInfo.InvariantCulture, $"{without.Count(o => o.WithoutTargets is not null)} | {without.Count(o => o.WithoutTargets is null)} |\n");
        }

        Misses(text, "Missed with targets and without", Missed, Reasons("missed"));
        Misses(text, "Missed only without targets", MissedWithoutTargets, Reasons("missedWithoutTargets"));
        Unstopped(text);
        Alarmed(text);
        text.Append("\n## Harmless\n\n| slip | mutants |\n|---|---|\n");
        foreach (var slip in MutationStudy.Outcomes.Where(o => o.IsHarmless).GroupBy(o => o.Mutant.Operator).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            text.Append(CultureInfo.InvariantCulture, $"| {slip.Key} | ").AppendJoin("; ", slip.Select(o => $"{o.Mutant.Shop.Name} {o.Mutant.Name}")).Append(" |\n");
        }

        return text.ToString();
    }

    /// <summary>Harmful, and a warning at most: which rules speak, by kind of slip.</summary>
    private static void Unstopped(StringBuilder text)
    {
        text.Append("\n## Harmful, caught, and yet no exit code 1\n\n| slip | mutants | what the rules say |\n|---|---|---|\n");
        foreach (var slip in MutationStudy.Harmful.Where(o => !o.Stops && o.WithTargets is not null).GroupBy(o => o.Mutant.Operator).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            var rules = slip.SelectMany(o => o.Findings.Where(f => f.Level == Rules.Engine.Level.Warning).Select(f => f.Rule.Name).Distinct())
                .GroupBy(n => n).OrderByDescending(g => g.Count()).ThenBy(g => g.Key, StringComparer.Ordinal);
            text.Append(CultureInfo.InvariantCulture, $"| {slip.Key} | {slip.Count()} | ").AppendJoin(", ", rules.Select(g => $"{g.Key} {g.Count()}")).Append(" |\n");
        }
    }

    private static void Alarmed(StringBuilder text)
    {
        text.Append("\n## Harmless, and yet exit code 1\n\n| shop | slip | mutant | rules |\n|---|---|---|---|\n");
        foreach (var outcome in MutationStudy.Outcomes.Where(o => o.IsHarmless && o.Stops))
        {
            var rules = outcome.Findings.Where(f => f.Level == Rules.Engine.Level.Error).Select(f => f.Rule.Name).Distinct();
            text.Append(CultureInfo.InvariantCulture, $"| {outcome.Mutant.Shop.Name} | {outcome.Mutant.Operator} | {outcome.Mutant.Name} | ").AppendJoin(", ", rules).Append(" |\n");
        }
    }

    private static void Misses(StringBuilder text, string title, IReadOnlyList<Outcome> missed, IReadOnlyDictionary<string, string> reasons)
    {
        text.Append(CultureInfo.InvariantCulture, $"\n## {title}\n\n");
        if (missed.Count == 0)
        {
            text.Append("None.\n");
            return;
        }

        text.Append("| shop | slip | mutant | what it does | why it escapes |\n|---|---|---|---|---|\n");
        foreach (var outcome in missed)
        {
            var reason = KeyOf(outcome, reasons) is { } key ? reasons[key] : "";
            text.Append(CultureInfo.InvariantCulture, $"| {outcome.Mutant.Shop.Name} | {outcome.Mutant.Operator} | {outcome.Mutant.Name} | {outcome.Harm} | {reason} |\n");
        }
    }
}
