using RecipeLint.Reports.Markup;

namespace RecipeLint.Reports.Handbook;

/// <summary>One file of the handbook.</summary>
/// <param name="Path">Relative to the handbook's folder, forward slashes.</param>
/// <param name="Text">LF line ends.</param>
public sealed record HandbookFile(string Path, string Text);

/// <summary>Relative addresses of the pages as seen from one of them.</summary>
/// <param name="Up">"" at the top of the handbook, "../" one folder down.</param>
internal sealed record PageLinks(string Up)
{
    public string Index => Up + "index.html";

    public string FirstWeek => Up + "first-week.html";

    public string Reading => Up + "reading-a-finding.html";

    public string Files => Up + "files-and-units.html";

    public string Lesson(string family) => $"{Up}lessons/{family}.html";

    public string Rule(string name) => $"{Up}rules/{name}.html";

    public string Day(int day) => $"{Up}week/day-{day}.html";
}

/// <summary>The frame around every page.</summary>
/// <param name="Path">Of the file.</param>
/// <param name="Title">Plain words; the handbook's name is added.</param>
/// <param name="Kind">Class of the body: "rule precipitation".</param>
internal sealed record Page(string Path, string Title, string Kind, string ToolVersion)
{
    private const string Policy = "default-src 'none'; style-src 'self'; script-src 'self'; base-uri 'none'; form-action 'none'";

    public PageLinks Links { get; } = new(Path.Contains('/', StringComparison.Ordinal) ? "../" : "");

    /// <param name="main">What the page is about, from its first-level heading on.</param>
    /// <param name="scripts">Files at the top of the handbook that the page runs.</param>
    public HandbookFile With(Html main, params IReadOnlyList<string> scripts)
    {
        var running = Html.Join(scripts.Select(s => Html.Of($"<script src=\"{Links.Up}{s}\" defer=\"defer\"></script>\n")));
        var title = Path == "index.html" ? Title : $"{Title} - RecipeLint rule book";
        var html = Html.Of(
            $"""
            <!DOCTYPE html>
            <html lang="en">
            <head>
            <meta charset="utf-8"/>
            <meta http-equiv="Content-Security-Policy" content="{Policy}"/>
            <meta name="viewport" content="width=device-width, initial-scale=1"/>
            <meta name="color-scheme" content="light dark"/>
            <title>{title}</title>
            <link rel="stylesheet" href="{Links.Up}handbook.css"/>
            {running}</head>
            <body class="{Kind}">
            <a class="skip" href="#main">Skip to the text</a>
            <header class="top">
            <p class="book"><a href="{Links.Index}">Rule book</a></p>
            <nav aria-label="Handbook">
            <ul>
            <li>{Link(Links.Index + "#find", "Find", "")}</li>
            <li>{Link(Links.FirstWeek, "First week", "first-week.html")}</li>
            <li>{Link(Links.Reading, "Findings", "reading-a-finding.html")}</li>
            <li>{Link(Links.Files, "Files", "files-and-units.html")}</li>
            </ul>
            </nav>
            </header>
            <main id="main">
            {main}</main>
            <footer>
            <p>RecipeLint computes; it does not taste, smell or see. Safety data sheets, local codes and licensed practice come first.</p>
            <p>RecipeLint {ToolVersion}. Examples are invented: never mix one.</p>
            </footer>
            </body>
            </html>

            """);
        return new HandbookFile(Path, html.ToString());
    }

    private Html Link(string target, string text, string own) =>
        own == Path ? Html.Of($"<a href=\"{target}\" aria-current=\"page\">{text}</a>") : Html.Of($"<a href=\"{target}\">{text}</a>");
}
