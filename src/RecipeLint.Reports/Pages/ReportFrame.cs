using System.Security.Cryptography;
using System.Text;
using RecipeLint.Reports.Handbook;
using RecipeLint.Reports.Markup;

namespace RecipeLint.Reports.Pages;

/// <summary>
/// The frame of a page that is one file: style and script stand in it, and its policy lets it run these and reach for nothing. It looks
/// like the rule book because it has the rule book's sheet.
/// </summary>
/// <param name="Up">Address of the overview; null on a page of its own.</param>
internal sealed record ReportFrame(string Title, string? Up, string ToolVersion)
{
    /// <param name="main">From the first-level heading on.</param>
    /// <param name="script">Name of a script that stands in the page; null for none.</param>
    /// <param name="moreStyle">Name of a sheet beside the common ones; null for none.</param>
    public string With(Html main, string? script = null, string? moreStyle = null)
    {
        var style = EmbeddedText.Read("handbook/handbook.css") + EmbeddedText.Read("pages/report.css")
            + (moreStyle is null ? "" : EmbeddedText.Read(moreStyle));
        var code = script is null ? "" : EmbeddedText.Read(script);
        var policy =
            $"default-src 'none'; style-src '{Digest(style)}'; script-src {(code.Length == 0 ? "'none'" : $"'{Digest(code)}'")}; base-uri "
                + "'none'; form-action 'none'";
        var running = code.Length == 0 ? Html.Empty : Html.Of($"<script>{Html.Drawn(code)}</script>\n");
        var back = Up is { } up
            ? Html.Of($"<nav aria-label=\"Report\"><ul><li><a href=\"{up}\">Overview</a></li></ul></nav>\n")
            : Html.Empty;
        return Html.Of(
            $"""
            <!DOCTYPE html>
            <html lang="en">
            <head>
            <meta charset="utf-8"/>
            <meta http-equiv="Content-Security-Policy" content="{Html.Drawn(policy)}"/>
            <meta name="viewport" content="width=device-width, initial-scale=1"/>
            <meta name="color-scheme" content="light dark"/>
            <title>{Title} - RecipeLint</title>
            <style>{Html.Drawn(style)}</style>
            </head>
            <body class="page">
            <a class="skip" href="#main">Skip to the text</a>
            <header class="top">
            <p class="book">RecipeLint</p>
            {back}</header>
            <main id="main">
            {main}</main>
            <footer>
            <p>RecipeLint computes; it does not taste, smell or see. Safety data sheets, local codes and licensed practice come first.</p>
            <p>RecipeLint {ToolVersion}.</p>
            </footer>
            {running}</body>
            </html>

            """).ToString();
    }

    /// <summary>As a browser computes it: of the text between the tags.</summary>
    private static string Digest(string text) => "sha256-" + Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(text)));
}
