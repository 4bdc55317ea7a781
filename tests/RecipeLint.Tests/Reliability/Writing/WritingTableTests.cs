using System.Diagnostics;
using System.Text;
using RecipeLint.Recipes.Files;
using RecipeLint.Shell;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests.Reliability.Writing;

/// <summary>
/// Every command that writes with everything that can be in its way: whole or not at all, one clear line, nothing lost and nothing left behind.
/// Rows that need a process of their own run in part always, all of them with RECIPELINT_LONG=1.
/// </summary>
public sealed class WritingTableTests
{
    private const string Head = """
        # Writing, one test a row

        Written by WritingTableTests; rewritten with RECIPELINT_UPDATE=1 and RECIPELINT_LONG=1. Each row runs a command with something in its way and holds that the exit code and the
        one line are right, that files are whole, that a refusal changes nothing, not even an empty folder, and that nothing half-written stays. A full disk is a limit of 0 bytes for
        every file; a read-only folder is read-only for this user (as root without the right to override); killed is SIGKILL once or ten times, at another moment each time.

        | command | in the way | what happens |
        | --- | --- | --- |
        """;

    private static readonly string _program = Path.Combine(AppContext.BaseDirectory, "recipelint.dll");
    private static readonly RowTable _table = new("writing.md", Head, () => All().Select(RowOf));
    private static readonly Lazy<string> _log = new(() => Cli.RunOver(new MemoryFileTree("/shop").Add("a.stock.json", WritingCommand.All[0].Files["a.stock.json"]), "check", ".", "--format", "sarif").Out);

    /// <summary>What runs in a process of its own knows no other day, and a record has the day in it.</summary>
    private static readonly DateOnly _today = DateOnly.FromDateTime(DateTime.Now);

    private static bool IsLong => Environment.GetEnvironmentVariable("RECIPELINT_LONG") == "1";

    public static TheoryData<int, string> Rows()
    {
        var data = new TheoryData<int, string>();
        foreach (var ((command, fault), index) in All().Select((r, i) => (r, i)))
        {
            if (IsLong || IsInTheShortRun(command, fault, index))
            {
                data.Add(index, $"{command.Name}: {Words(fault)}");
            }
        }

        return data;
    }

    [Theory]
    [MemberData(nameof(Rows))]
    public void WholeOrNotAtAll(int index, string name)
    {
        Assert.NotEmpty(name);
        if (OperatingSystem.IsLinux())
        {
            var (command, fault) = All().ElementAt(index);
            using var scratch = new Scratch();
            Prepare(scratch, command);
            Hold(command, fault, scratch);
            _table.AssertHolds(RowOf((command, fault)));
        }
    }

    [Fact]
    public void TheTableHasEveryRow() => _table.AssertWhole(All().Count());

    private static IEnumerable<(WritingCommand Command, WritingFault Fault)> All() =>
        from command in WritingCommand.All
        from fault in Enum.GetValues<WritingFault>()
        where (fault != WritingFault.SomethingInItsPlace || command.Occupied is not null) && (fault != WritingFault.SavedMeanwhile || command.Meanwhile is not null)
        select (command, fault);

    private static bool IsInTheShortRun(WritingCommand command, WritingFault fault, int index) => fault switch
    {
        WritingFault.SomethingInItsPlace or WritingFault.SavedMeanwhile => true,
        WritingFault.TwoAtOnce or WritingFault.TwentyAtOnce => !command.IsSlow,
        _ => index % 5 == 0,
    };

    private static string RowOf((WritingCommand Command, WritingFault Fault) row)
    {
        var happens = row.Fault switch
        {
            WritingFault.FullDisk or WritingFault.ReadOnlyFolder or WritingFault.SomethingInItsPlace => "exit 2, one line, nothing changed",
            WritingFault.SavedMeanwhile => "exit 2, one line, what somebody saved stays",
            WritingFault.TwoAtOnce or WritingFault.TwentyAtOnce => "one writes, the others write the same or say in one line why not",
            WritingFault.ReaderLeaves => "quiet, everything written",
            _ => "every file whole, old or new; only hidden unfinished ones stay",
        };
        return $"| {row.Command.Name} | {Words(row.Fault)} | {happens} |";
    }

