using System.Globalization;
using System.Text.RegularExpressions;
using RecipeLint.Recipes.Text;
using RecipeLint.Reports.Tests.Support;

namespace RecipeLint.Reports.Tests;

public sealed partial class TextReportTests
{
    public static TheoryData<string> Names => [.. Samples.All().Select(s => s.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void LooksAsStored(string name) => Repository.AssertGolden(name + ".txt", Render(Sample(name), new TextOptions()));

    [Theory]
    [MemberData(nameof(Names))]
    public void LooksAsStoredWhenQuiet(string name) =>
        Repository.AssertGolden(name + ".quiet.txt", Render(Sample(name), new TextOptions(Quiet: true)));

    [Fact]
    public void LooksAsStoredInColor() => Repository.AssertGolden("mixed.color.txt", Render(Samples.Mixed(), new TextOptions(Color: true)));

    [Theory]
    [MemberData(nameof(Names))]
    public void ColorAddsNothingButColor(string name)
    {
        var colored = Render(Sample(name), new TextOptions(Color: true));
        var stripped = string.Join('\n', Sgr().Replace(colored, "").Split('\n').Select(l => l.TrimEnd(' ')));
        Assert.Equal(Render(Sample(name), new TextOptions()), stripped);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void IsPrintableAndNoCommandOfABuildServer(string name)
    {
        foreach (var quiet in new[] { false, true })
        {
            var text = Render(Sample(name), new TextOptions(Quiet: quiet));
            foreach (var line in text.Split('\n'))
            {
                Assert.DoesNotContain(line.EnumerateRunes(), Printable.IsHazard);
                Assert.False(line.TrimStart().StartsWith("::", StringComparison.Ordinal), line);
                Assert.DoesNotContain("##[", line, StringComparison.Ordinal);
                Assert.DoesNotContain("##vso[", line, StringComparison.Ordinal);
                Assert.Equal(line.TrimEnd(), line);
            }
        }
    }

    [Theory]
    [InlineData(60)]
    [InlineData(80)]
    [InlineData(100)]
    public void OnlyAPositionLineMayBeWiderThanAsked(int width)
    {
        foreach (var (_, report) in Samples.All())
        {
            foreach (var quiet in new[] { false, true })
            {
                var lines = Render(report, new TextOptions(Width: width, Quiet: quiet)).Split('\n');
                Assert.All(lines, l => Assert.True(DisplayWidth.Of(l) <= width || PositionLine().IsMatch(l), $"{DisplayWidth.Of(l)} columns: {l}"));
            }
        }
    }

    [Theory]
    [InlineData("tr-TR")]
    [InlineData("de-DE")]
    [InlineData("ar-SA")]
    public void IsTheSameInEveryCulture(string culture)
    {
        var expected = Samples.All().Select(s => Render(s.Report, new TextOptions())).ToList();
        Assert.Equal(expected, InCulture(culture, () => Samples.All().Select(s => Render(s.Report, new TextOptions())).ToList()));
    }

    [Fact]
    public void TheOrderFindingsComeInDoesNotMatter()
    {
        var report = Samples.Mixed();
        var reversed = report with { Result = report.Result with { Findings = [.. report.Result.Findings.Reverse()] } };
        Assert.Equal(Render(report, new TextOptions()), Render(reversed, new TextOptions()));
    }

    [Fact]
    public void CaretsStandUnderWhatTheyMarkBehindWideCharacters()
    {
        var file = Samples.File("a.stock.json", "{\"note\": \"水🥒é\", \"amount\": \"7,5 g\"}");
        var report = Samples.Report([Samples.Finding(Samples.Rule(), Samples.At(file, "\"7,5 g\""), "Two readings.")], file);
        var lines = Render(report, new TextOptions()).Split('\n');
        var index = Array.FindIndex(lines, l => l.Contains('^'));
        var columnsBefore = lines[index].IndexOf('^', StringComparison.Ordinal);
        var source = lines[index - 1];
        var before = source[..source.IndexOf("\"7,5 g\"", StringComparison.Ordinal)];
        Assert.Equal(DisplayWidth.Of(before), columnsBefore);
        Assert.Equal("\"7,5 g\"".Length, lines[index].Trim().Length);

        // The position counts UTF-16 units, as editors do: 水 is one, 🥒 two.
        Assert.StartsWith("a.stock.json:1:28: error", lines[0], StringComparison.Ordinal);
    }

    [Fact]
    public void ACleanRunIsOneFriendlyLine()
    {
        var text = Render(Samples.Clean(), new TextOptions());
        Assert.Equal("2 files checked, and no rule objects.\n", text);
    }

    [Fact]
    public void TenThousandFindingsOnOneLongLineTakeLittleTime()
    {
        var file = Samples.File("long.stock.json", "[" + string.Concat(Enumerable.Repeat("\"0123456789\",", 20_000)) + "1]");
        var rule = Samples.Rule();
        var findings = Enumerable.Range(0, 10_000)
            .Select(i => Samples.Finding(rule, Place.Whole(file.Path) with { Range = new ByteSpan(1 + (13 * i), 12) }, "Too long a line."));
        var clock = System.Diagnostics.Stopwatch.StartNew();
        Render(Samples.Report(findings, file), new TextOptions());
        Assert.True(clock.Elapsed < TimeSpan.FromSeconds(20), clock.Elapsed.ToString());
    }

    internal static T InCulture<T>(string name, Func<T> run)
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = TestCultures.Of(name);
            return run();
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    internal static Report Sample(string name) => Samples.All().Single(s => s.Name == name).Report;

    private static string Render(Report report, TextOptions options)
    {
        using var writer = new StringWriter();
        TextReport.Write(writer, report, options);
        return writer.ToString();
    }

    [GeneratedRegex("\u001b\\[[0-9;]*m")]
    private static partial Regex Sgr();

    [GeneratedRegex(@"^ *\S.*:\d+:\d+:")]
    private static partial Regex PositionLine();
}
