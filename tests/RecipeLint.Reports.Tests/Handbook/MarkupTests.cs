using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using RecipeLint.Reports.Handbook;
using RecipeLint.Reports.Markup;

namespace RecipeLint.Reports.Tests.Handbook;

/// <summary>The small parts: escaping, formulas, Markdown, colours.</summary>
public sealed partial class MarkupTests
{
    [Fact]
    public void ValuesAreEscapedAndMarkupIsNot()
    {
        var hostile = "<script>alert('x')</script> & \"quoted\" \u202Ebackwards\u0000";
        Assert.Equal(
            "<p title=\"&lt;script&gt;alert(&#39;x&#39;)&lt;/script&gt; &amp; &quot;quoted&quot; \\u202Ebackwards\\u0000\"><b>1</b></p>",
            Html.Of($"<p title=\"{hostile}\">{Html.Of($"<b>{1}</b>")}</p>").ToString());
    }

    /// <summary>Names, notes and values of a file, and the name of the file itself, all try to become markup.</summary>
    [Fact]
    public void AHostileFileStaysText()
    {
        const string Stock =
            """
            {
              "format": 1,
              "name": "</code><script>alert(1)</script>",
              "makes": "1 L",
              "steps": [
                { "pour": "700 mL" },
                { "add": "calcium-nitrate-4h2o", "amount": "90 g", "note": "<img src=x onerror=alert(1)>" },
                { "add": "magnesium-sulfate-7h2o", "amount": "45 g\" onclick=\"x" },
                { "add": "<svg/onload=alert(1)>", "amount": "1 g" },
                { "topUp": "1 L" }
              ]
            }
            """;
        var folder = new ShelfFolder("failing-hostile", [("<b>&.stock.json", Encoding.UTF8.GetBytes(Stock.Replace("\\\"", "\\u0022", StringComparison.Ordinal)))], new Dictionary<string, string>());
        var judged = folder.Judge();
        Assert.NotEmpty(judged.Findings);
        var html = RulePage.Files(judged, judged.Findings) + Html.Join(judged.Findings.Select(f => FindingCard.Of(f, new PageLinks(""))));

        var read = XElement.Parse($"<x>{html}</x>");
        string[] allowed = ["figure", "figcaption", "div", "pre", "code", "span", "mark", "p", "a", "ul", "li", "sub", "sup"];
        Assert.All(read.Descendants(), e => Assert.Contains(e.Name.LocalName, allowed));
        Assert.All(read.Descendants().SelectMany(e => e.Attributes()), a => Assert.Contains(a.Name.LocalName, new[] { "class", "href", "tabindex" }));
        Assert.Contains("<script>alert(1)</script>", read.Value, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("gypsum, CaSO4·2H2O, or", "gypsum, CaSO<sub>4</sub>·2H<sub>2</sub>O, or")]
    [InlineData("K2Ca(SO4)2·H2O.", "K<sub>2</sub>Ca(SO<sub>4</sub>)<sub>2</sub>·H<sub>2</sub>O.")]
    [InlineData("(as CaCO3) and (P2O5 read as P)", "(as CaCO<sub>3</sub>) and (P<sub>2</sub>O<sub>5</sub> read as P)")]
    [InlineData("Ca2+ and Fe3+ and K+", "Ca<sup>2+</sup> and Fe<sup>3+</sup> and K<sup>+</sup>")]
    [InlineData("NH4+ and HPO4 2- and NO3-N", "NH<sub>4</sub><sup>+</sup> and HPO<sub>4</sub><sup>2-</sup> and NO<sub>3</sub>-N")]
    [InlineData("as H2PO4-. KNO3-NaNO3, NO3- or", "as H<sub>2</sub>PO<sub>4</sub><sup>-</sup>. KNO<sub>3</sub>-NaNO<sub>3</sub>, NO<sub>3</sub><sup>-</sup> or")]
    [InlineData("CO2 and O2", "CO<sub>2</sub> and O<sub>2</sub>")]
    [InlineData("K + Ca, H411, EUH031, B12, A1, MINTEQA2, F.2.2.1, part B2, RL0101, 2 L", "K + Ca, H411, EUH031, B12, A1, MINTEQA2, F.2.2.1, part B2, RL0101, 2 L")]
    public void FormulasGetTheirSmallFigures(string text, string html) => Assert.Equal(html, ChemicalText.Of(text).ToString());

    [Theory]
    [InlineData("a *slanted* **strong** `code <x>`", "<p>a <em>slanted</em> <strong>strong</strong> <code>code &lt;x&gt;</code></p>\n")]
    [InlineData("see `some-rule` and [text](https://example.org)", "<p>see <a href=\"some-rule.html\"><code>some-rule</code></a> and text (https://example.org)</p>\n")]
    [InlineData("- one\n- two\n  - inner\n- three", "<ul>\n<li>one</li>\n<li>two\n<ul>\n<li>inner</li>\n</ul>\n</li>\n<li>three</li>\n</ul>\n")]
    [InlineData("1. one\n2. two\n\n- other", "<ol>\n<li>one</li>\n<li>two</li>\n</ol>\n<ul>\n<li>other</li>\n</ul>\n")]
    [InlineData("# Top\n\n## Next", "<h3>Top</h3>\n<h4>Next</h4>\n")]
    [InlineData("```json\n{ \"a\": 1 }\n```", "<div class=\"code\" tabindex=\"0\"><pre><code>{ &quot;a&quot;: 1 }\n</code></pre></div>\n")]
    [InlineData("> said", "<blockquote><p>said</p></blockquote>\n")]
    [InlineData("**open", "<p>**open</p>\n")]
    public void MarkdownBecomesMarkup(string markdown, string html) =>
        Assert.Equal(html, new MarkdownHtml(name => name == "some-rule" ? "some-rule.html" : null).Render(markdown).ToString());

    [Fact]
    public void EveryExplanationKeepsItsWords()
    {
        foreach (var rule in RecipeLint.Rules.Engine.RuleBook.Descriptors)
        {
            // In one piece: small figures and marks must not tear a word apart.
            var html = XElement.Parse($"<x>{BlockEnd().Replace(new MarkdownHtml(_ => null).Render(rule.Explanation.Value).ToString(), " $0")}</x>", LoadOptions.PreserveWhitespace);
            var plain = MarkdownText.Render(rule.Explanation.Value, 10_000);
            Assert.Equal(Word().Matches(plain).Select(m => m.Value), Word().Matches(html.Value).Select(m => m.Value));
        }
    }

    /// <summary>WCAG 2.2, success criterion 1.4.3 (level AA): 4.5 to 1 for text. The relative luminance is the one it defines (recalled).</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void TextStandsOutFromItsGround(bool dark)
    {
        var css = Book.Text("handbook.css");
        var light = Variables(css[..css.IndexOf("@media (prefers-color-scheme: dark)", StringComparison.Ordinal)]);
        var night = css[css.IndexOf("@media (prefers-color-scheme: dark)", StringComparison.Ordinal)..];
        var colours = dark ? Variables(night[..night.IndexOf("\n}\n", StringComparison.Ordinal)]) : light;
        string[] grounds = ["--paper", "--card", "--code", "--caution"];
        foreach (var ground in grounds)
        {
            foreach (var ink in new[] { "--ink", "--soft", "--link", "--error", "--warning", "--note" })
            {
                Assert.All(colours[ground], g => Assert.All(colours[ink], i => Assert.True(Contrast(g, i) >= 4.5, $"{ink} {i} on {ground} {g}: {Contrast(g, i):F2}")));
            }
        }

        Assert.All(colours["--tint"], t => Assert.True(Contrast(t, colours["--card"][0]) >= 4.5, $"--tint {t}: {Contrast(t, colours["--card"][0]):F2}"));
        Assert.True(Contrast(colours["--mark"][0], colours["--mark-ink"][0]) >= 4.5);
        Assert.True(Contrast(colours["--new"][0], colours["--ink"][0]) >= 4.5);
        Assert.True(Contrast(colours["--focus"][0], colours["--card"][0]) >= 3, "WCAG 2.2, 1.4.11: 3 to 1 for what is no text");
    }

    private static ILookup<string, string> LookupOf(string css) =>
        Variable().Matches(css).ToLookup(m => m.Groups[1].Value, m => m.Groups[2].Value);

    private static Dictionary<string, List<string>> Variables(string css) => LookupOf(css).ToDictionary(g => g.Key, g => g.ToList());

    private static double Contrast(string one, string other)
    {
        var (a, b) = (Luminance(one), Luminance(other));
        return (Math.Max(a, b) + 0.05) / (Math.Min(a, b) + 0.05);
    }

    private static double Luminance(string colour)
    {
        double Channel(int at)
        {
            var value = int.Parse(colour.AsSpan(at, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture) / 255.0;
            return value <= 0.04045 ? value / 12.92 : Math.Pow((value + 0.055) / 1.055, 2.4);
        }

        return (0.2126 * Channel(1)) + (0.7152 * Channel(3)) + (0.0722 * Channel(5));
    }

    [GeneratedRegex(@"(--[a-z-]+): (#[0-9a-f]{6})")]
    private static partial Regex Variable();

    [GeneratedRegex("</(p|li|h[1-6]|td|th|pre)>")]
    private static partial Regex BlockEnd();

    [GeneratedRegex(@"[\w.]*\w")]
    private static partial Regex Word();
}
