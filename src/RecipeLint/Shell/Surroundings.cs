using System.Text;
using RecipeLint.Recipes.Files;
using RecipeLint.Reports;

namespace RecipeLint.Shell;

/// <summary>What the command line knows of the world, so that tests can run it in process.</summary>
/// <param name="Variable">An environment variable by name; null when unset.</param>
internal sealed record Surroundings(
    TextWriter Out,
    TextWriter Error,
    Func<Stream> StandardInput,
    string CurrentDirectory,
    Func<string, string?> Variable,
    bool OutIsTerminal,
    DateOnly Today)
{
    /// <summary>Narrower than this no text is laid out.</summary>
    public const int LeastWidth = 40;

    /// <summary>Wider than this nobody reads a line, however wide the terminal.</summary>
    private const int MostWidth = 160;

    private const int PipedWidth = 100;

    /// <summary>Standard output as bytes, for what is no text.</summary>
    public Func<Stream> StandardOutput { get; init; } = () => Stream.Null;

    /// <summary>The files that are read, seen from a folder: those of this machine, or in tests some that exist only in memory.</summary>
    public Func<string, IFileTree> Files { get; init; } = folder => new DiskFileTree(folder);

    /// <summary>Ends what would go on for ever; a person ends it with the process.</summary>
    public CancellationToken Stop { get; init; }

    /// <summary>True when a person types at standard input.</summary>
    public bool InIsTerminal { get; init; }

    /// <summary>Columns of the terminal that output goes to; null without one, or where it does not say.</summary>
    public int? TerminalColumns { get; init; }

    /// <summary>True when a person sees standard error.</summary>
    public bool ErrorIsTerminal { get; init; }

    public static Surroundings OfThisProcess()
    {
        var utf8 = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
        return new Surroundings(
            new StreamWriter(StandardStreams.Output(), utf8) { AutoFlush = false, NewLine = "\n" },
            new StreamWriter(StandardStreams.Error(), utf8) { AutoFlush = true, NewLine = "\n" },
            StandardStreams.Input,
            FolderOfThisProcess(),
            Environment.GetEnvironmentVariable,
            !Console.IsOutputRedirected,
            DateOnly.FromDateTime(TimeProvider.System.GetLocalNow().DateTime))
        {
            StandardOutput = StandardStreams.Output,
            ErrorIsTerminal = !Console.IsErrorRedirected,
            InIsTerminal = !Console.IsInputRedirected && !Console.IsOutputRedirected,
            TerminalColumns = Console.IsOutputRedirected ? null : ColumnsOfConsole(),
        };
    }

    /// <summary>One line for people; a name in it can hold whatever a file name can.</summary>
    public void Tell(string line) => Out.WriteLine(Printable.Show(line));

    /// <summary>Says of files that were written and had other names on the disk that those were left alone.</summary>
    /// <param name="files">Full paths.</param>
    public void TellOfOtherNames(IEnumerable<string> files)
    {
        foreach (var file in files)
        {
            Error.WriteLine("recipelint: " + Printable.Show(
                $"{Path.GetFileName(file)}: this file had other names on the disk (hard links); they still hold what it was before."));
        }
    }

    /// <summary>How wide text may be: as asked, else as wide as the terminal, else 100 columns.</summary>
    /// <param name="asked">The value of '--width'; null when it was not given.</param>
    public int Width(int? asked) => asked ?? (OutIsTerminal && TerminalColumns is { } columns
        ? Math.Clamp(columns, LeastWidth, MostWidth)
        : PipedWidth);

    /// <summary>
    /// Whether to colour: the option wins, then NO_COLOR, FORCE_COLOR and CLICOLOR_FORCE, then whether a terminal is there.
    /// </summary>
    public bool UseColor(string option)
    {
        bool IsSet(string name) => Variable(name) is { Length: > 0 } value && value != "0";
        return option switch
        {
            "always" => true,
            "never" => false,
            _ when Variable("NO_COLOR") is { Length: > 0 } => false,
            _ when IsSet("FORCE_COLOR") || IsSet("CLICOLOR_FORCE") => true,
            _ => OutIsTerminal && Variable("TERM") != "dumb",
        };
    }

    private static string FolderOfThisProcess()
    {
        try
        {
            return Directory.GetCurrentDirectory();
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            throw new UsageException("the folder that this was started in is gone.");
        }
    }

    private static int? ColumnsOfConsole()
    {
        try
        {
            return Console.WindowWidth is > 0 and var width ? width : null;
        }
        catch (IOException)
        {
            // A terminal that does not tell its size.
            return null;
        }
    }
}
