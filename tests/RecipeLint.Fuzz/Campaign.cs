using System.Diagnostics;
using System.Globalization;
using RecipeLint.Fuzz.Guided;

namespace RecipeLint.Fuzz;

/// <summary>
/// Runs one target for a time. Execution number n of a seed is always the same input, so a fault is named by target, seed and number; a guided
/// one by the numbers it drew. A fault is an exception, a broken promise, or more processor time than the limit twice in a row (the first may
/// be the compiler's).
/// </summary>
/// <param name="guide">What keeps inputs that meet something new; null where nothing is instrumented.</param>
internal sealed class Campaign(FuzzTarget target, int seed, TimeSpan limit, TextWriter log, Guide? guide = null)
{
    private const int MostShown = 12;
    private static readonly TimeSpan _hang = TimeSpan.FromMinutes(4);
    private readonly Dictionary<string, int> _faults = new(StringComparer.Ordinal);
    private readonly Stopwatch _since = new();
    private int _number;
    private TimeSpan _worst;
    private int _worstNumber;

    /// <summary>How many different faults were found.</summary>
    /// <param name="kept">Inputs of earlier campaigns, run first.</param>
    public int Run(TimeSpan time, IEnumerable<string>? kept = null)
    {
        var all = Stopwatch.StartNew();
        return Run(() => all.Elapsed < time, kept);
    }

    /// <summary>The same until something else ends it.</summary>
    public int Run(Func<bool> goesOn, IEnumerable<string>? kept = null)
    {
        using var watchdog = new Timer(_ => StopIfHanging(), null, TimeSpan.FromSeconds(5), TimeSpan.FromSeconds(5));
        foreach (var line in guide is null ? [] : kept ?? [])
        {
            Try(guide!.Again(target, line));
        }

        for (; goesOn(); _number++)
        {
            var random = RandomOf(seed, _number);
            Try(guide?.Make(target, random) ?? target.Make(random));
        }

        log.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"| {target.Name} | {_number} | {_faults.Count} | {_worst.TotalMilliseconds:0} ms (number {_worstNumber}) | seed {seed} |{Guidance()}"));
        log.Flush();
        return _faults.Count;
    }

    public static int Replay(FuzzTarget target, Random random, TextWriter log)
    {
        var execution = target.Make(random);
        log.WriteLine(execution.Shown());
        log.Flush();
        AppDomain.CurrentDomain.FirstChanceException += (_, e) => log.WriteLine($"-- {e.Exception.GetType().Name}: {e.Exception.Message}\n{new StackTrace(1, true)}");
        var before = Environment.CpuUsage.TotalTime;
        var code = 0;
        try
        {
            execution.Run();
        }
        catch (Exception e)
        {
            log.WriteLine(e);
            code = 1;
        }

        log.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{(Environment.CpuUsage.TotalTime - before).TotalSeconds:0.00} s of processor time"));
        return code;
    }

    public static Random RandomOf(int seed, int number) => new(unchecked((seed * 1_000_003) ^ (number * 7919)));

    private string Guidance() => guide is null ? "" : $" {guide} |";

    private void Try(Execution execution)
    {
        _since.Restart();
        var took = Once(execution);
        guide?.Learn();
        if (took > limit)
        {
            took = Once(execution);
            if (took > limit)
            {
                Report("slow", string.Create(CultureInfo.InvariantCulture, $"took {took.TotalSeconds:0.0} s of processor time"));
            }
        }

        if (took > _worst)
        {
            (_worst, _worstNumber) = (took, _number);
        }
    }

    private TimeSpan Once(Execution execution)
    {
        var before = Environment.CpuUsage.TotalTime;
        try
        {
            execution.Run();
        }
        catch (Exception e)
        {
            Report(Signature(e), e.GetType().Name + ": " + e.Message);
        }

        return Environment.CpuUsage.TotalTime - before;
    }

    private void Report(string signature, string what)
    {
        var count = _faults[signature] = _faults.GetValueOrDefault(signature) + 1;
        if (count == 1 && _faults.Count <= MostShown)
        {
            log.WriteLine($"FAULT {target.Name} {How()}: {(what.Length > 600 ? what[..600] : what)} [{signature}]");
            log.Flush();
        }
    }

    /// <summary>The words that make the same input again.</summary>
    private string How() => guide is null
        ? string.Create(CultureInfo.InvariantCulture, $"--replay {seed} {_number}")
        : $"--replay-drawn {guide.Drawn}";

    /// <summary>Where it was thrown in our own code; for a broken promise its words without figures.</summary>
    private static string Signature(Exception exception) => exception is BrokenPromiseException
        ? new string([.. exception.Message.TakeWhile(c => c != '\n').Where(c => !char.IsDigit(c))])
        : exception.GetType().Name + (exception.StackTrace ?? "").Split('\n').FirstOrDefault(l => l.Contains("RecipeLint.", StringComparison.Ordinal))?.Trim();

    private void StopIfHanging()
    {
        if (_since.IsRunning && _since.Elapsed > _hang)
        {
            log.WriteLine($"HANG {target.Name} {How()}: no end after {_since.Elapsed.TotalSeconds.ToString("0", CultureInfo.InvariantCulture)} s");
            log.Flush();
            Environment.Exit(1);
        }
    }
}
