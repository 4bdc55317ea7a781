using System.Text;
using System.Text.Json;
using RecipeLint.Recipes.Text;
using RecipeLint.Reports.Tests.Support;
using RecipeLint.Rules.Engine;
using Sarif = Microsoft.CodeAnalysis.Sarif;

namespace RecipeLint.Reports.Tests;

public sealed class SarifReportTests
{
    private static readonly SarifOptions _withSuppressed = new(IncludeSuppressed: true);

    public static TheoryData<string> Names => TextReportTests.Names;

    [Theory]
    [MemberData(nameof(Names))]
    public void ValidatesAgainstTheOASISSchema(string name)
    {
        Assert.Empty(SarifSchema.Problems(Render(TextReportTests.Sample(name))));
        Assert.Empty(SarifSchema.Problems(Render(TextReportTests.Sample(name), _withSuppressed)));
    }

    [Theory]
    [InlineData("\"startLine\": 8", "\"startLine\": 0")]
    [InlineData("\"ruleId\": ", "\"ruleID\": ")]
    [InlineData("\"utf16CodeUnits\"", "\"bytes\"")]
    [InlineData("\"level\": \"error\"", "\"level\": \"fatal\"")]
    public void TheSchemaCheckCanFail(string right, string wrong)
    {
        var log = Render(Samples.Mixed());
        Assert.Contains(right, log, StringComparison.Ordinal);
        Assert.NotEmpty(SarifSchema.Problems(log.Replace(right, wrong, StringComparison.Ordinal)));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void LooksAsStored(string name) => Repository.AssertGolden(name + ".sarif", Render(TextReportTests.Sample(name), _withSuppressed));

    [Fact]
    public void TheDescriptionOfARuleIsTheFirstParagraphOfItsWholeExplanation()
    {
        foreach (var rule in RuleBook.Descriptors)
        {
            var whole = MarkdownParser.Parse(rule.Explanation.Value).OfType<MarkdownBlock.Paragraph>().First();
            Assert.Equal(SarifText.Shorten(Sentences.Ended(MarkdownText.Inline(whole.Text))), SarifText.FullDescription(rule));
        }
    }

    [Theory]
    [InlineData("```\na\n\nb\n```\n\nThe text.\n\nMore.", "The text.")]
    [InlineData("# Title\n\n- one\n\n- two", "Said by its title.")]
    [InlineData("One line", "One line.")]
    public void ADescriptionIsFoundBehindWhatIsNoParagraph(string explanation, string description)
    {
        var rule = RuleBook.Descriptors[0] with { Title = "Said by its title", Explanation = new Lazy<string>(explanation) };
        Assert.Equal(description, SarifText.FullDescription(rule));
    }

    [Fact]
    public void HasNoByteOrderMarkAndEndsWithALineFeed()
    {
        using var stream = new MemoryStream();
        SarifReport.Write(stream, Samples.Mixed(), new SarifOptions());
        var bytes = stream.ToArray();
        Assert.Equal((byte)'{', bytes[0]);
        Assert.Equal((byte)'\n', bytes[^1]);
        Assert.DoesNotContain((byte)'\r', bytes);
        Assert.Equal(Render(Samples.Mixed()), Encoding.UTF8.GetString(bytes));
    }

    [Theory]
    [InlineData("tr-TR")]
    [InlineData("de-DE")]
    [InlineData("ar-SA")]
    public void IsTheSameInEveryCulture(string culture)
    {
        var expected = Samples.All().Select(s => Render(s.Report)).ToList();
        Assert.Equal(expected, TextReportTests.InCulture(culture, () => Samples.All().Select(s => Render(s.Report)).ToList()));
    }

    [Fact]
    public void ACleanRunHasAnEmptyResultArrayAndTheRules()
    {
        using var log = JsonDocument.Parse(Render(Samples.Clean()));
        var run = log.RootElement.GetProperty("runs")[0];
        Assert.Equal(0, run.GetProperty("results").GetArrayLength());
        Assert.Equal(2, run.GetProperty("tool").GetProperty("driver").GetProperty("rules").GetArrayLength());
        Assert.True(run.GetProperty("invocations")[0].GetProperty("executionSuccessful").GetBoolean());
        Assert.Equal("utf16CodeUnits", run.GetProperty("columnKind").GetString());
        Assert.Equal("recipelint/", run.GetProperty("automationDetails").GetProperty("id").GetString());
    }

    [Fact]
    public void ReadsBackWithTheLibraryAsItWasWritten()
    {
        var report = Samples.Mixed();
        var run = Load(Render(report)).Runs[0];
        var placed = PlacedFinding.InOrder(report.Result.Findings, report.Sources);
        Assert.Equal(placed.Count, run.Results.Count);
        foreach (var (expected, result) in placed.Zip(run.Results))
        {
            var finding = expected.Finding;
            Assert.Equal(finding.Rule.Id, result.RuleId);
            Assert.Equal(finding.Rule.Id, run.Tool.Driver.Rules[result.RuleIndex].Id);
            Assert.StartsWith(finding.Message, result.Message.Text, StringComparison.Ordinal);
            Assert.Equal(finding.Related.Count, result.RelatedLocations?.Count ?? 0);
            Assert.Equal(finding.Level.ToString(), result.Level.ToString());
            Assert.Equal(Fingerprint.Of(finding), result.PartialFingerprints["recipelint/v1"]);
            Assert.Single(result.PartialFingerprints);
            var physical = result.Locations[0].PhysicalLocation;
            Assert.Equal(finding.Place.File, physical.ArtifactLocation.Uri.OriginalString);
            Assert.Equal("%SRCROOT%", physical.ArtifactLocation.UriBaseId);
            Assert.Equal(report.Sources[finding.Place.File].Excerpt(expected.Spot.Bytes), physical.Region.Snippet.Text);
            Assert.Contains(physical.Region.Snippet.Text, physical.ContextRegion.Snippet.Text, StringComparison.Ordinal);
            Assert.Equal(Words.Of(finding.Certainty), result.GetProperty("certainty"));
        }
    }

    [Fact]
    public void ColumnsCountUTF16Units()
    {
        var file = Samples.File("a.stock.json", "{\"note\": \"水🥒é\", \"amount\": \"7,5 g\"}");
        var report = Samples.Report([Samples.Finding(Samples.Rule(), Samples.At(file, "\"7,5 g\""), "Two readings.")], file);
        var region = Load(Render(report)).Runs[0].Results[0].Locations[0].PhysicalLocation.Region;
        Assert.Equal((1, 28, 1, 35), (region.StartLine, region.StartColumn, region.EndLine, region.EndColumn));
    }

    [Fact]
    public void RelatedPlacesAreLinkedFromTheMessage()
    {
        var result = Load(Render(Samples.Mixed())).Runs[0].Results.Single(r => r.RuleId == "RL9101");
        Assert.EndsWith("See: [the calcium comes from here](1); [dosed from here](2).", result.Message.Text, StringComparison.Ordinal);
        Assert.Equal([1, 2], result.RelatedLocations.Select(l => (int)l.Id));
    }

    /// <summary>A level that is left out means the rule's default; a shop that lowered it would be overruled.</summary>
    [Theory]
    [InlineData(Level.Error)]
    [InlineData(Level.Warning)]
    [InlineData(Level.Note)]
    public void ALevelChangedByTheShopIsWrittenOut(Level level)
    {
        var file = Samples.File("a.stock.json", "{}");
        var finding = Samples.Finding(Samples.Rule(level: Level.Error), Samples.At(file, "{}"), "Text.") with { Level = level };
        using var log = JsonDocument.Parse(Render(Samples.Report([finding], file)));
        var result = log.RootElement.GetProperty("runs")[0].GetProperty("results")[0];
        Assert.Equal(Words.Of(level), result.GetProperty("level").GetString());
    }

    [Fact]
    public void SuppressedFindingsAreLeftOutUnlessAskedFor()
    {
        var report = Samples.WithSuppressed();
        Assert.Equal(2, Load(Render(report)).Runs[0].Results.Count);
        var results = Load(Render(report, _withSuppressed)).Runs[0].Results;
        Assert.Equal(3, results.Count);
        var suppression = Assert.Single(results.Single(r => r.Suppressions?.Count > 0).Suppressions);
        Assert.Equal(Sarif.SuppressionKind.External, suppression.Kind);
        Assert.Equal("The label of this shop says 10 mL/L.", suppression.Justification);
    }

    [Fact]
    public void ABrokenRuleMakesTheRunUnsuccessful()
    {
        var invocation = Load(Render(Samples.Faulty())).Runs[0].Invocations[0];
        Assert.False(invocation.ExecutionSuccessful);
        var notification = Assert.Single(invocation.ToolExecutionNotifications);
        Assert.Equal(Sarif.FailureLevel.Error, notification.Level);
        Assert.Equal("RL9101", notification.AssociatedRule.Id);
    }

    [Fact]
    public void OfTooManyResultsTheWorstStayAndTheLogSaysSo()
    {
        var file = Samples.File("a.stock.json", "[" + string.Concat(Enumerable.Repeat("1,", 6000)) + "1]");
        var findings = Enumerable.Range(0, 6000).Select(i => Samples.Finding(
            Samples.Rule(), Place.Whole(file.Path) with { Range = new ByteSpan(1 + (2 * i), 1) }, "Text.") with
        { Level = i < 5500 ? Level.Note : Level.Error });
        var log = Render(Samples.Report(findings, file));
        var run = Load(log).Runs[0];
        Assert.Equal(SarifReport.MaxResults, run.Results.Count);
        Assert.Equal(500, run.Results.Count(r => r.Level == Sarif.FailureLevel.Error));
        Assert.Contains("1000 more results are left out", Assert.Single(run.Invocations[0].ToolExecutionNotifications).Message.Text, StringComparison.Ordinal);
        Assert.True(run.Invocations[0].ExecutionSuccessful);
        Assert.True(log.Length < 12_000_000, $"{log.Length} characters");
    }

    /// <summary>Every region lies in its file and its snippet is the text there (columns counted over the decoded text).</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void EveryRegionLiesInItsFile(string name)
    {
        var report = TextReportTests.Sample(name);
        var regions = 0;
        foreach (var result in Load(Render(report, _withSuppressed)).Runs[0].Results)
        {
            foreach (var physical in result.Locations.Concat(result.RelatedLocations ?? []).Select(l => l.PhysicalLocation))
            {
                var path = string.Join('/', physical.ArtifactLocation.Uri.OriginalString.Split('/').Select(Uri.UnescapeDataString));
                if (!report.Sources.TryGetValue(path, out var source))
                {
                    Assert.Equal("not-read.stock.json", path);
                    continue;
                }

                var text = Encoding.UTF8.GetString(source.Bytes);
                foreach (var region in new[] { physical.Region, physical.ContextRegion }.Where(r => r is not null))
                {
                    regions++;
                    var start = Index(text, region.StartLine, region.StartColumn);
                    var end = Index(text, region.EndLine, region.EndColumn);
                    Assert.InRange(start, 0, text.Length);
                    Assert.InRange(end, start, text.Length);
                    if (region.Snippet is { } snippet)
                    {
                        Assert.Equal(text[start..end], snippet.Text);
                    }
                }

                if (physical.ContextRegion is { } context)
                {
                    Assert.True(Index(text, context.StartLine, context.StartColumn) <= Index(text, physical.Region.StartLine, physical.Region.StartColumn));
                    Assert.True(Index(text, context.EndLine, context.EndColumn) >= Index(text, physical.Region.EndLine, physical.Region.EndColumn));
                    Assert.True(context.Snippet.Text.Length > (physical.Region.Snippet?.Text.Length ?? 0));
                }
            }
        }

        Assert.True(regions > 0 || report.Result.Findings.Count == 0);
    }

    [Fact]
    public void HostileTextIsTrueInTheLogButHarmlessOnATerminal()
    {
        var log = Render(Samples.Hostile());
        Assert.DoesNotContain(log.EnumerateRunes(), r => r.Value != '\n' && Printable.IsHazard(r));
        var result = Load(log).Runs[0].Results.Single(r => r.RelatedLocations?.Count == 2);
        Assert.StartsWith("Message \u0007with \u001b\\]8;;x\u001b\\ and \uFFFD", result.Message.Text, StringComparison.Ordinal);
        Assert.Contains("a lone half, {{0}} braces, a \\[link\\](http://example.org) and\nnew line.", result.Message.Text, StringComparison.Ordinal);
        var uri = result.Locations[0].PhysicalLocation.ArtifactLocation.Uri;
        Assert.Equal(Samples.Hostile().Result.Findings[0].Place.File, Uri.UnescapeDataString(uri.OriginalString));
        Assert.DoesNotContain(uri.OriginalString, c => c is ':' or ' ' or '\n' or '#' or '?' or '[' || c > 126);
        Assert.Equal("\"\u009B\u200B水🥒e\u0301 {0}\"", result.RelatedLocations[0].PhysicalLocation.Region.Snippet.Text);
    }

    [Fact]
    public void RulesCarryTheirMetadata()
    {
        var run = Load(Render(Samples.Mixed())).Runs[0];
        var rule = run.Tool.Driver.Rules.Single(r => r.Id == "RL9101");
        Assert.Equal("CalciumMeetsSulfate", rule.Name);
        Assert.Equal("Calcium and sulfate stand in one concentrated part.", rule.ShortDescription.Text);
        Assert.Equal(
            "A part that holds both calcium and sulfate above what gypsum (https://example.org/gypsum) leaves dissolved. It is not about the tank.",
            rule.FullDescription.Text);
        Assert.Equal(Samples.Explanation, rule.Help.Markdown);
        Assert.Contains("WHY IT MATTERS", rule.Help.Text.ToUpperInvariant(), StringComparison.Ordinal);
        Assert.True(rule.HelpUri.IsAbsoluteUri);
        Assert.Equal("high", rule.GetProperty("precision"));
        Assert.Equal("error", rule.GetProperty("problem.severity"));
        Assert.Equal(["estimate", "samples"], rule.Tags.Order(StringComparer.Ordinal));
        Assert.Contains("{0}", rule.MessageStrings["found"].Text, StringComparison.Ordinal);
        var silent = run.Tool.Driver.Rules.Single(r => r.Id == "RL9102");
        Assert.Contains("recipelint explain RL9102", silent.Help.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void TheRulesOfTheProgramGiveAValidLog()
    {
        var file = Samples.File("a.stock.json", "{}");
        var findings = RuleBook.Descriptors.Select(d => Samples.Finding(d, Samples.At(file, "{}"), "Text."));
        var report = Samples.Report(findings, file) with { Rules = RuleBook.Descriptors };
        var log = Render(report);
        Assert.Empty(SarifSchema.Problems(log));
        var rules = Load(log).Runs[0].Tool.Driver.Rules;
        Assert.NotEmpty(rules);
        Assert.All(rules, r => Assert.InRange(r.FullDescription.Text.Length, 1, SarifText.MaxDescription));
        Assert.All(rules, r => Assert.InRange(r.ShortDescription.Text.Length, 1, SarifText.MaxDescription));
    }

    [Fact]
    public void OnlyOneFolderKnowsTheSarifLibrary()
    {
        var source = Path.Combine(Repository.Root, "src");
        var files = Directory.EnumerateFiles(source, "*.cs", SearchOption.AllDirectories)
            .Where(f => !f.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
            .Where(f => File.ReadAllText(f) is var text && (text.Contains("Microsoft.CodeAnalysis.Sarif", StringComparison.Ordinal) || text.Contains("Newtonsoft", StringComparison.Ordinal)))
            .Select(Path.GetFileName)
            .Order(StringComparer.Ordinal);
        Assert.Equal(["SarifContracts.cs", "SarifContracts.generated.cs", "SarifLogMerger.cs", "SarifLogWriter.cs"], files);
    }

    private static int Index(string text, int line, int column)
    {
        var at = 0;
        for (var i = 1; i < line; i++)
        {
            var end = text.IndexOfAny(['\r', '\n'], at);
            Assert.True(end >= 0, $"line {line} is past the end");
            at = end + (text[end] == '\r' && end + 1 < text.Length && text[end + 1] == '\n' ? 2 : 1);
        }

        return at + column - 1;
    }

    private static string Render(Report report, SarifOptions? options = null)
    {
        using var writer = new StringWriter();
        SarifReport.Write(writer, report, options ?? new SarifOptions());
        return writer.ToString();
    }

    private static Sarif.SarifLog Load(string log)
    {
        using var stream = new MemoryStream(Encoding.UTF8.GetBytes(log));
        return Sarif.SarifLog.Load(stream);
    }
}
