using RecipeLint.Reports.Markup;
using RecipeLint.Reports.Pages;
using RecipeLint.Reports.Show;

namespace RecipeLint.Reports.BenchSheets;

/// <summary>What a batch record comes to, as one page.</summary>
public static class BatchSheetPage
{
    public static string Of(Sheet sheet, string toolVersion)
    {
        var main = Html.Of(
            $"""
            <article class="card report bench">
            <header class="tab">
            <p class="number">Batch record <span>{sheet.File}</span></p>
            <h1>{HeadingText.Of(sheet.Name)}</h1></header>
            {SheetHtml.Sections(sheet.Sections)}</article>

            """);
        return new ReportFrame($"Batch of {sheet.Name}", null, toolVersion).With(main, moreStyle: "pages/bench.css");
    }
}
