using System.Diagnostics;
using System.Globalization;
using System.Text;
using RecipeLint.Recipes.Schema;
using RecipeLint.Reports.Tests.Support;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests.Reliability.Bounds;

/// <summary>
/// Every list, text and number of every format at its bound gets findings or one clear line in bounded time and memory. A part of the inputs
/// runs always, all of them with RECIPELINT_LONG=1 (one row with RECIPELINT_ONLY); then lists run in a process of their own, and Tables/bounds.md is written anew with
/// RECIPELINT_UPDATE=1.
/// </summary>
public sealed class BoundsTests
{
    /// <summary>Promised for one file; held where nothing else runs, with RECIPELINT_LONG=1.</summary>
    private static readonly TimeSpan _promised = TimeSpan.FromSeconds(2);

    private const double PromisedMebibytes = 300;

    private static readonly string _program = Path.Combine(AppContext.BaseDirectory, "recipelint.dll");

    /// <summary>One row of the table, or some of its variants ("/steps: add"), measured by themselves; null for all.</summary>
    private static readonly string? _only = Environment.GetEnvironmentVariable("RECIPELINT_ONLY");

    private static bool IsLong => Environment.GetEnvironmentVariable("RECIPELINT_LONG") == "1";

    public static TheoryData<string> Formats() =>
        [.. SchemaInputs.Kinds.Select(k => k.ToString()), .. ExemplarInputs.Formats, "table", "workbook"];

    [Theory]
    [MemberData(nameof(Formats))]
    public void EveryInputAtItsBoundIsAnswered(string format)
    {
        var worst = new SortedDictionary<string, Measured>(StringComparer.Ordinal);
        var inputs = Inputs(format).ToList();
        Assert.True(inputs.Count >= 10, $"only {inputs.Count} inputs were made for {format}");
        var broken = new List<string>();
        foreach (var input in inputs.Where((input, i) => IsLong ? IsInTheLongRun(input, i) : IsInTheShortRun(input, i)))
        {
            var took = Answered(input, broken);
            var key = KeyOf(input);
            worst[key] = worst.TryGetValue(key, out var known) ? known.With(took) : took;
        }

        if (IsLong && Environment.GetEnvironmentVariable("RECIPELINT_UPDATE") == "1")
        {
            BoundsTable.Write(format, worst);
        }

        Assert.True(broken.Count == 0, string.Join('\n', broken.Take(60)));
    }

    /// <summary>A list that a schema, a workbook or a table of ours has has its row, and no row speaks of one that is gone.</summary>
    [Theory]
    [MemberData(nameof(Formats))]
    public void TheTableHasEveryList(string format) => Assert.Equal(
        [.. Inputs(format).Where((input, i) => IsInTheLongRun(input, i)).Select(KeyOf).Distinct().Order(StringComparer.Ordinal)],
        BoundsTable.Places(format).Order(StringComparer.Ordinal));

    private static string KeyOf(BoundedInput input) =>
        input.Kind == BoundKind.List ? input.Place : $"({(input.Kind == BoundKind.Text ? "texts of 100 kB" : "extreme numbers")})";

    private static IEnumerable<BoundedInput> Inputs(string format) => format switch
    {
        "table" => TableInputs.Texts(),
        "workbook" => TableInputs.Workbooks(),
        _ when ExemplarInputs.Formats.Contains(format) => ExemplarInputs.Of(format),
        _ => SchemaInputs.Of(Enum.Parse<DocumentKind>(format)),
    };

    /// <summary>Every thirty-seventh: that it is answered, not how fast.</summary>
    private static bool IsInTheShortRun(BoundedInput input, int number) => number % 37 == 0 && IsInTheLongRun(input, number);

    /// <summary>All but the thousands of options of rules, which are read alike: every eleventh of those.</summary>
    private static bool IsInTheLongRun(BoundedInput input, int number) =>
        (!input.Place.StartsWith("/rules/", StringComparison.Ordinal) || number % 11 == 0) && (_only is null || KeyOf(input) == _only || $"{KeyOf(input)}: {input.Variant}".StartsWith(_only, StringComparison.Ordinal));

    /// <summary>Logs are put together to one that is set out in lines, so that comes to two or three times of what came in.</summary>
    private static Measured Answered(BoundedInput input, List<string> broken)
    {
        var tree = input.Tree();
        var (processor, allocated) = (Environment.CpuUsage.TotalTime, GC.GetTotalAllocatedBytes());
        var answer = Cli.RunOver(tree, input.Arguments);
        var took = new Measured((Environment.CpuUsage.TotalTime - processor).TotalSeconds, (GC.GetTotalAllocatedBytes() - allocated) / 1048576.0, null, input.Variant);
        if (IsLong && took.Seconds > _promised.TotalSeconds / 2)
        {
            // The first time compiles.
            processor = Environment.CpuUsage.TotalTime;
            Cli.RunOver(tree, input.Arguments);
            took = took with { Seconds = Math.Min(took.Seconds, (Environment.CpuUsage.TotalTime - processor).TotalSeconds) };
        }

        if (IsLong && (took.Seconds > _promised.TotalSeconds / 2 || took.Allocated > PromisedMebibytes / 2))
        {
            took = took with { Peak = PeakOf(input) };
        }

        var fault = answer.Code is < 0 or > 2 || (answer.Code == 2) != (answer.Error.Length > 0 && answer.Out.Length == 0) ? $"exit code {answer.Code}: {answer.Error}"
            : answer.Error.Count(c => c == '\n') > 1 || answer.Error.Contains("Exception", StringComparison.Ordinal) ? answer.Error
            : answer.Error.Length > 2000 ? $"a line of {answer.Error.Length} characters"
            : IsLong && took.Seconds > _promised.TotalSeconds ? string.Create(CultureInfo.InvariantCulture, $"{took.Seconds:0.0} s of processor time")
            : IsLong && took.Peak > PromisedMebibytes ? string.Create(CultureInfo.InvariantCulture, $"{took.Peak:0} MiB")
            : IsLong && answer.Out.Length > Math.Max(4_000_000, 3 * input.Files.Values.Sum(f => f.Length)) ? $"{answer.Out.Length} characters of output"
            : null;
        if (fault is not null)
        {
            broken.Add($"{input.Title}: {(fault.Length > 300 ? fault[..300] : fault)}");
        }

        return took;
    }

