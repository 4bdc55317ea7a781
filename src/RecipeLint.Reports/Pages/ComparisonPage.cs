using RecipeLint.Reports.Comparison;
using RecipeLint.Reports.Markup;

namespace RecipeLint.Reports.Pages;

/// <summary>A comparison as a page.</summary>
public static class ComparisonPage
{
    public static string Of(Comparison.Comparison comparison, string toolVersion)
    {
        var sections = Html.Join(ComparisonSections.Of(comparison).Select(s => Html.Of(
            $"""
            <section aria-labelledby="{s.Key}">
            <h2 id="{s.Key}">{s.Title}</h2>
            {Html.Join(s.Says.Select(p => Html.Of($"<p>{ChemicalText.Of(p)}</p>\n")))}{(s.Table is { } table ? TableHtml.Of(table, s.Title) : Html.Empty)}</section>

            """)));
        var main = Html.Of(
            $"""
            <article class="card report">
            <header class="tab">
            <p class="number">Comparison</p>
            <h1>{PathText.Of(comparison.Old)} compared with {PathText.Of(comparison.New)}</h1>
            <p class="verdict">{ComparisonSections.Summary(comparison)}</p></header>
            {sections}</article>

            """);
        return new ReportFrame($"{comparison.Old} compared with {comparison.New}", null, toolVersion).With(main);
    }
}
