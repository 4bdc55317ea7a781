using System.Globalization;
using RecipeLint.Recipes.Importing.Tables;

namespace RecipeLint.Recipes.Importing;

/// <summary>One column of a table.</summary>
/// <param name="Index">From 0.</param>
/// <param name="Heading">As written; "column C" where the heading is blank.</param>
/// <param name="Samples">A few of its values.</param>
/// <param name="Meaning">Null for a column that nobody has said anything of: it is kept in notes.</param>
public sealed record Column(int Index, string Heading, IReadOnlyList<string> Samples, ColumnMeaning? Meaning);

/// <summary>The columns of a table with what they hold.</summary>
/// <param name="Above">Rows above the headings, such as a title.</param>
/// <param name="Rows">Those below.</param>
public sealed record ColumnMap(IReadOnlyList<Column> Columns, IReadOnlyList<TableRow> Above, IReadOnlyList<TableRow> Rows)
{
    private const int Samples = 4;

    /// <summary>True when the table holds water analyses.</summary>
    public bool IsWater => Has(ColumnWords.Analyte) || Columns.Any(c => c.Meaning is { } m && ColumnWords.IsWaterKey(m.Word));

    /// <summary>True when the table holds what is added to stocks.</summary>
    public bool IsStock => Has(ColumnWords.Substance);

    /// <summary>What has to be named before the table can be read; empty when nothing has.</summary>
    public IReadOnlyList<string> Missing => (IsStock, IsWater, Has(ColumnWords.Analyte)) switch
    {
        (true, _, _) when !Has(ColumnWords.Amount) => [ColumnWords.Amount],
        (true, _, _) => [],
        (_, true, true) when !Has(ColumnWords.Value) => [ColumnWords.Value],
        (_, true, _) => [],
        _ => [ColumnWords.Substance, ColumnWords.Amount],
    };

    /// <summary>Finds the row of headings and what each says by itself or by what the user says of it.</summary>
    /// <param name="said">Headings with their meaning; the user's word goes before the heading's own.</param>
    /// <param name="headingRow">As the table counts; null for the first row with two cells.</param>
    /// <returns>Null when no row has two cells, or none of that number holds anything.</returns>
    public static ColumnMap? Of(Table table, IReadOnlyDictionary<string, ColumnMeaning> said, int? headingRow)
    {
        var at = table.Rows.ToList().FindIndex(r =>
            headingRow is { } row ? r.Number == row : r.Cells.Count(c => !c.IsEmpty) >= 2);
        if (at < 0)
        {
            return null;
        }

        var rows = table.Rows.Skip(at + 1).ToList();
        var width = Math.Max(table.Rows[at].Cells.Count, rows.Count == 0 ? 0 : rows.Max(r => r.Cells.Count));
        var taken = new HashSet<string>(StringComparer.Ordinal);
        var columns = new List<Column>();
        for (var i = 0; i < width; i++)
        {
            var heading = table.Rows[at][i].Text;
            var shown = heading.Length > 0 ? heading : "column " + Letters(i);
            var samples = rows.Select(r => r[i].Text).Where(t => t.Length > 0).Distinct(StringComparer.Ordinal).Take(Samples).ToList();
            if (heading.Length == 0 && samples.Count == 0)
            {
                continue;
            }

            // Two columns that say the same are two readings; only the user can say which one counts.
            var meaning = said.GetValueOrDefault(shown) ?? (heading.Length > 0 ? ColumnMeaning.OfHeading(heading) : null);
            var keeps = meaning is null or { Word: ColumnWords.Note or ColumnWords.Ignore } || taken.Add(meaning.Word);
            columns.Add(new Column(i, shown, samples, keeps ? meaning : null));
        }

        return new ColumnMap(columns, [.. table.Rows.Take(at)], rows);
    }

    public bool Has(string word) => Columns.Any(c => c.Meaning?.Word == word);

    /// <summary>The one column of that meaning; null when there is none.</summary>
    public Column? Find(string word) => Columns.FirstOrDefault(c => c.Meaning?.Word == word);

    /// <summary>The column with that meaning.</summary>
    public ColumnMap With(Column column, ColumnMeaning meaning) =>
        this with { Columns = [.. Columns.Select(c => c.Index == column.Index ? c with { Meaning = meaning } : c)] };

    /// <summary>A, B ... Z, AA: as spreadsheets call columns.</summary>
    private static string Letters(int index) => index < 26
        ? ((char)('A' + index)).ToString(CultureInfo.InvariantCulture)
        : Letters((index / 26) - 1) + (char)('A' + (index % 26));
}
