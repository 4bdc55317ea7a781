using System.Globalization;
using System.Xml.Linq;
using RecipeLint.Reports.Handbook;
using RecipeLint.Reports.Tests.Support;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.Tests.Handbook;

/// <summary>What holds for every page: it is whole, its links lead somewhere, and it reaches for nothing outside its folder.</summary>
public sealed class PageTests
{
    [Fact]
    public void EveryRuleHasAPageAndNoPageLacksARule() =>
        Assert.Equal(
            RuleBook.Descriptors.Select(d => $"rules/{d.Name}.html").Order(StringComparer.Ordinal),
            Book.Pages.Keys.Where(p => p.StartsWith("rules/", StringComparison.Ordinal)));

    [Fact]
    public void EveryPageSaysWhatItIsAndFitsAPhone()
    {
        foreach (var (path, html) in Book.Pages)
        {
            Assert.Equal("en", html.Attr("lang"));
            var head = html.Element("head")!;
            Assert.False(string.IsNullOrWhiteSpace(head.Element("title")?.Value), path);
            Assert.Contains(head.Elements("meta"), m => m.Attr("name") == "viewport" && m.Attr("content")!.Contains("width=device-width", StringComparison.Ordinal));
            Assert.Contains(head.Elements("meta"), m => m.Attr("charset") == "utf-8");
            Assert.True(head.Element("meta")!.Attr("charset") is not null, $"{path}: the encoding comes first");
        }

        var titles = Book.Pages.Values.Select(h => h.Element("head")!.Element("title")!.Value).ToList();
        Assert.Equal(titles.Count, titles.Distinct().Count());
    }

    [Fact]
    public void LandmarksAndHeadingsAreInOrder()
    {
        foreach (var (path, html) in Book.Pages)
        {
            var body = html.Element("body")!;
            Assert.Single(body.Elements("main"));
            Assert.Single(body.Elements("header"));
            Assert.Single(body.Elements("footer"));
            Assert.Equal("#main", body.Elements("a").First().Attr("href"));
            Assert.Single(body.Descendants("h1"));
            var last = 0;
            foreach (var heading in body.Descendants().Where(e => e.Name.LocalName is "h1" or "h2" or "h3" or "h4"))
            {
                var level = heading.Name.LocalName[1] - '0';
                Assert.True(level <= last + 1, $"{path}: h{level} '{heading.Value}' follows h{last}");
                Assert.False(string.IsNullOrWhiteSpace(heading.Value), path);
                last = level;
            }

            Assert.All(body.Descendants("nav").Append(body.Descendants("aside").FirstOrDefault() ?? new XElement("aside", new XAttribute("aria-label", "x"))), n =>
                Assert.True(n.Attr("aria-label") is not null || n.Attr("aria-labelledby") is not null, $"{path}: a landmark without a name"));
            Assert.All(body.Descendants("input"), i => Assert.Contains(body.Descendants("label"), l => l.Attr("for") == i.Attr("id")));
        }
    }

    [Fact]
    public void EveryLinkAndAnchorResolves()
    {
        var files = Book.Files.Select(f => f.Path).ToHashSet();
        var anchors = Book.Pages.ToDictionary(p => p.Key, p => p.Value.Descendants().Select(e => e.Attr("id")).OfType<string>().ToList());
        foreach (var (path, html) in Book.Pages)
        {
            Assert.Equal(anchors[path].Count, anchors[path].Distinct().Count());
            foreach (var target in html.Descendants().SelectMany(e => new[] { e.Attr("href"), e.Attr("src") }).OfType<string>())
            {
                var parts = target.Split('#');
                var file = parts[0].Length == 0 ? path : Resolve(path, parts[0]);
                Assert.True(files.Contains(file), $"{path}: '{target}' leads nowhere");
                Assert.True(parts.Length == 1 || anchors[file].Contains(parts[1]), $"{path}: '{target}' has no such anchor");
            }

            foreach (var id in html.Descendants().SelectMany(e => new[] { e.Attr("aria-labelledby"), e.Attr("for") }).OfType<string>()
                .SelectMany(i => i.Split(' ')))
            {
                // A label may be put together from several.
                Assert.Contains(id, anchors[path]);
            }
        }
    }

    [Fact]
    public void EveryPageCanBeReachedFromTheIndex()
    {
        var reached = new HashSet<string> { "index.html" };
        var pending = new Queue<string>(reached);
        while (pending.TryDequeue(out var path))
        {
            foreach (var target in Book.Pages[path].Descendants("a").Select(a => a.Attr("href")!.Split('#')[0]).Where(t => t.Length > 0))
            {
                var file = Resolve(path, target);
                if (reached.Add(file))
                {
                    pending.Enqueue(file);
                }
            }
        }

        Assert.Equal(Book.Pages.Keys, reached.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void NothingComesFromOutsideAndNothingRunsInLine()
    {
        foreach (var (path, html) in Book.Pages)
        {
            var policy = html.Descendants("meta").Single(m => m.Attr("http-equiv") == "Content-Security-Policy").Attr("content")!;
            Assert.Contains("default-src 'none'", policy, StringComparison.Ordinal);
            Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
            Assert.DoesNotContain("http", policy, StringComparison.Ordinal);
            foreach (var element in html.Descendants())
            {
                Assert.DoesNotContain(element.Attributes(), a => a.Name.LocalName == "style" || a.Name.LocalName.StartsWith("on", StringComparison.Ordinal));
                Assert.False(element.Name.LocalName is "style" or "iframe" or "img" or "object" or "form" or "base", $"{path}: <{element.Name}>");
                Assert.True(element.Name.LocalName != "script" || (element.Attr("src") is not null && element.Value.Length == 0), $"{path}: a script in the page");
                Assert.All(new[] { element.Attr("href"), element.Attr("src") }.OfType<string>(), t =>
                    Assert.False(t.Contains(':', StringComparison.Ordinal) || t.StartsWith('/'), $"{path}: '{t}' leaves the folder"));
            }
        }

        foreach (var file in Book.Files.Where(f => !f.Path.EndsWith(".html", StringComparison.Ordinal)))
        {
            string[] banned = ["http:", "https:", "url(", "@import", "fetch(", "XMLHttpRequest", "innerHTML", "eval(", "document.write", "WebSocket"];
            Assert.All(banned, b => Assert.DoesNotContain(b, file.Text, StringComparison.Ordinal));
        }
    }

    [Fact]
    public void TheSameProgramMakesTheSameBytesInAnyCulture()
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = TestCultures.Of("ar-SA");
            Assert.Equal(Book.Files, RuleHandbook.Make(Book.Version));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void FilesAreSortedEndTheirLinesPlainlyAndNameNoDay()
    {
        Assert.Equal(Book.Files.Select(f => f.Path).Order(StringComparer.Ordinal), Book.Files.Select(f => f.Path));
        Assert.All(Book.Files, f =>
        {
            Assert.DoesNotContain('\r', f.Text);
            Assert.EndsWith("\n", f.Text, StringComparison.Ordinal);
        });
    }

    [Fact]
    public void ACardLooksAsStored() => Repository.AssertGolden("handbook-rule.html", Book.Text("rules/ambiguous-number.html"));

    internal static string Resolve(string from, string target)
    {
        var parts = from.Split('/').SkipLast(1).ToList();
        foreach (var part in target.Split('/'))
        {
            if (part == "..")
            {
                Assert.NotEmpty(parts);
                parts.RemoveAt(parts.Count - 1);
            }
            else
            {
                parts.Add(part);
            }
        }

        return string.Join('/', parts);
    }
}
