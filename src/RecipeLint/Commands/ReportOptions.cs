using System.CommandLine;
using RecipeLint.Reports;
using RecipeLint.Reports.Formats;
using RecipeLint.Shell;

namespace RecipeLint.Commands;

/// <summary>The options of 'check' that say how and where to report.</summary>
internal sealed class ReportOptions
{
    private static readonly string Offered = string.Join('|', ReportFormats.Names);

    private readonly Option<string> _format = new("--format")
    {
        Description = "How to report.",
        DefaultValueFactory = _ => ReportFormats.Text,
        HelpName = Offered,
    };

    private readonly Option<string?> _output = new("--output", "-o")
    {
        Description = "Write the report to this file instead of standard output.",
        HelpName = "file",
    };

    private readonly Option<string[]> _also = new("--also")
    {
        Description = "Write the report in another format to a file as well, such as sarif:out.sarif. May be given several times.",
        HelpName = "format:file",
        DefaultValueFactory = _ => [],
    };

    private readonly Option<bool> _quiet = new("--quiet", "-q") { Description = "One line for each finding, nothing else." };

    private readonly Option<bool> _statistics =
        new("--statistics") { Description = "Say at the end how often each rule speaks and what '--fix' would mend." };

    private readonly Option<bool> _withSuppressed = new("--with-suppressed")
    {
        Description = "List accepted findings too, with their reason; in SARIF they are marked as suppressed.",
    };

    private readonly Option<int?> _width = SharedOptions.Width();

    private readonly Option<string> _color = SharedOptions.Color();

    public ReportOptions() => _format.AcceptOnlyFromAmong([.. ReportFormats.Names]);

    public void AddTo(Command command)
    {
        foreach (var option in new Option[] { _format, _output, _also, _quiet, _statistics, _width, _color, _withSuppressed })
        {
            command.Add(option);
        }
    }

    /// <summary>
    /// True for what cannot be told of files that are judged in pieces and let go: figures, files without findings, safe repairs.
    /// </summary>
    public bool NeedsEverything(ParseResult parsed) => WantsStatistics(parsed)
        || parsed.GetValue(_also)!.Select(a => a.Split(':')[0]).Append(parsed.GetValue(_format)!).Any(f => f is "csv" or "junit");

    /// <summary>True when the report is to be anything but text on standard output.</summary>
    public bool GoesElsewhere(ParseResult parsed) =>
        parsed.GetValue(_format) != ReportFormats.Text || parsed.GetValue(_output) is not null || parsed.GetValue(_also) is { Length: > 0 };

    public bool WantsStatistics(ParseResult parsed) => parsed.GetValue(_statistics);

    /// <summary>Where the report goes, each file looked at before anything is written.</summary>
    /// <exception cref="UsageException">A file cannot be written, or two reports go to one.</exception>
    public IReadOnlyList<(string Format, OutputFile? File)> Targets(Surroundings world, ParseResult parsed)
    {
        var main = parsed.GetValue(_output) is { } path ? OutputFile.Of(world, path, null, takesDevice: true) : null;
        List<(string Format, OutputFile? File)> targets = [(parsed.GetValue(_format)!, main)];
        foreach (var also in parsed.GetValue(_also)!)
        {
            var colon = also.IndexOf(':', StringComparison.Ordinal);
            var format = colon < 0 ? also : also[..colon];
            if (colon < 0 || colon == also.Length - 1 || !ReportFormats.Names.Contains(format))
            {
                throw new UsageException($"'--also {also}' is no format and file; write one such as 'sarif:out.sarif' with {Offered}.");
            }

            targets.Add((format, OutputFile.Of(world, also[(colon + 1)..], null, takesDevice: true)));
        }

        return targets.Where(t => t.File is not null)
            .GroupBy(t => t.File!.FullPath, StringComparer.Ordinal)
            .FirstOrDefault(g => g.Count() > 1) is { } twice
            ? throw new UsageException($"two reports would go to '{twice.Key}'.")
            : targets;
    }

    public void Deliver(Surroundings world, ParseResult parsed, IReadOnlyList<(string Format, OutputFile? File)> targets, Report report)
    {
        // Files first, all or none: where they cannot be written nothing is said either.
        WholeFiles.Deliver(
        [
            .. targets.Where(t => t.File is not null).Select(t => t.File!.Whole(
                writer => ReportFormats.Write(t.Format, writer, report, Options(parsed.GetValue(_color) == "always")))),
        ]);
        foreach (var (format, _) in targets.Where(t => t.File is null))
        {
            ReportFormats.Write(format, world.Out, report, Options(world.UseColor(parsed.GetValue(_color)!)));
            world.Out.Flush();
        }

        FormatOptions Options(bool color) => new(
            new TextOptions(color, world.Width(parsed.GetValue(_width)), parsed.GetValue(_quiet), parsed.GetValue(_withSuppressed)),
            parsed.GetValue(_withSuppressed));
    }

    /// <summary>To standard output, unless a format for machines has it: then to standard error.</summary>
    /// <param name="safeRepairs">Findings by rule id that '--fix' would mend.</param>
    public void TellStatistics(Surroundings world, ParseResult parsed, Report report, IReadOnlyDictionary<string, int> safeRepairs)
    {
        var taken = parsed.GetValue(_output) is null && parsed.GetValue(_format) != ReportFormats.Text;
        var writer = taken ? world.Error : world.Out;
        foreach (var line in Statistics.Lines(report, safeRepairs, world.Width(parsed.GetValue(_width))))
        {
            writer.WriteLine(Printable.GuardLine(line));
        }

        writer.Flush();
    }
}
