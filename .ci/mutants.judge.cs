using System;
using System.Collections.Concurrent;
using System.Collections.Generic;
using System.Diagnostics;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Reflection;
using System.Runtime.CompilerServices;
using System.Threading;
using Xunit.Abstractions;
using Xunit.Sdk;

// Judges mutants in one process: the tests are found once and stay warm, and a mutant is switched on by its number. What is computed once and kept
// is computed before the first mutant, so that no mutant spoils it for the next; a mutant in such code is judged in a process of its own. Caches that
// tests or the mutated assembly keep in static dictionaries are emptied before every run. A test that failed is run again without the mutant: where it
// fails still, the mutant spoiled something and the next one gets a new process. Limits are of processor time: a busy machine makes no mutant late.
//   tests.dll MUTATED-ASSEMBLY MUTANTS RESULTS SECONDS TEST-ASSEMBLY [~PART | !PART] ...
// Ends with 0 when all is judged or the time is up, with 3 when it wants to be started again. Beside RESULTS lie RESULTS.map (what each test reaches),
// RESULTS.left (tests that are not asked, and why) and RESULTS.begun (the mutant at work).
internal static class MutantJudge
{
    private const int Begun = 3;
    private const int Noticed = 10;
    private const int Unnoticed = 11;
    private const string Alone = "--alone";

    /// <summary>Processor time of a test, in seconds, above which it is not asked: it would cost more than all others.</summary>
    private const double SlowestTest = 15;

    /// <summary>Processor time of tests that one mutant is worth, in seconds; what is not asked then cannot notice it.</summary>
    private static readonly double Budget =
        double.Parse(Environment.GetEnvironmentVariable("MUTANT_BUDGET") ?? "60", CultureInfo.InvariantCulture);

    private static readonly List<Action> _empty = [];
    private static FieldInfo _active = null!;
    private static FieldInfo _capture = null!;
    private static MethodInfo _covered = null!;
    private static XunitTestFrameworkExecutor _executor = null!;

    private static int Main(string[] args)
    {
        var alone = args[0] == Alone ? int.Parse(args[1], CultureInfo.InvariantCulture) : -1;
        var given = alone < 0 ? args : args[2..];
        var deadline = DateTime.UtcNow.AddSeconds(double.Parse(given[3], CultureInfo.InvariantCulture));
        var mutated = Assembly.Load(given[0]);
        var control = mutated.GetTypes().Single(t => t.Name == "MutantControl");
        _active = control.GetField("ActiveMutant")!;
        _capture = control.GetField("CaptureCoverage")!;
        _covered = control.GetMethod("GetCoverageData")!;
        _active.SetValue(null, alone);
        var tests = Assembly.Load(given[4]);
        var framework = new XunitTestFramework(new NullSink());
        var left = new Left(given[2] + ".left");
        var map = given[2] + ".map";
        _capture.SetValue(null, alone < 0 && !File.Exists(map));
        var cases = Discover(framework, tests).Where(c => Asked(c, given[5..]) && !left.Has(c)).ToList();
        _executor = (XunitTestFrameworkExecutor)framework.GetExecutor(tests.GetName());
        if (alone >= 0)
        {
            return JudgeAlone(cases, ReachMap.Read(map, cases));
        }

        FindCaches(mutated, tests);
        if (!File.Exists(map))
        {
            // Rows of theories are made while tests are looked for, and much is computed and kept for them.
            MakeMap(cases, map, left, [.. Covered()]);
            cases.RemoveAll(left.Has);
            return JudgeAll(given, deadline, ReachMap.Read(map, cases));
        }

        // What is computed once is computed by the tests that computed it first, before any mutant.
        var reach = ReachMap.Read(map, cases);
        Run(reach.Warming, double.PositiveInfinity, bail: false);
        return JudgeAll(given, deadline, reach);
    }

    /// <summary>
    /// Runs every test alone, twice: what only the first run reaches, or what was found while tests were looked for, is computed once and kept.
    /// </summary>
    private static void MakeMap(List<IXunitTestCase> cases, string path, Left left, HashSet<int> found)
    {
        Say($"{cases.Count} tests are tried");
        var once = cases.ToDictionary(c => c, _ => new HashSet<int>());
        foreach (var test in cases)
        {
            var run = Run([test], 8 * SlowestTest, bail: false);
            if (!run.Ended)
            {
                left.Add(test, "does not end in time");
                Say($"does not end: {test.DisplayName}");
                Environment.Exit(Begun);
            }

            once[test].UnionWith(Covered());
            if (run.Failed.Count > 0)
            {
                left.Add(test, "fails without a mutant");
            }
        }

        var passing = cases.Where(c => !left.Has(c)).ToList();
        Say($"{passing.Count} tests pass");
        var lines = new List<string>();
        var always = new HashSet<int>();
        foreach (var test in passing)
        {
            Empty();
            var before = Processor();
            Run([test], double.PositiveInfinity, bail: false);
            var seconds = Processor() - before;
            var reached = Covered().ToHashSet();
            if (seconds > SlowestTest)
            {
                left.Add(test, $"takes {seconds:0} s of processor time");
                continue;
            }

            always.UnionWith(reached);
            var warms = once[test].IsSubsetOf(reached) ? "" : "warms";
            lines.Add($"{test.UniqueID}\t{seconds.ToString("R", CultureInfo.InvariantCulture)}\t{warms}\t{string.Join(' ', reached)}");
        }

        _capture.SetValue(null, false);
        var kept = once.Values.SelectMany(v => v).Concat(found).Distinct().Except(always).ToList();
        Say($"{always.Count} places are reached, {kept.Count} more while something is computed that is kept");
        lines.Insert(0, string.Join(' ', kept));
        File.WriteAllLines(path + ".new", lines);
        File.Move(path + ".new", path);
    }