    private static string Words(WritingFault fault) => fault switch
    {
        WritingFault.FullDisk => "a full disk",
        WritingFault.ReadOnlyFolder => "a read-only folder",
        WritingFault.SomethingInItsPlace => "a folder where a file goes, or the reverse",
        WritingFault.SavedMeanwhile => "somebody saves it meanwhile",
        WritingFault.TwoAtOnce => "two at once",
        WritingFault.TwentyAtOnce => "twenty at once",
        WritingFault.ReaderLeaves => "a reader that leaves",
        _ => "killed",
    };

    private static void Hold(WritingCommand command, WritingFault fault, Scratch scratch)
    {
        switch (fault)
        {
            case WritingFault.FullDisk:
                AssertRefused(scratch, () => Shell(scratch.Path, command, "trap '' XFSZ; ulimit -f 0; {0}"));
                break;
            case WritingFault.ReadOnlyFolder:
                HoldInReadOnlyFolder(command, scratch);
                break;
            case WritingFault.SomethingInItsPlace:
                HoldOccupied(command, scratch);
                break;
            case WritingFault.SavedMeanwhile:
                HoldMeanwhile(command, scratch);
                break;
            case WritingFault.TwoAtOnce:
                HoldAtOnce(command, scratch, 2);
                break;
            case WritingFault.TwentyAtOnce:
                HoldAtOnce(command, scratch, 20);
                break;
            case WritingFault.ReaderLeaves:
                HoldWithoutReader(command, scratch);
                break;
            default:
                HoldKilled(command, scratch);
                break;
        }
    }

    /// <summary>Exit code 2, one line, and everything as it was.</summary>
    private static void AssertRefused(Scratch scratch, Func<(int Code, string Error)> run)
    {
        var before = Everything(scratch.Path);
        var (code, error) = run();
        Assert.True(code == 2 && error.Count(c => c == '\n') == 1 && error.StartsWith("recipelint: ", StringComparison.Ordinal), $"exit code {code}: {error}");
        Assert.DoesNotContain("Exception", error, StringComparison.Ordinal);
        Assert.Equal(before, Everything(scratch.Path));
    }

    private static void HoldInReadOnlyFolder(WritingCommand command, Scratch scratch)
    {
        var folders = Directory.EnumerateDirectories(scratch.Path, "*", SearchOption.AllDirectories).Append(scratch.Path).ToList();
        var modes = folders.ToDictionary(f => f, ModeOf);
        folders.ForEach(f => SetMode(f, UnixFileMode.UserRead | UnixFileMode.UserExecute));
        try
        {
            // Root may write everywhere, unless it gives that right up.
            AssertRefused(scratch, () => Shell(scratch.Path, command, "d=; [ $(id -u) = 0 ] && d='setpriv --bounding-set=-dac_override,-dac_read_search --inh-caps=-dac_override,-dac_read_search'; $d {0}"));
        }
        finally
        {
            folders.ForEach(f => SetMode(f, modes[f]));
        }
    }

    private static void HoldOccupied(WritingCommand command, Scratch scratch)
    {
        var full = Path.Combine(scratch.Path, command.Occupied!);
        if (Path.HasExtension(full) && !Path.GetFileName(full).StartsWith('.'))
        {
            Directory.CreateDirectory(full);
        }
        else
        {
            File.WriteAllText(full, "somebody's");
        }

        AssertRefused(scratch, () => Run(command, scratch.Path));
    }

