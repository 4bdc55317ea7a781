using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Json.Schema;
using RecipeLint.Recipes.Text;
using RecipeLint.Reports.Formats;
using RecipeLint.Reports.Tests.Support;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.Tests;

/// <summary>Every format over the same reports: it looks as stored, is well-formed for its reader, and no name or text of a file leaves its place.</summary>
public sealed partial class FormatTests
{
    // Once for all tests: the validator registers a schema by its identifier.
    private static readonly Lazy<JsonSchema> Schema =
        new(() => JsonSchema.FromText(File.ReadAllText(Path.Combine(Repository.Root, "schema", "report.schema.json"))));

    private static readonly string[] Formats = ["json", "markdown", "github", "junit"];

    public static TheoryData<string, string> Cases
    {
        get
        {
            var data = new TheoryData<string, string>();
            foreach (var format in Formats)
            {
                foreach (var (name, _) in All())
                {
                    data.Add(format, name);
                }
            }

            return data;
        }
    }

    public static TheoryData<string> Names => [.. All().Select(s => s.Name)];

    private static IEnumerable<(string Name, Report Report)> All() => [.. Samples.All(), ("names", HostileNames()), ("many", Many())];

    /// <summary>Names and texts made for pages, pull requests, build logs and spreadsheets.</summary>
    private static Report HostileNames()
    {
        string[] hostile =
        [
            "<script>alert(1)</script>", "=cmd|' /C calc'!A0", "@everyone #1 [x](javascript:alert(1)) ![i](http://example.org/i.png)", "::error file=x::y",
            "a`b``c", "\"]]>&amp;--><!--", "| a | b |\n\n# title", "%0A::error::x", "\u202Etxt.exe", "-2+3", "file:///etc/passwd www.example.org", "\uFFFE\uFFFF",
        ];
        var files = hostile.Select(n => Samples.File(n + ".stock.json", $"{{\"name\": {JsonSerializer.Serialize(n)}, \"a\": 1}}")).ToArray();
        return Samples.Report(
            files.Zip(hostile, (f, n) => Samples.Finding(
                Samples.Rule(), Samples.At(f, "\"a\""), $"{n} is wrong. {n}", n, new RelatedPlace(Samples.At(f, "1"), n))),
            files) with
        {
            Asked = [.. files.Select(f => f.Path)],
            Assumptions = [.. hostile],
        };
    }

    /// <summary>More than any format with a limit shows at once.</summary>
    private static Report Many()
    {
        var file = Samples.File("many.stock.json", Samples.PartB);
        var place = Samples.At(file, "\"200 g\"");
        var levels = new[] { Level.Note, Level.Warning, Level.Error };
        return Samples.Report(
            Enumerable.Range(0, 24).Select(i => Samples.Finding(Samples.Rule(level: levels[i % 3]), place, $"Finding {i + 1} of many.", $"steps/{i}")), file);
    }

    private static Report Sample(string name) => All().Single(s => s.Name == name).Report;

