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
            <path d="M33 65l34 11M67 65l-34 11" stroke="#000" stroke-width="5" stroke-linecap="round"/>
            <path d="M50 22c-13 0-20 8-20 18c0 7 4 10 6 13v9h28v-9c2-3 6-6 6-13c0-10-7-18-20-18z"/>
            <circle cx="42" cy="42" r="5" fill="#fff"/><circle cx="58" cy="42" r="5" fill="#fff"/><path d="M50 48l4 7h-8z" fill="#fff"/>
            <path d="M44 57v5M50 57v5M56 57v5" stroke="#fff" stroke-width="1.6"/>

            """),
        Pictogram.Corrosion => Html.Of(
            $"""
            <path d="M47 21l5 5l-17 15l-5-5zM53 21l-5 5l17 15l5-5z"/>
            <path d="M32 44v4M32 51v4M68 44v4M68 51v4" stroke="#000" stroke-width="3"/>
            <path d="M23 57h5c0 5 8 5 8 0h8v7h-21z"/>
            <path d="M55 58h8c0 5 8 5 8 0h3c3 0 3 3 0 3.5h-2l-5 5h-12z"/>

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
            <path d="M47 60c6-7 17-7 22-1l6-5v11l-6-5c-5 7-16 7-22 0z"/><circle cx="53" cy="59" r="1.5" fill="#fff"/>

            """),
    };
}