    /// <summary>After the first, second, third time that the file was read, somebody else saves it: what was saved stays, and is never mistaken.</summary>
    private static void HoldMeanwhile(WritingCommand command, Scratch scratch)
    {
        var full = Path.Combine(scratch.Path, command.Meanwhile!);
        var refused = 0;
        for (var time = 1; time <= 4; time++)
        {
            Directory.Delete(scratch.Path, recursive: true);
            Directory.CreateDirectory(scratch.Path);
            Prepare(scratch, command);
            var waitsFor = File.Exists(full) ? full : null;
            var left = time;
            var (code, error) = Run(command, scratch.Path, Save);
            if (left > 0)
            {
                break;
            }

            Assert.InRange(code, 0, 2);
            Assert.True(code < 2 || error.Count(c => c == '\n') == 1, error);
            Assert.Equal("somebody's", File.ReadAllText(full));
            Assert.DoesNotContain(".partial", Everything(scratch.Path), StringComparison.Ordinal);
            refused += code == 2 ? 1 : 0;

            void Save(string read)
            {
                if (left > 0 && (waitsFor is null || read == waitsFor) && --left == 0)
                {
                    Directory.CreateDirectory(Path.GetDirectoryName(full)!);
                    File.WriteAllText(full, "somebody's");
                }
            }
        }

        Assert.True(refused > 0, "nobody noticed");
    }

    /// <summary>Some are refused, one is not, and what stands there is what one alone writes.</summary>
    private static void HoldAtOnce(WritingCommand command, Scratch scratch, int count)
    {
        using var ready = new Barrier(count);
        var answers = new (int Code, string Error)[count];
        var threads = Enumerable.Range(0, count).Select(i => new Thread(() =>
        {
            ready.SignalAndWait();
            answers[i] = Run(command, scratch.Path);
        })).ToList();
        threads.ForEach(t => t.Start());
        threads.ForEach(t => t.Join());
        Assert.All(answers, a => Assert.True(a.Code is >= 0 and <= 2 && (a.Code < 2 || a.Error.Count(c => c == '\n') == 1), $"exit code {a.Code}: {a.Error}"));
        Assert.Contains(answers, a => a.Code < 2);
        Assert.Equal(Alone(command), Everything(scratch.Path, relative: true));
    }

    private static void HoldWithoutReader(WritingCommand command, Scratch scratch)
    {
        var (_, error) = Shell(scratch.Path, command, "set -o pipefail; {0} | true");
        Assert.Equal("", string.Join('\n', error.Split('\n').Where(l => !l.StartsWith("recipelint: ", StringComparison.Ordinal))));
        Assert.Equal(Alone(command), Everything(scratch.Path, relative: true));
    }

    /// <summary>Each file is as it was, or as it should be, and what is left is ours and hidden.</summary>
    private static void HoldKilled(WritingCommand command, Scratch scratch)
    {
        var done = Lines(Alone(command));
        var before = Lines(Everything(scratch.Path, relative: true));
        var random = new Random(command.Name.Length);
        for (var time = IsLong ? 10 : 1; time > 0; time--)
        {
            using var run = Start(command, scratch.Path);
            var watch = Stopwatch.StartNew();
            while (!run.HasExited && watch.Elapsed < TimeSpan.FromSeconds(60) && !Directory.EnumerateFiles(scratch.Path, "*.partial", SearchOption.AllDirectories).Any())
            {
                Thread.Sleep(1);
            }

            Thread.Sleep(random.Next(8));
            run.Kill();
            run.WaitForExit();
            foreach (var line in Lines(Everything(scratch.Path, relative: true)).Where(l => !l.Contains(".partial: ", StringComparison.Ordinal)))
            {
                Assert.True(before.Contains(line) || done.Contains(line) || IsList(line), line.Length > 300 ? line[..300] : line);
            }

            Directory.Delete(scratch.Path, recursive: true);
            Directory.CreateDirectory(scratch.Path);
            Prepare(scratch, command);
        }
    }

    /// <summary>The list of pages names more than is there until the last page is.</summary>
    private static bool IsList(string line) => line.Contains(": Written by 'recipelint ", StringComparison.Ordinal);

    /// <summary>What the folder holds once the command ran with nothing in its way.</summary>
    private static string Alone(WritingCommand command)
    {
        using var scratch = new Scratch();
        Prepare(scratch, command);
        var before = Everything(scratch.Path, relative: true);
        Assert.InRange(Run(command, scratch.Path).Code, 0, 1);
        var after = Everything(scratch.Path, relative: true);
        Assert.NotEqual(before, after);
        return after;
    }

