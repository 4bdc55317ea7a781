namespace RecipeLint.Reports.Tables;

/// <summary>A column of a table.</summary>
/// <param name="Head">What stands in it, with its unit.</param>
/// <param name="IsNumber">Numbers stand to the right.</param>
/// <param name="IsPicture">A bar of signs for the terminal; pages, which draw, leave it out.</param>
/// <param name="IsSentence">Holds whole sentences: where a window is narrow they stand under the other cells of their row.</param>
public sealed record Column(string Head, bool IsNumber = false, bool IsPicture = false, bool IsSentence = false);

/// <summary>
/// Figures in rows and columns, whatever they are shown in. Cells hold the true text; each way of showing escapes for itself.
/// </summary>
/// <param name="Rows">Each with as many cells as there are columns.</param>
public sealed record Table(IReadOnlyList<Column> Columns, IReadOnlyList<IReadOnlyList<string>> Rows)
{
    public bool IsEmpty => Rows.Count == 0;

    /// <summary>
    /// Rows with the same first cell stand together and may share it as a heading, where a window has no room for a column that repeats.
    /// </summary>
    public bool IsGroupedByFirst { get; init; }
}
