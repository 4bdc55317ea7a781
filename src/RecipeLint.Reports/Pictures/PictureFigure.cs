using System.Globalization;
using RecipeLint.Reports.Markup;

namespace RecipeLint.Reports.Pictures;

/// <summary>A picture on a page: the drawing for wide and for narrow windows, its words, and its figures as a table to open.</summary>
internal static class PictureFigure
{
    private const int Wide = 760, Narrow = 380;

    public static Html Of(Picture picture) => Html.Of(
        $"""
        <figure class="picture" id="{picture.Key}">
        <figcaption><b>{ChemicalText.Of(picture.Title)}</b> {ChemicalText.Of(picture.Says)}</figcaption>
        {Svg(picture, Wide, "wide-picture")}{Svg(picture, Narrow, "narrow-picture")}{Legend(picture)}<details class="figures">
        <summary>The figures of this picture</summary>
        {TableHtml.Of(picture.Table, picture.Title)}</details>
        </figure>

        """);

    /// <summary>Which stroke is which; words wrap as words do, which a drawing cannot.</summary>
    private static Html Legend(Picture picture) => picture.Curves.Count(c => c.Name.Length > 0) < 2
        ? Html.Empty
        : Html.Of($"<ul class=\"legend\">\n{Html.Join(picture.Curves.Select((c, i) => Html.Of($"<li>{Swatch(c, i)} {ChemicalText.Of(c.Name)}</li>\n")))}</ul>\n");

    private static Html Swatch(Curve curve, int index)
    {
        var ink = curve.Ink.ToString().ToLowerInvariant();
        if (!curve.IsJoined)
        {
            return Html.Of(
                $"<svg viewBox=\"0 0 40 10\" aria-hidden=\"true\"><line class=\"s-{ink}\" x1=\"20\" y1=\"5\" x2=\"20\" y2=\"5\" stroke-width=\"8\" stroke-linecap=\"round\"/></svg>");
        }

        var dashes =
            string.Join(',', PictureSvg.Dashes[index % PictureSvg.Dashes.Length].Select(d => d.ToString(CultureInfo.InvariantCulture)));
        var dash = dashes.Length == 0 ? Html.Empty : Html.Of($" stroke-dasharray=\"{dashes}\"");
        return Html.Of(
            $"<svg viewBox=\"0 0 40 10\" aria-hidden=\"true\"><line class=\"s-{ink}\" x1=\"0\" y1=\"5\" x2=\"40\" y2=\"5\" stroke-width=\"2.5\"{dash}/></svg>");
    }

    private static Html Svg(Picture picture, int width, string kind)
    {
        var id = $"{picture.Key}-{kind[0]}";
        var (inside, across, up) = PictureSvg.Draw(picture, width, id);
        var box = string.Create(CultureInfo.InvariantCulture, $"0 0 {across} {up}");
        return Html.Of(
            $"""
            <svg class="{kind}" viewBox="{box}" role="img" aria-labelledby="{id}-t {id}-d">
            <title id="{id}-t">{picture.Title}</title>
            <desc id="{id}-d">{picture.Says}</desc>
            {Html.Drawn(inside)}</svg>

            """);
    }
}
