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

        var shown = Enumerable.Range(0, table.Columns.Count)
            .Where(i => !table.Columns[i].IsPicture && !(table.IsGroupedByFirst && i == 0))
            .ToList();
        var heads = Html.Join(
            shown.Select(i => Html.Of($"<th scope=\"col\"{Number(table.Columns[i])}>{ChemicalText.Of(table.Columns[i].Head)}</th>")));
        return Html.Of(
            $"""
            <div class="wide" role="region" aria-label="Table: {caption}" tabindex="0"><table{(table.Columns.Any(c => c.IsSentence) ? Html.Of($" class=\"told\"") : Html.Empty)}>
            <thead><tr>{heads}</tr></thead>
            {Bodies(table, shown)}</table></div>

            """);
    }

    private static Html Bodies(Table table, List<int> shown) => table.IsGroupedByFirst
        ? Html.Join(table.Rows.GroupBy(r => r[0], StringComparer.Ordinal).Select(g => Html.Of(
            $"""
            <tbody>
            <tr class="group"><th scope="rowgroup" colspan="{shown.Count}">{Words(g.Key)}</th></tr>
            {Rows(table, shown, g)}</tbody>

            """)))
        : Html.Of(
            $"""
            <tbody>
            {Rows(table, shown, table.Rows)}</tbody>

            """);

    private static Html Rows(Table table, List<int> shown, IEnumerable<IReadOnlyList<string>> rows) => Html.Join(
        rows.Select(row => Html.Of($"<tr>{Html.Join(shown.Select(i => Cell(table.Columns[i], row[i], i == shown[0])))}</tr>\n")));

    private static Html Cell(Column column, string text, bool isFirst) => isFirst
        ? Html.Of($"<th scope=\"row\"{Number(column)}>{Words(text)}</th>")
        : column.IsSentence ? Html.Of($"<td class=\"sentence\">{Words(text)}</td>")
        : Html.Of($"<td{Number(column)}>{Words(text)}</td>");

    private static Html Words(string text) => PathText.Is(text) ? PathText.Of(text) : ChemicalText.Of(text);

    private static Html Number(Column column) => column.IsNumber ? Html.Of($" class=\"num\"") : Html.Empty;
}
