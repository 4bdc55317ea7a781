using System.Globalization;
using RecipeLint.Reports.Markup;
using RecipeLint.Reports.Pages;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.BenchSheets;

/// <summary>The sheet as one printed page, with boxes to tick and room to write.</summary>
public static class BenchSheetPage
{
    public static string Of(BenchSheet sheet, string toolVersion)
    {
        var main = Html.Of(
            $"""
            <article class="card report bench">
            <header class="tab">
            <p class="number">Bench sheet <span>{sheet.File}</span></p>
            <h1>{HeadingText.Of($"{sheet.Name}, {Say.Litres(sheet.Batch.Litres)}")}</h1>
            <p class="fields"><span>Date <i></i></span> <span>Batch <i></i></span> <span>Mixed by <i></i></span></p></header>
            {Caution(sheet)}{(sheet.Refused.Count > 0 ? Html.Empty : Steps(sheet))}{List("stops", "Stop when", sheet.Stops)}{Checks(sheet)}{List("clean", "Clean up", sheet.CleanUp)}{List("further", "Look further", sheet.Further)}</article>

            """);
        return new ReportFrame($"Bench sheet {sheet.Name}", null, toolVersion).With(main, moreStyle: "pages/bench.css");
    }

    private static Html Caution(BenchSheet sheet) => Html.Of(
        $"""
        <section class="caution" aria-labelledby="cautions">
        <h2 id="cautions">{(sheet.Refused.Count > 0 ? "Do not mix this" : "Before you start")}</h2>
        <ul>
        {Items(sheet.Refused.Concat(sheet.Protection).Concat(sheet.Cautions))}<li>Safety data sheets, local codes and licensed practice come before this sheet.</li>
        </ul>
        </section>

        """);

    private static Html Steps(BenchSheet sheet) => Html.Of(
        $"""
        <section aria-labelledby="steps">
        <h2 id="steps">Steps</h2>
        <div class="wide steps" role="region" aria-label="Table: steps" tabindex="0"><table>
        <thead><tr><th scope="col">done</th><th scope="col">what to do</th><th scope="col" class="num">show</th><th scope="col">with</th><th scope="col" class="num">rounding</th><th scope="col">expect after it</th><th scope="col">lot</th><th scope="col">actual</th></tr></thead>
        <tbody>
        {Html.Join(sheet.Lines.Select(Line))}</tbody>
        </table></div>
        </section>

        """);

    private static Html Line(SheetLine line)
    {
        var number = line.Number.ToString(CultureInfo.InvariantCulture);
        var notes = line.Notes.Count == 0 ? Html.Empty : Html.Of($"<br/><small>{ChemicalText.Of(string.Join(' ', line.Notes))}</small>");
        var write = line.IsMeasured ? Html.Of($"<span class=\"write\"></span>") : Html.Empty;
        return Html.Of(
            $"""
            <tr><td><span class="box" role="img" aria-label="box to tick"></span> {number}</td><th scope="row">{ChemicalText.Of(line.Does)}{notes}</th><td class="num" data-head="show">{BenchSheetText.Shown(line)}</td><td data-head="with">{line.With ?? ""}</td><td class="num" data-head="rounding">{BenchSheetText.Rounding(line)}</td><td data-head="expect">{ChemicalText.Of(line.Expect)}</td><td data-head="lot">{write}</td><td data-head="actual">{write}</td></tr>

            """);
    }

    private static Html Checks(BenchSheet sheet) => sheet.Checks.Count == 0
        ? Html.Empty
        : Html.Of(
            $"""
            <section aria-labelledby="checks">
            <h2 id="checks">After mixing, at about 20 °C</h2>
            <ul class="checks">
            {Html.Join(sheet.Checks.Select(c => Html.Of($"<li><span class=\"box\" role=\"img\" aria-label=\"box to tick\"></span> {ChemicalText.Of(c)}. <span>Read: <i></i></span></li>\n")))}</ul>
            </section>

            """);

    private static Html List(string id, string title, IReadOnlyList<string> items) => items.Count == 0
        ? Html.Empty
        : Html.Of($"<section aria-labelledby=\"{id}\">\n<h2 id=\"{id}\">{title}</h2>\n<ul>\n{Items(items)}</ul>\n</section>\n");

    private static Html Items(IEnumerable<string> items) => Html.Join(items.Select(i => Html.Of($"<li>{ChemicalText.Of(i)}</li>\n")));
}
