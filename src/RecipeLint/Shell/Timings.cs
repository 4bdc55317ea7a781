using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Shell;

/// <summary>
/// How long the phases of a run and its rules took, added up over all threads. Facts that are computed when asked for count with the rule
/// that asked first. For several threads at once.
/// </summary>
internal sealed class Timings
{
    /// <summary>Rules that are listed by name; the others stand together.</summary>
    private const int MostRules = 15;

    private readonly long _start = Stopwatch.GetTimestamp();
    private readonly long _allocatedBefore = GC.GetTotalAllocatedBytes();
    private readonly ConcurrentDictionary<string, long> _phases = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, long> _rules = new(StringComparer.Ordinal);

    /// <summary>Measures a rule, for <see cref="EngineOptions.Measure"/>.</summary>
    public void Rule(RuleDescriptor rule, Action judge)
    {
        var start = Stopwatch.GetTimestamp();
        try
        {
            judge();
        }
        finally
        {
            Add(_rules, $"{rule.Id} {rule.Name}", start);
        }
    }

    /// <summary>Measures a phase; without timings it only runs it.</summary>
    public static T Phase<T>(Timings? timings, string name, Func<T> run)
    {
        if (timings is null)
        {
            return run();
        }

        var start = Stopwatch.GetTimestamp();
        try
        {
            return run();
        }
        finally
        {
            Add(timings._phases, name, start);
        }
    }

    /// <param name="files">How many files were checked.</param>
    public IEnumerable<string> Lines(int files)
    {
        var wall = Stopwatch.GetElapsedTime(_start);
        yield return Line("whole run", wall, files > 0 ? Invariant($"{files / Math.Max(1e-3, wall.TotalSeconds):0.0} files a second") : "");
        foreach (var (name, ticks) in _phases.OrderByDescending(p => p.Value).ThenBy(p => p.Key, StringComparer.Ordinal))
        {
            yield return Line("phase " + name, Time(ticks), "");
        }

        var rules = _rules.OrderByDescending(r => r.Value).ThenBy(r => r.Key, StringComparer.Ordinal).ToList();
        foreach (var (name, ticks) in rules.Take(MostRules))
        {
            yield return Line("rule " + name, Time(ticks), "");
        }

        if (rules.Count > MostRules)
        {
            var others = rules.Skip(MostRules).ToList();
            yield return Line(Invariant($"{others.Count} more rules"), Time(others.Sum(r => r.Value)), "");
        }

        var allocated = GC.GetTotalAllocatedBytes() - _allocatedBefore;
        yield return Invariant(
            $"memory: {allocated / 1048576.0:0} MiB allocated, {GC.CollectionCount(0)} collections, {GC.CollectionCount(2)} of them full, ")
            + Invariant($"{GC.GetTotalPauseDuration().TotalMilliseconds:0} ms in all");
    }

    private static void Add(ConcurrentDictionary<string, long> sums, string name, long start)
    {
        var took = Stopwatch.GetTimestamp() - start;
        sums.AddOrUpdate(name, static (_, t) => t, static (_, sum, t) => sum + t, took);
    }

    private static TimeSpan Time(long ticks) => TimeSpan.FromSeconds(ticks / (double)Stopwatch.Frequency);

    private static string Line(string what, TimeSpan time, string more) =>
        Invariant($"{time.TotalMilliseconds,10:0.0} ms  {what}") + (more.Length > 0 ? "  " + more : "");

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
