using System;
using System.Collections.Generic;
using System.Diagnostics;
using System.IO;
using System.Linq;
using System.Reflection;
using System.Threading;
using Xunit.Abstractions;
using Xunit.Sdk;

// Judges mutants in one process: the tests are found once and stay warm, and a mutant is switched on by its number. What is computed once and kept
// is computed before the first mutant, so that no mutant spoils it for the next; a test that failed is run again without the mutant and has to pass,
// or the process ends and begins anew.
//   tests.dll MUTATED-ASSEMBLY MUTANTS RESULTS SECONDS TEST-ASSEMBLY [~PART | !PART] ...
internal static class MutantJudge
{
    private const int Begun = 3;

    private static FieldInfo _active = null!;
    private static FieldInfo _capture = null!;
    private static MethodInfo _covered = null!;
    private static XunitTestFrameworkExecutor _executor = null!;

    private static int Main(string[] args)
    {
        var deadline = DateTime.UtcNow.AddSeconds(double.Parse(args[3], System.Globalization.CultureInfo.InvariantCulture));
        var control = Assembly.Load(args[0]).GetTypes().Single(t => t.Name == "MutantControl");
        _active = control.GetField("ActiveMutant")!;
        _capture = control.GetField("CaptureCoverage")!;
        _covered = control.GetMethod("GetCoverageData")!;
        _active.SetValue(null, -1);
        var tests = Assembly.Load(args[4]);
        var done = File.Exists(args[2]) ? File.ReadLines(args[2]).Select(l => l.Split('\t')[0]).ToHashSet() : [];
        var mutants = File.ReadLines(args[1]).Where(m => !done.Contains(m)).ToList();

        var framework = new XunitTestFramework(new NullSink());
        var cases = Discover(framework, tests).Where(c => Asked(c, args[5..])).ToList();
        _executor = (XunitTestFrameworkExecutor)framework.GetExecutor(tests.GetName());
        Say($"{cases.Count} tests, {mutants.Count} mutants");

        // Warm, and without those that fail as things stand.
        var broken = Run(cases, Timeout.Infinite, bail: false).Failed.Select(c => c.UniqueID).ToHashSet();
        cases.RemoveAll(c => broken.Contains(c.UniqueID));
        Say($"{broken.Count} tests fail without a mutant and are not asked");
        var reach = new Dictionary<int, List<(IXunitTestCase Case, double Seconds)>>();
        _capture.SetValue(null, true);
        _covered.Invoke(null, null);
        foreach (var test in cases)
        {
            var watch = Stopwatch.StartNew();
            Run([test], Timeout.Infinite, bail: false);
            var seconds = watch.Elapsed.TotalSeconds;
            foreach (var id in ((IList<int>[])_covered.Invoke(null, null)!).SelectMany(l => l).Distinct())
            {
                (reach.TryGetValue(id, out var list) ? list : reach[id] = []).Add((test, seconds));
            }
        }

        _capture.SetValue(null, false);
        Say($"{reach.Count} places are reached");
        using var results = new StreamWriter(args[2], append: true) { AutoFlush = true };
        foreach (var mutant in mutants.TakeWhile(_ => DateTime.UtcNow < deadline))
        {
            var id = int.Parse(mutant, System.Globalization.CultureInfo.InvariantCulture);
            if (!reach.TryGetValue(id, out var asked))
            {
                results.WriteLine($"{mutant}\tNoCoverage\t");
                continue;
            }

            var status = Judge(id, asked, out var noticed);
            if (status is null)
            {
                Environment.Exit(Begun);
            }

            results.WriteLine($"{mutant}\t{status}\t{noticed}");
            if (status == "Timeout")
            {
                results.Flush();
                Environment.Exit(Begun);
            }
        }

        return 0;
    }

