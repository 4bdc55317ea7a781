using System.Diagnostics;
using System.Globalization;
using System.Text;
using RecipeLint.Shell;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests.Reliability;

/// <summary>
/// Faults while writing, through the commands that write: whole or not at all, one clear line, nothing left behind. Those that need a process of
/// its own (killed, interrupted, a full disk) start the program that was built beside this test.
/// </summary>
public sealed class WritingFaultTests
{
    private const string Fixable = """{"format": 1, "makes": "1 L", "steps": [{"pour": "500 mL", "of": "distilled",}, {"add": "potassium-nitrate", "amount": "50 g"}, {"topUp": "1 L", "of": "distilled"}]}""";

    private static readonly string _program = Path.Combine(AppContext.BaseDirectory, "recipelint.dll");

    [Theory]
    [InlineData("check", ".", "--output", "/dev/full")]
    [InlineData("check", ".", "--format", "sarif", "--output", "/dev/full")]
    [InlineData("check", ".", "--output", "/proc/report.txt")]
    [InlineData("check", ".", "--output", "a-folder")]
    [InlineData("check", ".", "--output", "none/report.txt")]
    [InlineData("check", ".", "--output", "a.stock.json/report.txt")]
    [InlineData("init", "/proc/shop")]
    [InlineData("init", "a.stock.json")]
    [InlineData("init", "/dev/null")]
    [InlineData("handbook", "--output", "/proc/book")]
    [InlineData("handbook", "--output", "a.stock.json")]
    [InlineData("split", "a.stock.json", "--parts", "1", "--write", "/proc/parts")]
    [InlineData("split", "a.stock.json", "--parts", "1", "--write", "a.stock.json")]
    public void WhereNothingCanBeWrittenOneLineSaysSo(params string[] arguments)
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        using var scratch = new Scratch();
        scratch.Write("a.stock.json", Fixable.Replace("\"distilled\",}", "\"distilled\"}", StringComparison.Ordinal));
        Directory.CreateDirectory(Path.Combine(scratch.Path, "a-folder"));
        var before = Everything(scratch.Path);
        var answer = Cli.RunIn(scratch.Path, null, arguments);
        Assert.Equal((2, 1), (answer.Code, answer.Error.Count(c => c == '\n')));
        Assert.DoesNotContain("Exception", answer.Error, StringComparison.Ordinal);
        Assert.Equal(before, Everything(scratch.Path));
    }

    [Fact]
    public void AWriteProtectedFileStaysAndSoDoTheOthers()
    {
        using var scratch = new Scratch();
        scratch.Write("a.stock.json", Fixable);
        var file = scratch.Write("b.stock.json", Fixable);
        scratch.Write("c.stock.json", Fixable);
        File.SetAttributes(file, FileAttributes.ReadOnly);
        var before = Everything(scratch.Path);
        var answer = Cli.RunIn(scratch.Path, null, "check", ".", "--fix");
        Assert.Equal((2, 1), (answer.Code, answer.Error.Count(c => c == '\n')));
        Assert.Equal(before, Everything(scratch.Path));
        File.SetAttributes(file, FileAttributes.Normal);
    }

    [Fact]
    public void WhenALaterFileCannotTakeItsPlaceTheEarlierOnesStandAsBefore()
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        using var scratch = new Scratch();
        var first = scratch.Write("a.json", "old");
        File.SetUnixFileMode(first, UnixFileMode.UserRead | UnixFileMode.UserWrite);
        scratch.Write("there.json", "mine");
        var link = Path.Combine(scratch.Path, "link.json");
        File.CreateSymbolicLink(link, "there.json");
        var folder = Directory.CreateDirectory(Path.Combine(scratch.Path, "b.json")).FullName;
        File.WriteAllText(Path.Combine(folder, "x"), "x");
        var before = Everything(scratch.Path);
        Assert.ThrowsAny<IOException>(() => WholeFiles.Write(
        [
            new WholeFile(first, "new"u8.ToArray()),
            new WholeFile(Path.Combine(scratch.Path, "new.json"), "new"u8.ToArray()) { IsNew = true },
            new WholeFile(link, "new"u8.ToArray()) { ReplacesLink = true },
            new WholeFile(Path.Combine(scratch.Path, "there.json"), "new"u8.ToArray()) { Expected = "other"u8.ToArray() },
        ]));
        Assert.Equal(before, Everything(scratch.Path));
        Assert.Equal("there.json", new FileInfo(link).LinkTarget);
        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(first));
    }

    [Fact]
    public void TwentyAtOnceInOneFolderLoseNothing()
    {
        using var scratch = new Scratch();
        for (var i = 0; i < 5; i++)
        {
            scratch.Write($"s{i}.stock.json", Fixable);
        }

        using var ready = new Barrier(20);
        var answers = new Answer[20];
        var threads = Enumerable.Range(0, 20).Select(i => new Thread(() =>
        {
            ready.SignalAndWait();
            answers[i] = i % 2 == 0
                ? Cli.RunIn(scratch.Path, null, "check", ".", "--fix")
                : Cli.RunIn(scratch.Path, null, "check", ".", "--output", "report.txt");
        })).ToList();
        threads.ForEach(t => t.Start());
        threads.ForEach(t => t.Join());
        Assert.All(answers, a => Assert.InRange(a.Code, 0, 2));
        Assert.All(answers.Where(a => a.Code == 2), a => Assert.Single(a.Error.Split('\n')[..^1]));
        Assert.Contains(answers.Where((_, i) => i % 2 == 0), a => a.Code < 2);
        for (var i = 0; i < 5; i++)
        {
            Assert.Equal(Fixable.Replace("\"distilled\",}", "\"distilled\"}", StringComparison.Ordinal), File.ReadAllText(Path.Combine(scratch.Path, $"s{i}.stock.json")));
        }

        Assert.Equal(["report.txt", "s0.stock.json", "s1.stock.json", "s2.stock.json", "s3.stock.json", "s4.stock.json"], Names(scratch.Path));
        Assert.Contains("file", File.ReadAllText(Path.Combine(scratch.Path, "report.txt")), StringComparison.Ordinal);
    }

    /// <summary>Killed at any moment: each file is whole, old or new, and the next run finishes. 200 times with RECIPELINT_LONG=1, else 6.</summary>
    [Fact]
    public void KilledInTheMiddleEveryFileIsWhole()
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        using var scratch = new Scratch();
        var times = Environment.GetEnvironmentVariable("RECIPELINT_LONG") == "1" ? 200 : 6;
        var mended = Fixable.Replace("\"distilled\",}", "\"distilled\"}", StringComparison.Ordinal);
        var random = new Random(15);
        for (var time = 0; time < times; time++)
        {
            for (var i = 0; i < 30; i++)
            {
                scratch.Write($"s{i}.stock.json", Fixable);
            }

            using var run = Start(scratch.Path, "check", ".", "--fix");

            // The moment it begins to write, and a few milliseconds more or less.
            var watch = Stopwatch.StartNew();
            while (!run.HasExited && watch.Elapsed < TimeSpan.FromSeconds(60) && !Names(scratch.Path).Any(n => n.EndsWith(".partial", StringComparison.Ordinal)))
            {
                Thread.Sleep(1);
            }

            Thread.Sleep(random.Next(8));
            run.Kill();
            run.WaitForExit();
            for (var i = 0; i < 30; i++)
            {
                var text = File.ReadAllText(Path.Combine(scratch.Path, $"s{i}.stock.json"));
                Assert.True(text == Fixable || text == mended, $"time {time}, file {i}: {text}");
            }
        }

        // What a killed run left is no obstacle, and goes once it is old.
        foreach (var left in Directory.GetFiles(scratch.Path, ".recipelint-*"))
        {
            File.SetLastWriteTimeUtc(left, File.GetLastWriteTimeUtc(left).AddHours(-2));
        }

        Assert.InRange(Cli.RunIn(scratch.Path, null, "check", ".", "--fix").Code, 0, 1);
        scratch.Write("s0.stock.json", Fixable);
        Assert.InRange(Cli.RunIn(scratch.Path, null, "check", ".", "--fix").Code, 0, 1);
        Assert.All(Enumerable.Range(0, 30), i => Assert.Equal(mended, File.ReadAllText(Path.Combine(scratch.Path, $"s{i}.stock.json"))));
    }

    /// <summary>SIGINT and SIGTERM while files wait to take their place: all or none, and nothing of ours stays.</summary>
    [Theory]
    [InlineData("INT", 130)]
    [InlineData("TERM", 143)]
    public void InterruptedItLeavesNothingHalfDone(string signal, int code)
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        using var scratch = new Scratch();
        for (var i = 0; i < 60; i++)
        {
            scratch.Write($"s{i}.stock.json", Fixable);
        }

        using var run = Start(scratch.Path, "check", ".", "--fix");
        var watch = Stopwatch.StartNew();
        while (!run.HasExited && watch.Elapsed < TimeSpan.FromSeconds(60) && !Names(scratch.Path).Any(n => n.EndsWith(".partial", StringComparison.Ordinal)))
        {
            Thread.Sleep(1);
        }

        using (var kill = Process.Start("kill", ["-" + signal, run.Id.ToString(CultureInfo.InvariantCulture)]))
        {
            kill.WaitForExit();
        }

        run.WaitForExit();

        // It may have been quicker than the signal.
        Assert.Contains(run.ExitCode, (int[])[code, 0, 1]);
        Assert.DoesNotContain(Names(scratch.Path), n => n.EndsWith(".partial", StringComparison.Ordinal));
        Assert.Single(Directory.GetFiles(scratch.Path).Select(f => File.ReadAllText(f)).Distinct());
    }

    /// <summary>While many files are judged, with a report to be written at the end: it ends at once, and no report begins to be there.</summary>
    [Theory]
    [InlineData("INT", 130)]
    [InlineData("TERM", 143)]
    public void AnInterruptedCheckEndsAndLeavesNoReport(string signal, int code)
    {
        // A run that a shell has put into the background is not to be interrupted, and what it starts inherits that.
        if (OperatingSystem.IsWindows() || (signal == "INT" && IgnoresInterrupt()))
        {
            return;
        }

        using var scratch = new Scratch();
        for (var i = 0; i < 2_000; i++)
        {
            scratch.Write($"s{i}.stock.json", Fixable);
        }

        using var run = Start(scratch.Path, "check", ".", "--format", "sarif", "--output", "log.sarif");

        // Under way, however busy the machine is: a signal that comes before the runtime has started is not for the program.
        for (var waited = 0; waited < 200 && run.TotalProcessorTime < TimeSpan.FromSeconds(0.7); waited++)
        {
            Thread.Sleep(50);
        }

        using (var kill = Process.Start("kill", ["-" + signal, run.Id.ToString(CultureInfo.InvariantCulture)]))
        {
            kill.WaitForExit();
        }

        // Its exit code tells whether it ended by the signal; on a busy machine even that takes seconds.
        Assert.True(run.WaitForExit(TimeSpan.FromSeconds(60)), "it went on after the signal");
        Assert.Equal(code, run.ExitCode);
        Assert.All(Names(scratch.Path), n => Assert.EndsWith(".stock.json", n));
    }

    /// <summary>Whether this process was started with the interrupt ignored: bit 1 of the signals that the kernel says it ignores.</summary>
    private static bool IgnoresInterrupt() => File.Exists("/proc/self/status")
        && File.ReadLines("/proc/self/status").FirstOrDefault(l => l.StartsWith("SigIgn:", StringComparison.Ordinal)) is { } ignored
        && (ulong.Parse(ignored["SigIgn:".Length..].Trim(), NumberStyles.HexNumber, CultureInfo.InvariantCulture) & 2) != 0;

    [Fact]
    public void AReaderThatLeavesIsNoFault()
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        using var scratch = new Scratch();
        var (code, error) = Shell(scratch.Path, $"set -o pipefail; dotnet '{_program}' explain calcium-with-sulfate | true; echo ${{PIPESTATUS[0]}} >&2");
        Assert.Equal(0, code);
        Assert.Equal("0\n", error);
    }

    [Theory]
    [InlineData("check .")]
    [InlineData("explain calcium-with-sulfate")]
    [InlineData("list substances")]
    [InlineData("rules")]
    [InlineData("--help")]
    public void AFullDeviceAsStandardOutputIsOneLine(string arguments)
    {
        if (!OperatingSystem.IsLinux())
        {
            return;
        }

        using var scratch = new Scratch();
        scratch.Write("a.stock.json", Fixable);
        var (code, error) = Shell(scratch.Path, $"dotnet '{_program}' {arguments} > /dev/full");
        Assert.Equal((2, 1), (code, error.Count(c => c == '\n')));
        Assert.StartsWith("recipelint: ", error, StringComparison.Ordinal);
    }

    private static Process Start(string folder, params string[] arguments) => Process.Start(new ProcessStartInfo("dotnet", [_program, .. arguments])
    {
        WorkingDirectory = folder,
        RedirectStandardOutput = true,
        RedirectStandardError = true,
    })!;

    private static (int Code, string Error) Shell(string folder, string script)
    {
        using var run = Process.Start(new ProcessStartInfo("bash", ["-c", script]) { WorkingDirectory = folder, RedirectStandardError = true, RedirectStandardOutput = true })!;
        var output = run.StandardOutput.ReadToEndAsync();
        var error = run.StandardError.ReadToEnd();
        output.Wait();
        run.WaitForExit();
        return (run.ExitCode, error);
    }

    private static List<string> Names(string folder) => [.. Directory.EnumerateFileSystemEntries(folder).Select(f => Path.GetFileName(f)!).Order(StringComparer.Ordinal)];

    private static string Everything(string folder) => new StringBuilder().AppendJoin(
        '\n',
        Directory.EnumerateFileSystemEntries(folder, "*", SearchOption.AllDirectories).Order(StringComparer.Ordinal).Select(f => Directory.Exists(f) ? f : f + ": " + File.ReadAllText(f))).ToString();
}
