using RecipeLint.Reports.Tables;

namespace RecipeLint.Reports.Markup;

/// <summary>A table on a page; it scrolls inside its own frame, by touch or keyboard, where a window is narrow.</summary>
internal static class TableHtml
{
    /// <param name="caption">Names it for who cannot see it.</param>
    public static Html Of(Table table, string caption)
    {
        if (table.IsEmpty)
        {
            return Html.Empty;
        }

        var shown = Enumerable.Range(0, table.Columns.Count).Where(i => !table.Columns[i].IsPicture).ToList();
        var heads = Html.Join(
            shown.Select(i => Html.Of($"<th scope=\"col\"{Number(table.Columns[i])}>{ChemicalText.Of(table.Columns[i].Head)}</th>")));
        var rows = Html.Join(
            table.Rows.Select(row => Html.Of($"<tr>{Html.Join(shown.Select(i => Cell(table.Columns[i], row[i], i == shown[0])))}</tr>\n")));
        return Html.Of(
            $"""
            <div class="wide" role="region" aria-label="Table: {caption}" tabindex="0"><table>
            <thead><tr>{heads}</tr></thead>
            <tbody>
            {rows}</tbody>
            </table></div>

            """);
    }

    private static Html Cell(Column column, string text, bool isFirst) => isFirst
        ? Html.Of($"<th scope=\"row\"{Number(column)}>{Words(text)}</th>")
        : Html.Of($"<td{Number(column)}>{Words(text)}</td>");

    private static Html Words(string text) => PathText.Is(text) ? PathText.Of(text) : ChemicalText.Of(text);

    private static Html Number(Column column) => column.IsNumber ? Html.Of($" class=\"num\"") : Html.Empty;
}