    private static IEnumerable<int> Covered() => ((IList<int>[])_covered.Invoke(null, null)!).SelectMany(l => l);

    private static int JudgeAll(string[] args, DateTime deadline, ReachMap map)
    {
        var begun = args[2] + ".begun";
        if (File.Exists(begun))
        {
            // The process ended while this one was judged: a stack without end, most often.
            File.AppendAllText(args[2], $"{File.ReadAllText(begun)}\tKilled\tthe process ended{Environment.NewLine}");
            File.Delete(begun);
        }

        var done = File.Exists(args[2]) ? File.ReadLines(args[2]).Select(l => l.Split('\t')[0]).ToHashSet() : [];
        var mutants = File.ReadLines(args[1]).Select(l => l.Split('\t')).Where(m => !done.Contains(m[0])).ToList();

        // What is computed once takes a process of its own and a hundred times as long: it comes last.
        mutants = [.. mutants.OrderBy(m => map.Kept.Contains(int.Parse(m[0], CultureInfo.InvariantCulture)))];
        Say($"{mutants.Count} mutants, {map.Tests.Count} tests");
        foreach (var line in mutants.TakeWhile(_ => DateTime.UtcNow < deadline))
        {
            var mutant = line[0];
            var id = int.Parse(mutant, CultureInfo.InvariantCulture);
            File.WriteAllText(begun, mutant);
            var again = false;
            var noticed = "";
            var status = map.Of(id) is { Count: > 0 } asked ? Judge(id, NearFirst(asked, line[1..]), out noticed, out again)
                : map.Kept.Contains(id) ? InOwnProcess(mutant, args, map)
                : "NoCoverage";
            File.AppendAllText(args[2], $"{mutant}\t{status}\t{noticed}{Environment.NewLine}");
            File.Delete(begun);
            if (again)
            {
                Environment.Exit(Begun);
            }
        }

        return 0;
    }

    /// <summary>Tests that name what the mutant lies in come first, then the quick ones.</summary>
    private static List<(IXunitTestCase Case, double Seconds)> NearFirst(List<(IXunitTestCase Case, double Seconds)> asked, string[] names)
    {
        bool IsNear(IXunitTestCase test) => names.Any(n => n.Length > 3
            && $"{test.TestMethod.TestClass.Class.Name} {test.DisplayName}".Replace("-", "").Contains(n, StringComparison.OrdinalIgnoreCase));
        return [.. asked.OrderBy(a => !IsNear(a.Case)).ThenBy(a => a.Seconds)];
    }

    private static string Judge(int id, List<(IXunitTestCase Case, double Seconds)> sorted, out string noticed, out bool again)
    {
        noticed = "";
        again = false;
        var spent = 0.0;
        for (var from = 0; from < sorted.Count;)
        {
            if (spent > Budget)
            {
                noticed = $"{from} of {sorted.Count} tests asked";
                return "Survived";
            }

            // Quick ones together, then the slower ones in growing company.
            var take = 1;
            var sum = sorted[from].Seconds;
            while (from + take < sorted.Count && sum + sorted[from + take].Seconds < 0.5 + from * 0.01)
            {
                sum += sorted[from + take++].Seconds;
            }

            spent += sum;

            Empty();
            _active.SetValue(null, id);
            var run = Run([.. sorted.Skip(from).Take(take).Select(a => a.Case)], 5 + 20 * sum, bail: true);
            _active.SetValue(null, -1);
            if (!run.Ended)
            {
                again = true;
                return "Timeout";
            }

            if (run.Failed.Count > 0)
            {
                noticed = run.Failed[0].DisplayName.Replace('\t', ' ').Replace('\n', ' ');
                Empty();
                again = Run([run.Failed[0]], 120, bail: false) is not { Ended: true, Failed.Count: 0 };
                return "Killed";
            }

            from += take;
        }

        return "Survived";
    }

    private static string InOwnProcess(string mutant, string[] args, ReachMap map)
    {
        using var process = Process.Start(Environment.ProcessPath!, [typeof(MutantJudge).Assembly.Location, Alone, mutant, .. args]);
        var limit = 60 + 20 * map.Tests.Sum(t => t.Seconds);
        var end = DateTime.UtcNow.AddSeconds(Math.Max(600, limit));
        while (!process.WaitForExit(250))
        {
            if (SpentBy(process) > limit || DateTime.UtcNow > end)
            {
                process.Kill();
                return "Timeout";
            }
        }

        return process.ExitCode == Unnoticed ? "Survived" : "Killed";
    }

