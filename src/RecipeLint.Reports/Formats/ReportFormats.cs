namespace RecipeLint.Reports.Formats;

/// <summary>How a report is written, whatever the format.</summary>
/// <param name="Text">For 'text' alone.</param>
/// <param name="IncludeSuppressed">For 'sarif' alone: accepted findings too, marked and with their reason.</param>
public sealed record FormatOptions(TextOptions Text, bool IncludeSuppressed = false);

/// <summary>Every format of 'check'. All of them tell the same report; none has a say in the exit code.</summary>
public static class ReportFormats
{
    public const string Text = "text";

    /// <summary>In the order they are offered.</summary>
    public static IReadOnlyList<string> Names { get; } = [Text, "sarif", "json", "markdown", "github", "junit", "csv"];

    /// <exception cref="ArgumentOutOfRangeException">The format is none of <see cref="Names"/>.</exception>
    public static void Write(string format, TextWriter writer, Report report, FormatOptions options)
    {
        switch (format)
        {
            case Text:
                TextReport.Write(writer, report, options.Text);
                break;
            case "sarif":
                SarifReport.Write(writer, report, new SarifOptions(options.IncludeSuppressed));
                break;
            case "json":
                JsonReport.Write(writer, report);
                break;
            case "markdown":
                MarkdownReport.Write(writer, report);
                break;
            case "github":
                GithubReport.Write(writer, report);
                break;
            case "junit":
                JunitReport.Write(writer, report);
                break;
            case "csv":
                CsvReport.Write(writer, report);
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(format), format, "There is no such format.");
        }
    }
}