    /// <summary>Null when this process can no longer be trusted and has to begin anew.</summary>
    private static string? Judge(int id, List<(IXunitTestCase Case, double Seconds)> asked, out string noticed)
    {
        noticed = "";
        var sorted = asked.OrderBy(a => a.Seconds).ToList();
        for (var from = 0; from < sorted.Count;)
        {
            // Quick ones together, then the slower ones in growing company.
            var take = 1;
            var sum = sorted[from].Seconds;
            while (from + take < sorted.Count && sum + sorted[from + take].Seconds < 0.5 + from * 0.01)
            {
                sum += sorted[from + take++].Seconds;
            }

            _active.SetValue(null, id);
            var run = Run([.. sorted.Skip(from).Take(take).Select(a => a.Case)], 30_000 + (int)(sum * 20_000), bail: true);
            _active.SetValue(null, -1);
            if (!run.Ended)
            {
                return "Timeout";
            }

            if (run.Failed.Count > 0)
            {
                noticed = run.Failed[0].DisplayName.Replace('\t', ' ').Replace('\n', ' ');
                return Run([run.Failed[0]], 120_000, bail: false) is { Ended: true, Failed.Count: 0 } ? "Killed" : null;
            }

            from += take;
        }

        return "Survived";
    }

    private static bool Asked(IXunitTestCase test, string[] filter)
    {
        var name = $"{test.TestMethod.TestClass.Class.Name}.{test.TestMethod.Method.Name} {test.DisplayName}";
        var wanted = filter.Where(f => f[0] == '~').ToList();
        return !filter.Any(f => f[0] == '!' && name.Contains(f[1..], StringComparison.Ordinal))
            && (wanted.Count == 0 || wanted.Any(f => name.Contains(f[1..], StringComparison.Ordinal)));
    }

    private static void Say(string text) => Console.Error.WriteLine($"{DateTime.UtcNow:HH:mm:ss} {text}");

    private static List<IXunitTestCase> Discover(XunitTestFramework framework, Assembly tests)
    {
        using var sink = new DiscoverySink();
        framework.GetDiscoverer(Reflector.Wrap(tests)).Find(includeSourceInformation: false, sink, new Options());
        sink.Done.WaitOne();
        return sink.Cases;
    }

    private static (bool Ended, List<IXunitTestCase> Failed) Run(IReadOnlyList<IXunitTestCase> cases, int milliseconds, bool bail)
    {
        var sink = new RunSink(bail);
        // The tests may run on the thread that asks for them: an endless one must not take this one along.
        new Thread(() => _executor.RunTests(cases, sink, new Options())) { IsBackground = true }.Start();
        return (sink.Done.WaitOne(milliseconds), sink.Failed);
    }

    private sealed class Options : ITestFrameworkDiscoveryOptions, ITestFrameworkExecutionOptions
    {
        private readonly Dictionary<string, object?> _values = new() { ["xunit.execution.DisableParallelization"] = true };

        public TValue GetValue<TValue>(string name) => _values.TryGetValue(name, out var value) ? (TValue)value! : default!;

        public void SetValue<TValue>(string name, TValue value) => _values[name] = value;
    }

    private sealed class NullSink : IMessageSink
    {
        public bool OnMessage(IMessageSinkMessage message) => true;
    }

    private sealed class DiscoverySink : IMessageSink, IDisposable
    {
        public List<IXunitTestCase> Cases { get; } = [];

        public ManualResetEvent Done { get; } = new(false);

        public void Dispose() => Done.Dispose();

        public bool OnMessage(IMessageSinkMessage message)
        {
            switch (message)
            {
                case ITestCaseDiscoveryMessage found:
                    Cases.Add((IXunitTestCase)found.TestCase);
                    break;
                case IDiscoveryCompleteMessage:
                    Done.Set();
                    break;
            }

            return true;
        }
    }

    private sealed class RunSink(bool bail) : IMessageSink
    {
        public List<IXunitTestCase> Failed { get; } = [];

        public ManualResetEvent Done { get; } = new(false);

        public bool OnMessage(IMessageSinkMessage message)
        {
            switch (message)
            {
                case ITestFailed failed:
                    Failed.Add((IXunitTestCase)failed.TestCase);
                    break;
                case ITestAssemblyFinished:
                    Done.Set();
                    break;
            }

            return !bail || Failed.Count == 0;
        }
    }
}

/// <summary>What the tool that makes the mutants is told to run: it reaches none of them.</summary>
public sealed class MutantsAreMade
{
    [Xunit.Fact]
    public void NothingIsAsked()
    {
    }
}
