using System.Text;
using RecipeLint.Recipes.Files;
using RecipeLint.Reports.Tests.Support;
using RecipeLint.Shell;

namespace RecipeLint.Tests.Support;

/// <summary>What one run of the command line answered.</summary>
internal sealed record Answer(int Code, string Out, string Error)
{
    /// <summary>Position lines of findings ("FILE:1:2: error RL0001 name"), without messages and excerpts.</summary>
    public IReadOnlyList<string> Findings =>
        [.. Out.Split('\n').Where(l => l.Length > 0 && l[0] != ' ' && (l.Contains(": error RL") || l.Contains(": warning RL") || l.Contains(": note RL")))];
}

/// <summary>Runs the real entry point in process.</summary>
internal static class Cli
{
    /// <summary>The day suppressions are held against in tests.</summary>
    public static readonly DateOnly Today = new(2026, 3, 1);

    public static Answer Run(params string[] arguments) => RunIn(Repository.Root, null, arguments);

    public static Answer RunIn(string folder, byte[]? input, params string[] arguments) =>
        RunWith(folder, input, new Dictionary<string, string>(), false, arguments);

    /// <summary>Over files that exist only in memory.</summary>
    public static Answer RunOver(IFileTree files, params string[] arguments)
    {
        var world = World(files, out var output, out var error);
        var code = CommandLine.Run(arguments, world);
        return new Answer(code, output.ToString(), error.ToString());
    }

    public static Surroundings World(IFileTree files, out StringWriter output, out StringWriter error)
    {
        (output, error) = (new StringWriter { NewLine = "\n" }, new StringWriter { NewLine = "\n" });
        return new Surroundings(output, error, () => new MemoryStream(), files.CurrentFolder, _ => null, false, Today) { Files = _ => files };
    }

    /// <summary>On a terminal of so many columns.</summary>
    public static Answer RunOn(int columns, params string[] arguments) =>
        RunWith(Repository.Root, null, new Dictionary<string, string>(), true, arguments, columns);

    public static Answer RunWith(
        string folder, byte[]? input, IReadOnlyDictionary<string, string> variables, bool terminal, string[] arguments, int? columns = null)
    {
        var (output, error) = (new StringWriter { NewLine = "\n" }, new StringWriter { NewLine = "\n" });
        var world = new Surroundings(
            output, error, () => new MemoryStream(input ?? []), folder, name => variables.GetValueOrDefault(name), terminal, Today)
        {
            TerminalColumns = columns,
        };
        var code = CommandLine.Run(arguments, world);
        return new Answer(code, output.ToString(), error.ToString());
    }
}

/// <summary>A folder that goes away with the test.</summary>
internal sealed class Scratch : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("recipelint-test-").FullName;

    public string Write(string name, string text)
    {
        var full = System.IO.Path.Combine(Path, name);
        Directory.CreateDirectory(System.IO.Path.GetDirectoryName(full)!);
        File.WriteAllText(full, text, new UTF8Encoding(false));
        return full;
    }

    /// <summary>Of thousands of files the listing of a folder may miss some while they go: what is left goes at the next try.</summary>
    public void Dispose()
    {
        for (var left = 5; ; left--)
        {
            try
            {
                Directory.Delete(Path, recursive: true);
                return;
            }
            catch (IOException) when (left > 0)
            {
                Thread.Sleep(100);
            }
        }
    }
}
