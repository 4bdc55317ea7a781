using RecipeLint.Reports.Tables;

namespace RecipeLint.Reports.Show;

/// <summary>What was computed of one file, in the order a person asks for it; shown as text or on a page.</summary>
/// <param name="Kind">"recipe", "stock", "tank" (the record of one), "water", "profile", "products" or "shop".</param>
/// <param name="Name">As the file calls it.</param>
/// <param name="File">Relative to the workspace root.</param>
public sealed record Sheet(string Kind, string Name, string File, IReadOnlyList<SheetSection> Sections)
{
    public SheetSection? Find(string key) => Sections.FirstOrDefault(s => s.Key == key);
}

/// <summary>One part of a sheet.</summary>
/// <param name="Key">Stable word for pages and tests.</param>
/// <param name="Says">Sentences above the table.</param>
/// <param name="Table">Null where sentences say it all.</param>
/// <param name="Notes">Sentences below the table.</param>
public sealed record SheetSection(
    string Key, string Title, IReadOnlyList<string> Says, Table? Table = null, params IReadOnlyList<string> Notes)
{
    public bool IsEmpty => Says.Count == 0 && Table is not { IsEmpty: false } && Notes.Count == 0;
}
