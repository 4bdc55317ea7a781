using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Reports.Markup;
using RecipeLint.Reports.Pictures;
using RecipeLint.Reports.Show;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.Pages;

/// <summary>
/// The report of one file as a page: verdict and findings first, then the pictures, then every figure. A file that cannot be read gets a
/// page that says what is broken.
/// </summary>
public static class FilePage
{
    /// <param name="report">Of the run; its facts have to be there.</param>
    /// <param name="file">Relative to the workspace root.</param>
    /// <param name="up">Address of the overview; null for a page of its own.</param>
    /// <param name="other">What to show of a file that has no sheet of its own, such as a batch record; null for nothing.</param>
    public static string Of(Report report, string file, string? up = null, Sheet? other = null)
    {
        var facts = report.Facts ?? throw new ArgumentException("A page is made of facts.", nameof(report));
        var findings = PlacedFinding.InOrder(report.Result.Findings.Where(f => f.Place.File == file), report.Sources)
            .OrderByDescending(f => f.Finding.Level)
            .ToList();
        var suppressed = report.Result.Suppressed.Count(s => s.Finding.Place.File == file);
        var sheet = Sheets.Of(facts, file, report.Mixings) ?? other;
        var name = sheet?.Name ?? file[(file.LastIndexOf('/') + 1)..];
        var main = Html.Of(
            $"""
            <article class="card report">
            <header class="tab">
            <p class="number">{Say.Capital(sheet?.Kind ?? "file")} <span>{PathText.Of(file)}</span></p>
            <h1>{HeadingText.Of(name)}</h1>
            {FindingsHtml.Verdict(findings, suppressed)}</header>
            {Findings(findings)}{Cautions(sheet)}{Pictures(facts, file)}{Figures(sheet, file)}</article>

            """);
        return new ReportFrame(name, up, report.ToolVersion).With(main);
    }

    private static Html Findings(List<PlacedFinding> findings) => findings.Count == 0
        ? Html.Empty
        : SheetHtml.Section("findings", "Findings", Html.Join(findings.Select(FindingsHtml.Of)));

    private static Html Cautions(Sheet? sheet) => sheet?.Find("hazards") is not { } hazards
        ? Html.Empty
        : Html.Of(
            $"""
            <section class="caution" aria-labelledby="cautions">
            <h2 id="cautions">Cautions</h2>
            {SheetHtml.Paragraphs(hazards.Says)}</section>

            """);

    /// <summary>Those of the file, and for a recipe those of each of its bottles.</summary>
    private static Html Pictures(Facts facts, string file)
    {
        if (facts.FindStock(file) is { } stock)
        {
            var chemistry = stock.Chemistry;
            var held = ChelatePictures.Of(chemistry.Mix, chemistry.Mixing.TellsPh ? chemistry.Mixing.Ph : null, stock.Stock.Name, "stock");
            return Group("pictures", "Pictures", [.. StockPictures.Of(stock, "stock"), .. held]);
        }

        if (facts.Recipes.FirstOrDefault(r => r.Recipe.File == file) is not { } recipe)
        {
            return Html.Empty;
        }

        var parts = recipe.Doses.Select(d => d.Stock).OfType<StockFacts>().DistinctBy(s => s.Stock.File).ToList();
        return Group("pictures", "Pictures", RecipePictures.Of(facts, recipe))
            + Html.Join(parts.Select((part, i) => Group(
                $"part-{i + 1}", $"The bottle: {part.Stock.Name}", StockPictures.Of(part, $"part-{i + 1}"))));
    }

    private static Html Group(string id, string title, IReadOnlyList<Picture> pictures) =>
        pictures.Count == 0 ? Html.Empty : SheetHtml.Section(id, title, Html.Join(pictures.Select(PictureFigure.Of)));

    private static Html Figures(Sheet? sheet, string file)
    {
        if (sheet is null)
        {
            return file.EndsWith(
                ".stock.json", StringComparison.OrdinalIgnoreCase) || file.EndsWith(".recipe.json", StringComparison.OrdinalIgnoreCase)
                || file.EndsWith(".water.json", StringComparison.OrdinalIgnoreCase)
                ? SheetHtml.Section(
                    "figures",
                    "Figures",
                    Html.Of($"<p>There are none: what the file says cannot be read far enough to compute anything. Mend the findings above first.</p>\n"))
                : Html.Empty;
        }

        return SheetHtml.Sections(sheet.Sections.Where(s => s.Key != "hazards"));
    }
}
