using System.Xml.Linq;
using RecipeLint.Reports.Handbook;

namespace RecipeLint.Reports.Tests.Handbook;

/// <summary>The handbook, made once for all tests, with every page read as XML: a page that is not well-formed stops them all.</summary>
internal static class Book
{
    public const string Version = "0.0.0-test";

    private static readonly Lazy<IReadOnlyList<HandbookFile>> _files = new(() => RuleHandbook.Make(Version));

    private static readonly Lazy<SortedDictionary<string, XElement>> _pages = new(() => new(
        Files.Where(f => f.Path.EndsWith(".html", StringComparison.Ordinal)).ToDictionary(f => f.Path, f => Read(f.Text)), StringComparer.Ordinal));

    public static IReadOnlyList<HandbookFile> Files => _files.Value;

    public static SortedDictionary<string, XElement> Pages => _pages.Value;

    public static string Text(string path) => Files.Single(f => f.Path == path).Text;

    public static XElement Read(string html)
    {
        const string Start = "<!DOCTYPE html>\n";
        Assert.StartsWith(Start, html, StringComparison.Ordinal);
        return XDocument.Parse(html[Start.Length..], LoadOptions.PreserveWhitespace).Root!;
    }

    public static string? Attr(this XElement element, string name) => element.Attribute(XName.Get(name))?.Value;
}
