using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using RecipeLint.Recipes;
using RecipeLint.Reports.Handbook;
using RecipeLint.Reports.Markup;
using RecipeLint.Reports.Show;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.Pages;

/// <summary>All files of a folder on one page, the gravest first, each with a page of its own.</summary>
public static class OverviewPage
{
    /// <param name="folder">Address of the folder with the pages, as seen from the overview; ends with a slash.</param>
    public static string Of(Report report, Workspace workspace, string title, string folder)
    {
        var byFile = PlacedFinding.InOrder(report.Result.Findings, report.Sources).ToLookup(f => f.Spot.File, StringComparer.Ordinal);
        var rows = report.Asked.Order(StringComparer.Ordinal)
            .Select(f => new Row(f, Shop(workspace, f), [.. byFile[f]]))
            .OrderByDescending(r => r.Errors)
            .ThenByDescending(r => r.Warnings)
            .ThenByDescending(r => r.Notes)
            .ThenBy(r => r.File, StringComparer.Ordinal)
            .ToList();
        var common = FolderNames.Common(rows.Select(r => r.File));
        var all = rows.SelectMany(r => r.Findings).ToList();
        var main = Html.Of(
            $"""
            <article class="card report">
            <header class="tab">
            <p class="number">Overview <span>{rows.Count} files</span></p>
            <h1>{PathText.Of(title)}</h1>
            {FindingsHtml.Verdict(all, report.Result.Suppressed.Count)}</header>
            <div class="wide" role="region" aria-label="Files" tabindex="0"><table class="sortable">
            <thead><tr><th scope="col">file</th><th scope="col">worst finding</th><th scope="col" class="num">errors</th><th scope="col" class="num">warnings</th><th scope="col" class="num">notes</th><th scope="col">kind</th><th scope="col">shop</th></tr></thead>
            <tbody>
            {Html.Join(rows.Select(r => Line(r, folder, common)))}</tbody>
            </table></div>
            </article>

            """);
        return new ReportFrame(title, null, report.ToolVersion).With(main, "pages/sort.js");
    }

    /// <summary>The name of a file's page: readable, and of its own however alike the names are.</summary>
    public static string PageName(string file)
    {
        var plain = new StringBuilder();
        foreach (var unit in file[(file.LastIndexOf('/') + 1)..].ToLowerInvariant())
        {
            plain.Append(char.IsAsciiLetterOrDigit(unit) ? unit : '-');
        }

        var digest = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(file)))[..8];
        return $"{string.Join('-', plain.ToString().Split('-', StringSplitOptions.RemoveEmptyEntries))}-{digest}.html";
    }

    private static Html Line(Row row, string folder, string common)
    {
        var worst = row.Findings.OrderByDescending(f => f.Finding.Level).FirstOrDefault();
        var said = worst is null
            ? Html.Of($"<span class=\"silent\">no rule objects</span>")
            : Html.Of($"{FindingCard.Stamp(worst.Finding.Level)} {ChemicalText.Of(Sentences.First(worst.Finding.Message))}");
        var order = worst is null ? 0 : 1 + (int)worst.Finding.Level;
        return Html.Of(
            $"""
            <tr><th scope="row"><a href="{folder}{PageName(row.File)}">{PathText.Of(row.File[common.Length..])}</a></th><td data-key="{order}">{said}</td><td class="num">{Number(row.Errors)}</td><td class="num">{Number(row.Warnings)}</td><td class="num">{Number(row.Notes)}</td><td>{Kind(row.File)}</td><td>{PathText.Of(row.Shop.StartsWith(common, StringComparison.Ordinal) ? row.Shop[common.Length..] : row.Shop)}</td></tr>

            """);
    }

    /// <summary>The folder whose settings hold; empty without any.</summary>
    private static string Shop(Workspace workspace, string file) =>
        workspace.SettingsFor(file).File is { } settings ? settings.LastIndexOf('/') is > 0 and var end ? settings[..end] : "." : "";

    private static string Number(int count) => count.ToString(CultureInfo.InvariantCulture);

    private static string Kind(string file) => Recipes.Schema.DocumentKinds.FromFileName(file) switch
    {
        Recipes.Schema.DocumentKind.Settings => "shop",
        Recipes.Schema.DocumentKind.HouseRule => "house rule",
        { } kind => kind.ToString().ToLowerInvariant(),
        null => "",
    };

    private sealed record Row(string File, string Shop, IReadOnlyList<PlacedFinding> Findings)
    {
        public int Errors => Count(Level.Error);

        public int Warnings => Count(Level.Warning);

        public int Notes => Count(Level.Note);

        private int Count(Level level) => Findings.Count(f => f.Finding.Level == level);
    }
}
