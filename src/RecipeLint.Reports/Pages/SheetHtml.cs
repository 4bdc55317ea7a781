using RecipeLint.Reports.Markup;
using RecipeLint.Reports.Show;

namespace RecipeLint.Reports.Pages;

/// <summary>Sections of a sheet on a page.</summary>
internal static class SheetHtml
{
    public static Html Sections(IEnumerable<SheetSection> sections) => Html.Join(sections.Select(s => Section(
        "sheet-" + s.Key, s.Title,
        Paragraphs(s.Says) + (s.Table is { } table ? TableHtml.Of(table, s.Title) : Html.Empty) + Paragraphs(s.Notes))));

    public static Html Paragraphs(IReadOnlyList<string> says) => Html.Join(says.Select(s => Html.Of($"<p>{ChemicalText.Of(s)}</p>\n")));

    public static Html Section(string id, string title, Html body) =>
        Html.Of($"<section aria-labelledby=\"{id}\">\n<h2 id=\"{id}\">{ChemicalText.Of(title)}</h2>\n{body}</section>\n");
}