    private static void Prepare(Scratch scratch, WritingCommand command)
    {
        Directory.CreateDirectory(Path.Combine(scratch.Path, ".git"));
        foreach (var (path, text) in command.Files)
        {
            scratch.Write(path, text.Length > 0 ? text : _log.Value);
        }
    }

    private static (int Code, string Error) Run(WritingCommand command, string folder, Action<string>? onRead = null)
    {
        var (output, error) = (new StringWriter { NewLine = "\n" }, new StringWriter { NewLine = "\n" });
        var world = new Surroundings(output, error, StandardInput, folder, _ => null, false, _today)
        {
            Files = at => new WatchedTree(new DiskFileTree(at), onRead),
        };
        return (CommandLine.Run(command.Arguments, world), error.ToString());

        Stream StandardInput()
        {
            onRead?.Invoke("standard input");
            return new MemoryStream(Encoding.UTF8.GetBytes(command.Answers));
        }
    }

    private static Process Start(WritingCommand command, string folder)
    {
        var run = Process.Start(new ProcessStartInfo("dotnet", [_program, .. command.Arguments])
        {
            WorkingDirectory = folder,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
        run.StandardInput.Write(command.Answers);
        run.StandardInput.Close();
        run.BeginOutputReadLine();
        run.BeginErrorReadLine();
        return run;
    }

    /// <param name="script">"{0}" stands for the program with its arguments.</param>
    private static (int Code, string Error) Shell(string folder, WritingCommand command, string script)
    {
        var program = $"dotnet '{_program}' {string.Join(' ', command.Arguments.Select(a => $"'{a}'"))}";
        var start = new ProcessStartInfo("bash", ["-c", script.Replace("{0}", program, StringComparison.Ordinal)])
        {
            WorkingDirectory = folder,
            RedirectStandardInput = true,
            RedirectStandardError = true,
            RedirectStandardOutput = true,
        };

        // The runtime keeps compiled code in a file of its own otherwise, which the limit would hold back too.
        start.Environment["DOTNET_EnableWriteXorExecute"] = "0";
        start.Environment["DOTNET_EnableDiagnostics"] = "0";
        using var run = Process.Start(start)!;
        run.StandardInput.Write(command.Answers);
        run.StandardInput.Close();
        var output = run.StandardOutput.ReadToEndAsync();
        var error = run.StandardError.ReadToEnd();
        output.Wait();
        run.WaitForExit();
        return (run.ExitCode, error);
    }

    private static List<string> Lines(string everything) => [.. everything.Split("\u0001", StringSplitOptions.RemoveEmptyEntries)];

    private static string Everything(string folder, bool relative = false) => string.Concat(
        Directory.EnumerateFileSystemEntries(folder, "*", SearchOption.AllDirectories).Order(StringComparer.Ordinal)
            .Where(f => !relative || !Directory.Exists(f))
            .Select(f => (Path.GetRelativePath(folder, f), Directory.Exists(f) ? "folder" : File.ReadAllText(f)))
            .Select(f => $"{f.Item1}: {f.Item2}\u0001"));

    private static UnixFileMode ModeOf(string folder) => OperatingSystem.IsWindows() ? UnixFileMode.None : File.GetUnixFileMode(folder);

    private static void SetMode(string folder, UnixFileMode mode)
    {
        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(folder, mode);
        }
    }

    /// <summary>Says when the first file was read.</summary>
    private sealed class WatchedTree(IFileTree under, Action<string>? onRead) : IFileTree
    {
        public string CurrentFolder => under.CurrentFolder;

        public string FullPath(string path) => under.FullPath(path);

        public EntryKind Kind(string path) => under.Kind(path);

        public string ResolveLinks(string path) => under.ResolveLinks(path);

        public bool IsLink(string path) => under.IsLink(path);

        public IReadOnlyList<string> Names(string folder) => under.Names(folder);

        public FileBytes Read(string path, int sizeLimit)
        {
            var read = under.Read(path, sizeLimit);
            if (read.Bytes is { Length: > 0 })
            {
                onRead?.Invoke(path);
            }

            return read;
        }
    }
}