    /// <summary>Most memory that a process of its own holds at once, in MiB.</summary>
    private static double? PeakOf(BoundedInput input)
    {
        if (!OperatingSystem.IsLinux())
        {
            return null;
        }

        using var scratch = new Scratch();
        Directory.CreateDirectory(Path.Combine(scratch.Path, ".git"));
        foreach (var (path, bytes) in input.Files)
        {
            var full = Path.Combine(scratch.Path, path);
            Directory.CreateDirectory(Path.GetDirectoryName(full)!);
            File.WriteAllBytes(full, bytes);
        }

        using var run = Process.Start(new ProcessStartInfo("dotnet", [_program, .. input.Arguments])
        {
            WorkingDirectory = scratch.Path,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
        run.OutputDataReceived += static (_, _) => { };
        run.ErrorDataReceived += static (_, _) => { };
        run.BeginOutputReadLine();
        run.BeginErrorReadLine();
        double? peak = null;
        while (!run.HasExited)
        {
            peak = HighWater(run.Id) ?? peak;
            Thread.Sleep(5);
        }

        return peak;
    }

    private static double? HighWater(int id)
    {
        try
        {
            var line = File.ReadLines($"/proc/{id}/status").FirstOrDefault(l => l.StartsWith("VmHWM:", StringComparison.Ordinal));
            return line is null ? null : double.Parse(line.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)[1], CultureInfo.InvariantCulture) / 1024;
        }
        catch (IOException)
        {
            // It ended between the question and the answer.
            return null;
        }
    }
}

/// <summary>What the inputs of one list took at worst.</summary>
/// <param name="Seconds">Of processor time.</param>
/// <param name="Allocated">MiB taken from the runtime altogether, more than was ever held at once.</param>
/// <param name="Peak">MiB held at once by a process of its own; null where so little was allocated that nobody asked.</param>
/// <param name="Variant">Of the slowest.</param>
internal sealed record Measured(double Seconds, double Allocated, double? Peak, string Variant)
{
    public Measured With(Measured other)
    {
        var slower = other.Seconds > Seconds ? other : this;
        return slower with { Allocated = Math.Max(Allocated, other.Allocated), Peak = Peak is null ? other.Peak : other.Peak is null ? Peak : Math.Max(Peak.Value, other.Peak.Value) };
    }

    public string Cells => string.Create(CultureInfo.InvariantCulture, $"{Variant} | {Seconds:0.00} s | {Allocated:0} MiB | {(Peak is { } peak ? $"{peak.ToString("0", CultureInfo.InvariantCulture)} MiB" : "")}");
}

/// <summary>Tables/bounds.md: one row for each list of each format.</summary>
internal static class BoundsTable
{
    private const string Head = """
        # Every list, text and number at its bound

        Measured by BoundsTests, written anew with RECIPELINT_LONG=1 RECIPELINT_UPDATE=1 (debug build, the day's machine). A list is filled with 10,000 entries, or as many as a
        file of 1 MB holds, and with as many as the schema takes; alike, and each of its own. Texts have 100 kB, numbers are the extremes. Promised: two seconds of processor time
        and 300 MiB for one file. The peak is that of a process of its own, where more than a second or 150 MiB of allocations made somebody ask. A format without rows was not
        measured yet; a row without allocations was measured as a whole process, start included.

        | format | list | slowest variant | processor time | allocated | peak |
        | --- | --- | --- | --- | --- | --- |
        """;

    private static readonly string _path = Path.Combine(Repository.Root, "tests", "RecipeLint.Tests", "Tables", "bounds.md");

    private static bool IsPart => Environment.GetEnvironmentVariable("RECIPELINT_ONLY") is not null;

    public static IReadOnlySet<string> Places(string format) =>
        Rows().Where(r => r.Split(" | ")[0] == "| " + format).Select(r => r.Split(" | ")[1]).ToHashSet(StringComparer.Ordinal);

    public static void Write(string format, IReadOnlyDictionary<string, Measured> measured)
    {
        var rows = Rows().Where(r => r.Split(" | ") is var cells && (cells[0] != "| " + format || (IsPart && !measured.ContainsKey(cells[1]))))
            .Concat(measured.Select(m => $"| {format} | {m.Key} | {m.Value.Cells} |"))
            .Order(StringComparer.Ordinal);
        File.WriteAllText(_path, Head + "\n" + string.Join('\n', rows) + "\n", new UTF8Encoding(false));
    }

    private static List<string> Rows() => File.Exists(_path)
        ? [.. File.ReadAllLines(_path).SkipWhile(l => !l.StartsWith("| ---", StringComparison.Ordinal)).Skip(1).Where(l => l.StartsWith("| ", StringComparison.Ordinal))]
        : [];
}