    private static string Render(string format, Report report)
    {
        using var writer = new StringWriter();
        ReportFormats.Write(format, writer, report, new FormatOptions(new TextOptions()));
        return writer.ToString();
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void LooksAsStored(string format, string name) => Repository.AssertGolden($"formats/{name}.{format}", Render(format, Sample(name)));

    [Theory]
    [MemberData(nameof(Cases))]
    public void NothingSteersATerminal(string format, string name) =>
        Assert.DoesNotContain(Render(format, Sample(name)).Replace("\n", "", StringComparison.Ordinal).EnumerateRunes(), Printable.IsHazard);

    [Theory]
    [MemberData(nameof(Names))]
    public void JsonKeepsEveryTextAndItsSchema(string name)
    {
        var report = Sample(name);
        var text = Render("json", report);
        var json = JsonNode.Parse(text)!;
        using var document = JsonDocument.Parse(text);
        var result = Schema.Value.Evaluate(document.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List });
        Assert.True(result.IsValid, string.Join('\n', result.Details?.Where(d => d.Errors is not null).SelectMany(d => d.Errors!.Values) ?? []));
        var messages = json["findings"]!.AsArray().Select(f => f!["message"]!.GetValue<string>()).Order(StringComparer.Ordinal);
        Assert.Equal(report.Result.Findings.Select(f => Printable.WellFormed(f.Message)).Order(StringComparer.Ordinal), messages);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void MarkdownHasNoMarkupOfAFile(string name)
    {
        var fence = "";
        foreach (var line in Render("markdown", Sample(name)).Split('\n'))
        {
            var mark = Fence().Match(line).Value;
            if (mark.Length > 0 && fence.Length == 0)
            {
                fence = mark;
            }
            else if (fence.Length > 0)
            {
                fence = line == fence ? "" : fence;
            }
            else
            {
                // Outside code nothing is left but our own marks.
                var plain = Code().Replace(line, "");
                Assert.DoesNotContain('<', plain);
                Assert.DoesNotContain('@', plain);
                Assert.DoesNotContain("](", plain.Replace("\\]", "", StringComparison.Ordinal), StringComparison.Ordinal);
                Assert.DoesNotContain("://", plain, StringComparison.Ordinal);
                Assert.True(plain.Length == 0 || !plain.TrimStart().StartsWith('#') || plain.StartsWith("##", StringComparison.Ordinal), plain);
                Assert.DoesNotContain('|', plain.Replace("\\|", "", StringComparison.Ordinal));
            }
        }

        Assert.Empty(fence);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void GithubTakesBackWhatWasMeantAndNothingElse(string name)
    {
        var report = Sample(name);
        var lines = Render("github", report).TrimEnd('\n').Split('\n');
        var commands = lines.Where(l => l.TrimStart().StartsWith("::", StringComparison.Ordinal)).ToList();
        Assert.Equal(Math.Min(10, report.Result.Findings.Count) + report.Result.Faults.Count, commands.Count);
        foreach (var command in commands)
        {
            var parts = Command().Match(command);
            Assert.True(parts.Success, command);
            foreach (var property in parts.Groups["properties"].Value.Split(','))
            {
                Assert.Matches("^(file|line|endLine|col|endColumn|title)=[^:]*$", property);
            }
        }

        var files = commands.Select(c => FileOf().Match(c).Groups[1].Value).Where(f => f.Length > 0)
            .Select(f => f.Replace("%3A", ":", StringComparison.Ordinal).Replace("%2C", ",", StringComparison.Ordinal).Replace("%25", "%", StringComparison.Ordinal));
        Assert.Subset(report.Result.Findings.Select(f => Printable.Show(f.Place.File)).ToHashSet(), files.ToHashSet());
    }

    [Fact]
    public void GithubShowsTheTenGravestAndSaysHowManyWereCut()
    {
        var text = Render("github", Many());
        Assert.Equal(8, Regex.Count(text, "^::error ", RegexOptions.Multiline));
        Assert.Equal(2, Regex.Count(text, "^::warning ", RegexOptions.Multiline));
        Assert.Contains("\n14 more findings were cut", text, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void JunitIsXmlThatCountsRight(string name)
    {
        var report = Sample(name);
        var suites = XDocument.Parse(Render("junit", report)).Root!;
        Assert.Equal((int)suites.Attribute("failures")!, suites.Descendants("failure").Count());
        Assert.Equal((int)suites.Attribute("tests")!, suites.Descendants("testcase").Count());
        Assert.Equal(report.Result.Findings.Count(f => f.Level > Level.Note), suites.Descendants("failure").Count());
        Assert.Equal(suites.Elements("testsuite").Sum(s => (int)s.Attribute("tests")!), suites.Descendants("testcase").Count());
    }

    [Fact]
    public void MarkdownStaysUnderTheSizeOfACommentAndSaysWhatIsMissing()
    {
        var file = Samples.File("many.stock.json", Samples.PartB);
        var place = Samples.At(file, "\"200 g\"");
        var findings = Enumerable.Range(0, 1000).Select(i => Samples.Finding(Samples.Rule(), place, $"Finding {i}.", $"steps/{i}"));
        var text = Render("markdown", Samples.Report(findings, file));
        Assert.True(text.Length < 65_536, $"{text.Length} characters");
        var shown = Regex.Count(text, "^### ", RegexOptions.Multiline);
        Assert.Contains($"{1000 - shown} more findings are left out", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("=1+1", "'=1+1")]
    [InlineData("@SUM(A1)", "'@SUM(A1)")]
    [InlineData("-2", "'-2")]
    [InlineData(" =1", "' =1")]
    [InlineData("a,b", "\"a,b\"")]
    [InlineData("say \"x\"", "\"say \"\"x\"\"\"")]
    [InlineData("two\nlines", "two\\u000Alines")]
    [InlineData("plain", "plain")]
    public void ACellOfACsvFileIsNoFormula(string text, string cell) => Assert.Equal(cell, CsvEscape.Text(text));

    [GeneratedRegex("^`{3,}")]
    private static partial Regex Fence();

    [GeneratedRegex("(`+)(?!`).*?(?<!`)\\1(?!`)")]
    private static partial Regex Code();

    [GeneratedRegex("^::(error|warning|notice) (?<properties>[^:]*)::")]
    private static partial Regex Command();

    [GeneratedRegex("file=([^,:]*)")]
    private static partial Regex FileOf();
}
