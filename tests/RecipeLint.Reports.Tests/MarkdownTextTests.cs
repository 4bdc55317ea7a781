using System.Text.RegularExpressions;
using RecipeLint.Reports.Tests.Support;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.Tests;

public sealed partial class MarkdownTextTests
{
    public static TheoryData<string> Explanations => ["sample", .. RuleBook.Descriptors.Select(d => d.Name)];

    [Fact]
    public void LooksAsStored() => Repository.AssertGolden("explanation.txt", MarkdownText.Render(Samples.Explanation, 72));

    [Fact]
    public void ColorAddsNothingButColor() =>
        Assert.Equal(MarkdownText.Render(Samples.Explanation, 72), Sgr().Replace(MarkdownText.Render(Samples.Explanation, 72, color: true), ""));

    [Theory]
    [InlineData("a **strong** and *slanted* and _both_ word", "a strong and slanted and both word")]
    [InlineData("***all***", "all")]
    [InlineData("2 * 3 * 4 and MgSO4*7H2O and a_b_c", "2 * 3 * 4 and MgSO4*7H2O and a_b_c")]
    [InlineData("`KH2PO4 * x_y_z`", "`KH2PO4 * x_y_z`")]
    [InlineData("[text](https://example.org) and [inside](#why)", "text (https://example.org) and inside")]
    [InlineData("<https://example.org>", "https://example.org")]
    [InlineData("a \\* b \\| c", "a * b | c")]
    [InlineData("a [bracket] (alone)", "a [bracket] (alone)")]
    [InlineData("5 < 6 and 7 > 6", "5 < 6 and 7 > 6")]
    [InlineData("esc\u001b[31m", "esc\\u001B[31m")]
    public void InlineMarksTurnToPlainText(string markdown, string text) => Assert.Equal(text, MarkdownText.Inline(markdown));

    [Theory]
    [MemberData(nameof(Explanations))]
    public void EveryExplanationFitsAndKeepsItsWords(string name)
    {
        var markdown = Explanation(name);
        foreach (var width in new[] { 60, 100 })
        {
            var text = MarkdownText.Render(markdown, width);
            foreach (var line in text.Split('\n'))
            {
                // Four blanks before it: code, which is not wrapped.
                Assert.True(DisplayWidth.Of(line) <= width || line.StartsWith("    ", StringComparison.Ordinal), line);
            }

            var shown = Word().Matches(text).Select(m => m.Value).ToHashSet(StringComparer.Ordinal);
            var fences = Regex.Matches(markdown, "(?m)^ *```(\\w+)").Select(m => m.Groups[1].Value).ToHashSet(StringComparer.Ordinal);
            var anchors = Regex.Matches(markdown, "\\(#([^)]*)\\)").SelectMany(m => Word().Matches(m.Groups[1].Value)).Select(m => m.Value);
            var missing = Word().Matches(markdown).Select(m => m.Value).Where(w => w.Length < 20 && !shown.Contains(w)).Except(fences).Except(anchors);
            Assert.Empty(missing);
        }
    }

    [Theory]
    [MemberData(nameof(Explanations))]
    public void NoMarkOfTheMarkdownIsLeft(string name)
    {
        foreach (var line in MarkdownText.Render(Explanation(name)).Split('\n').Where(l => !l.StartsWith("    ", StringComparison.Ordinal)))
        {
            var outsideCode = Regex.Replace(line, "`[^`]*`?", "");
            Assert.DoesNotContain("**", outsideCode, StringComparison.Ordinal);
            Assert.DoesNotContain("](", outsideCode, StringComparison.Ordinal);
            Assert.DoesNotContain("```", line, StringComparison.Ordinal);
            Assert.False(line.TrimStart().StartsWith('#') || line.TrimStart().StartsWith('|') || line.TrimStart().StartsWith('>'), line);
        }
    }

    private static string Explanation(string name) => name == "sample" ? Samples.Explanation : RuleBook.Find(name)!.Explanation.Value;

    [GeneratedRegex("\u001b\\[[0-9;]*m")]
    private static partial Regex Sgr();

    [GeneratedRegex(@"[\p{L}\p{Nd}]+")]
    private static partial Regex Word();
}
