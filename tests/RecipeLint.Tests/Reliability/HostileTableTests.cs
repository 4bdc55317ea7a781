using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using RecipeLint.Reports;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests.Reliability;

/// <summary>One test for each hostile input: a finding at its place or one clear line, in bounded time, and nothing that steers a terminal or a log.</summary>
public sealed partial class HostileTableTests
{
    private const string Head = """
        # Hostile inputs, one test a row

        Written by HostileTableTests; rewritten with RECIPELINT_UPDATE=1. Each row runs the real command line over files in memory. Every row also holds that the exit code
        is 0, 1 or 2, standard error has at most one line, no control or bidirectional character and no line that starts a workflow command comes out, and SARIF parses.
        The 318 inputs of JSONTestSuite are rows of their own in JsonTestSuiteTests and HostileInputTests.

        | threat | input | exit | answer |
        | --- | --- | --- | --- |
        """;

    private static readonly RowTable _table = new("hostile.md", Head, () => HostileRows.All.Select(RowOf));

    public static TheoryData<int, string> Rows()
    {
        var data = new TheoryData<int, string>();
        foreach (var (row, index) in HostileRows.All.Select((r, i) => (r, i)))
        {
            data.Add(index, Printable.Show($"{row.Threat}: {row.Name}"));
        }

        return data;
    }

    [Theory]
    [MemberData(nameof(Rows))]
    public void EachInputGetsAFindingOrOneClearLine(int index, string name)
    {
        Assert.NotEmpty(name);
        _table.AssertHolds(RowOf(HostileRows.All[index]));
    }

    [Fact]
    public void TheTableHasEveryRow() => _table.AssertWhole(HostileRows.All.Count);

    [Fact]
    public void OnlyDocumentedVariablesAreAskedFor()
    {
        var asked = new SortedSet<string>(StringComparer.Ordinal);
        foreach (var color in (string[])["auto", "always", "never"])
        {
            var world = Cli.World(HostileRows.All[0].Files, out _, out _) with { Variable = Ask };
            CommandLine.Run(["check", ".", "--color", color], world);
        }

        // Without a terminal TERM is not asked for.
        Assert.Equal(["CLICOLOR_FORCE", "FORCE_COLOR", "NO_COLOR"], asked);

        string? Ask(string name)
        {
            asked.Add(name);
            return null;
        }
    }

    private static string RowOf(HostileRow row)
    {
        var watch = Stopwatch.StartNew();
        var answer = Cli.RunOver(row.Files, row.Arguments);
        Assert.True(watch.Elapsed < TimeSpan.FromSeconds(60), $"took {watch.Elapsed}");
        Assert.InRange(answer.Code, 0, 2);
        Assert.True(answer.Error.Count(c => c == '\n') <= 1, answer.Error);
        Assert.Equal(answer.Code == 2, answer.Error.Length > 0);
        var format = row.Threat.StartsWith("control and markup in ", StringComparison.Ordinal) ? row.Arguments[^1] : "";
        AssertHarmless(format, answer.Out);
        foreach (var text in (string[])[format is "csv" or "github" or "html" ? Plain(format, answer.Out) : answer.Out, answer.Error])
        {
            Assert.DoesNotContain(text, c => (char.IsControl(c) && c != '\n') || c is '\u202e' or '\u2066' or '\u2028');
            Assert.DoesNotContain(text.Split('\n'), l => l.StartsWith("::", StringComparison.Ordinal) || l.StartsWith("##vso", StringComparison.Ordinal));
            Assert.DoesNotContain("Exception", text, StringComparison.Ordinal);
        }

        string said;
        if (row.Arguments.Contains("sarif"))
        {
            using var log = JsonDocument.Parse(answer.Out);
            said = string.Create(CultureInfo.InvariantCulture, $"SARIF, {log.RootElement.GetProperty("runs")[0].GetProperty("results").GetArrayLength()} results");
        }
        else if (format is "markdown" or "github" or "junit" or "csv" or "html")
        {
            said = "nothing in it acts";
        }
        else
        {
            said = answer.Code == 2 ? answer.Error : answer.Findings.Count == 0 ? "no finding" : string.Join("; ", answer.Findings.Select(RuleOf).Distinct());
        }

        said = said.Length > 160 ? said[..160] + "..." : said;
        return $"| {row.Threat} | {RowTable.Cell(Printable.Show(row.Name))} | {answer.Code} | {RowTable.Cell(said)} |";
    }

    /// <summary>What of a format may hold what a terminal's text may not: ends of lines, and the commands of the report itself.</summary>
    private static string Plain(string format, string text) => format switch
    {
        "csv" => text.Replace("\r\n", "\n", StringComparison.Ordinal),
        "github" => string.Join('\n', text.Split('\n').Where(l => !Annotation().IsMatch(l))),
        _ => text,
    };

    /// <summary>Read as its reader reads it, a report holds text and nothing that acts.</summary>
    private static void AssertHarmless(string format, string text)
    {
        switch (format)
        {
            case "junit":
                Assert.NotNull(XDocument.Parse(text).Root);
                break;
            case "csv":
                Assert.DoesNotContain(Cells(text), c => c.Length > 0 && c[0] is '=' or '+' or '-' or '@' && !double.TryParse(c, CultureInfo.InvariantCulture, out _));
                break;
            case "markdown":
                var outside = CodeSpan().Replace(text, "");
                Assert.DoesNotContain("<script", outside, StringComparison.Ordinal);
                Assert.DoesNotMatch(@"(?<!\\)\[x\]\(javascript", outside);
                break;
            case "html":
                Assert.DoesNotContain("<script>alert", text, StringComparison.Ordinal);
                Assert.DoesNotContain("\" onload=\"x", text, StringComparison.Ordinal);
                Assert.DoesNotContain("href=\"javascript", text, StringComparison.Ordinal);
                break;
        }
    }

    /// <summary>Cells of RFC 4180.</summary>
    private static IEnumerable<string> Cells(string text) => CsvCell().Matches(text).Select(m => m.Groups[1].Success ? m.Groups[1].Value.Replace("\"\"", "\"", StringComparison.Ordinal) : m.Groups[2].Value);

    [GeneratedRegex("(?:^|,|\n)(?:\"((?:[^\"]|\"\")*)\"|([^,\r\n]*))", RegexOptions.CultureInvariant)]
    private static partial Regex CsvCell();

    [GeneratedRegex("(`+)[^`]+\\1", RegexOptions.CultureInvariant)]
    private static partial Regex CodeSpan();

    [GeneratedRegex("^::(error|warning|notice) (file|title)=[^\\p{C}]*$", RegexOptions.CultureInvariant)]
    private static partial Regex Annotation();

    /// <summary>"malformed-file" of "a.stock.json:1:1: error RL0001 malformed-file:".</summary>
    private static string RuleOf(string finding)
    {
        var at = finding.IndexOf(" RL", StringComparison.Ordinal);
        return finding[(at + 8)..].Split(' ', ':', '(')[0];
    }
}
