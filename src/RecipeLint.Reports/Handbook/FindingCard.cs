using RecipeLint.Reports.Markup;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.Handbook;

/// <summary>A finding in full, as the program gives it, with its numbers.</summary>
internal static class FindingCard
{
    public static Html Of(PlacedFinding placed, PageLinks links)
    {
        var finding = placed.Finding;
        var related = placed.Related.Count == 0
            ? Html.Empty
            : Html.Of($"<ul class=\"related\">\n{Html.Join(placed.Related.Select(r => Related(r.Spot, r.Label, placed.Spot)))}</ul>\n");
        var certainty = finding.Certainty == Certainty.Computed
            ? Html.Empty
            : Html.Of($" <span class=\"certainty\">({Words.Of(finding.Certainty)})</span>");
        return Html.Of(
            $"""
            <div class="finding {Words.Of(finding.Level)}">
            <p class="says">{Stamp(finding.Level)} <a href="{links.Rule(finding.Rule.Name)}">{finding.Rule.Id} {finding.Rule.Name}</a>{certainty}</p>
            <p class="place">{placed.Spot.File}, line {placed.Spot.Lines.Start.Line}</p>
            <p>{ChemicalText.Of(finding.Message)}</p>
            {related}</div>

            """);
    }

    /// <summary>The level as a word in a frame; never by colour alone.</summary>
    public static Html Stamp(Level level) => Html.Of($"<span class=\"stamp {Words.Of(level)}\">{Words.Of(level)}</span>");

    private static Html Related(Spot spot, string label, Spot primary)
    {
        var file = spot.File == primary.File ? "" : spot.File + ", ";
        return Html.Of($"<li>{file}line {spot.Lines.Start.Line}: {ChemicalText.Of(label)}</li>\n");
    }
}
