using System.Globalization;
using RecipeLint.Reports.Markup;

namespace RecipeLint.Reports.Labels;

/// <summary>
/// The pictograms as plain drawings of our own in the frame the GHS asks for: a square set on a point, red, with a black symbol on white
/// (UN GHS,
/// 1.4.10.4; recalled). They show which official pictogram belongs there; a printed one of a supplier may be stuck over them.
/// </summary>
internal static class PictogramDrawing
{
    /// <param name="width">Of the square set on its point, mm.</param>
    public static Html Of(Pictogram pictogram, double x, double y, double width)
    {
        var scale = (width / 100).ToString("0.####", CultureInfo.InvariantCulture);
        var at = string.Create(CultureInfo.InvariantCulture, $"{x:0.###} {y:0.###}");
        return Html.Of(
            $"""
            <g transform="translate({at}) scale({scale})" role="img" aria-label="{GhsWords.Name(pictogram)}">
            <path d="M50 4L96 50L50 96L4 50Z" fill="#fff" stroke="#d0021b" stroke-width="6" stroke-linejoin="miter"/>
            {Symbol(pictogram)}</g>

            """);
    }

    private static Html Symbol(Pictogram pictogram) => pictogram switch
    {
        Pictogram.Exclamation => Html.Of($"<path d=\"M43 24h14l-4 34h-6z\"/><circle cx=\"50\" cy=\"69\" r=\"6.5\"/>\n"),
        Pictogram.Skull => Html.Of(
            $"""
            <path d="M25 64l50 16M75 64l-50 16" stroke="#000" stroke-width="6" stroke-linecap="round"/>
            <path d="M50 22c-13 0-20 8-20 18c0 7 4 10 6 13v9h28v-9c2-3 6-6 6-13c0-10-7-18-20-18z"/>
            <circle cx="42" cy="42" r="5" fill="#fff"/><circle cx="58" cy="42" r="5" fill="#fff"/><path d="M50 48l4 7h-8z" fill="#fff"/>
            <path d="M44 57v5M50 57v5M56 57v5" stroke="#fff" stroke-width="1.6"/>

            """),
        Pictogram.Corrosion => Html.Of(
            $"""
            <path d="M29 33l20-9l3 6l-20 9zM71 33l-20-9l-3 6l20 9z"/>
            <path d="M33 42v4M33 49v4M67 42v4M67 49v4" stroke="#000" stroke-width="3"/>
            <path d="M22 58h22v4c-5 0-7 6-12 3c-4-2-6 1-10-2z"/>
            <path d="M56 60c6-4 22-4 24 0c-2 5-9 3-12 6c-4 3-8-2-12-6z"/>
            <path d="M36 74h28v5h-28z"/>

            """),
        Pictogram.Health => Html.Of(
            $"""
            <circle cx="50" cy="27" r="8"/>
            <path d="M50 37c-14 0-19 6-19 16v23h38v-23c0-10-5-16-19-16z"/>
            <path d="M50 43l3 9l9-5l-5 9l9 3l-9 3l5 9l-9-5l-3 9l-3-9l-9 5l5-9l-9-3l9-3l-5-9l9 5z" fill="#fff"/>

            """),
        _ => Html.Of(
            $"""
            <path d="M33 68v-28M33 50l-9-9M33 45l8-9M33 40l-5-9" stroke="#000" stroke-width="3.5" fill="none" stroke-linecap="round"/>
            <path d="M20 68h34" stroke="#000" stroke-width="3"/>
            <path d="M46 62c8-9 22-9 28-1l7-6v14l-7-6c-6 8-20 8-28-1z"/><circle cx="53" cy="61" r="1.8" fill="#fff"/>

            """),
    };
}