    /// <summary>Seconds of processor time; none of one that has just ended.</summary>
    private static double SpentBy(Process process)
    {
        try
        {
            process.Refresh();
            return process.TotalProcessorTime.TotalSeconds;
        }
        catch (InvalidOperationException)
        {
            return 0;
        }
    }

    private static int JudgeAlone(List<IXunitTestCase> cases, ReachMap map)
    {
        var quick = map.Tests.OrderBy(t => t.Seconds).Select(t => t.Case).Where(cases.Contains).ToList();
        foreach (var some in quick.Chunk(50))
        {
            if (Run(some, double.PositiveInfinity, bail: true).Failed.Count > 0)
            {
                return Noticed;
            }
        }

        return Unnoticed;
    }

    /// <summary>What tests and the mutated assembly keep from one call to the next in dictionaries.</summary>
    private static void FindCaches(params Assembly[] assemblies)
    {
        foreach (var field in assemblies.SelectMany(a => a.GetTypes()).Where(t => !t.ContainsGenericParameters)
            .SelectMany(t => t.GetFields(BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.DeclaredOnly))
            .Where(f => f.FieldType.IsGenericType && f.FieldType.GetGenericTypeDefinition() is var kind
                && (kind == typeof(ConcurrentDictionary<,>) || kind == typeof(ConditionalWeakTable<,>))))
        {
            var clear = field.FieldType.GetMethod("Clear", Type.EmptyTypes)!;
            Say($"emptied between mutants: {field.DeclaringType!.Name}.{field.Name}");
            _empty.Add(() => clear.Invoke(field.GetValue(null), null));
        }
    }

    private static void Empty() => _empty.ForEach(e => e());

    private static double Processor()
    {
        using var process = Process.GetCurrentProcess();
        return process.TotalProcessorTime.TotalSeconds;
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

    private static (bool Ended, List<IXunitTestCase> Failed) Run(IReadOnlyList<IXunitTestCase> cases, double processorSeconds, bool bail)
    {
        var sink = new RunSink(bail);
        var before = Processor();
        var waits = DateTime.UtcNow.AddSeconds(double.IsPositiveInfinity(processorSeconds) ? 36_000 : 300 + 10 * processorSeconds);
        // The tests may run on the thread that asks for them: an endless one must not take this one along.
        new Thread(() => _executor.RunTests(cases, sink, new Options())) { IsBackground = true }.Start();
        while (!sink.Done.WaitOne(500))
        {
            if (Processor() - before > processorSeconds || DateTime.UtcNow > waits)
            {
                return (false, sink.Failed);
            }
        }

        return (true, sink.Failed);
    }

    /// <summary>Tests that are not asked, for good.</summary>
    private sealed class Left(string path)
    {
        private readonly HashSet<string> _ids = File.Exists(path) ? [.. File.ReadLines(path).Select(l => l.Split('\t')[0])] : [];

        public bool Has(IXunitTestCase test) => _ids.Contains(test.UniqueID);

        public void Add(IXunitTestCase test, string why)
        {
            _ids.Add(test.UniqueID);
            File.AppendAllText(path, $"{test.UniqueID}\t{why}\t{test.DisplayName.ReplaceLineEndings(" ")}{Environment.NewLine}");
        }
    }

    /// <summary>Which tests reach which mutant, with their processor time in seconds; and what is reached only while something is computed once.</summary>
    private sealed class ReachMap
    {
        private readonly Dictionary<int, List<(IXunitTestCase Case, double Seconds)>> _reach = [];

        public HashSet<int> Kept { get; private init; } = [];

        public List<(IXunitTestCase Case, double Seconds)> Tests { get; } = [];

        /// <summary>Tests that reached more the first time than the second.</summary>
        public List<IXunitTestCase> Warming { get; } = [];

        public List<(IXunitTestCase Case, double Seconds)>? Of(int mutant) => _reach.GetValueOrDefault(mutant);

        public static ReachMap Read(string path, List<IXunitTestCase> cases)
        {
            var lines = File.ReadAllLines(path);
            var map = new ReachMap { Kept = [.. Numbers(lines[0])] };
            var byId = cases.GroupBy(c => c.UniqueID).ToDictionary(g => g.Key, g => g.First());
            foreach (var line in lines.Skip(1).Select(l => l.Split('\t')).Where(l => byId.ContainsKey(l[0])))
            {
                var test = (byId[line[0]], double.Parse(line[1], CultureInfo.InvariantCulture));
                map.Tests.Add(test);
                if (line[2].Length > 0)
                {
                    map.Warming.Add(test.Item1);
                }

                foreach (var id in Numbers(line[3]))
                {
                    (map._reach.TryGetValue(id, out var list) ? list : map._reach[id] = []).Add(test);
                }
            }

            return map;
        }

        private static IEnumerable<int> Numbers(string text) =>
            text.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(n => int.Parse(n, CultureInfo.InvariantCulture));
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
