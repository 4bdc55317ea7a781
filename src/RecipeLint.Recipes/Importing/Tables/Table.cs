namespace RecipeLint.Recipes.Importing.Tables;

/// <summary>One cell as the table shows it.</summary>
/// <param name="Text">Without blanks at its ends. A number that a spreadsheet stores as one is written with a decimal point.</param>
public readonly record struct TableCell(string Text)
{
    public static TableCell Empty { get; } = new("");

    /// <summary>Stored as a number, so that its decimal sign is no question.</summary>
    public bool IsNumber { get; init; }

    /// <summary>What whoever reads the value has to know of it ("worked out by the table: =B3*2"); null mostly.</summary>
    public string? Remark { get; init; }

    public bool IsEmpty => string.IsNullOrEmpty(Text);
}

/// <summary>One row.</summary>
/// <param name="Number">As the table counts it, from 1; of a text file the line it begins on.</param>
public sealed record TableRow(int Number, IReadOnlyList<TableCell> Cells)
{
    /// <summary>True for a row that a spreadsheet does not show.</summary>
    public bool IsHidden { get; init; }

    public bool IsEmpty => Cells.All(c => c.IsEmpty);

    /// <summary>Past the last one there are empty ones.</summary>
    public TableCell this[int column] => column < Cells.Count ? Cells[column] : TableCell.Empty;
}

/// <summary>A text file, or one sheet of a workbook.</summary>
/// <param name="Name">Of the sheet; empty for a text file.</param>
/// <param name="Rows">In order; empty ones left out.</param>
public sealed record Table(string Name, IReadOnlyList<TableRow> Rows)
{
    /// <summary>True for a sheet that a spreadsheet does not show.</summary>
    public bool IsHidden { get; init; }

    /// <summary>What parts the cells of a text file; null for a sheet.</summary>
    public char? Separator { get; init; }
}

/// <summary>What reading a file gave: its tables, or one plain line why there are none.</summary>
public sealed record TableReading(IReadOnlyList<Table> Tables, string? Fault)
{
    internal static TableReading No(string fault) => new([], fault);
}

/// <summary>How much of a table is read; what is larger is refused, so that no file takes the machine's time or memory.</summary>
public static class TableBounds
{
    /// <summary>Of the file, in bytes.</summary>
    public const int FileSize = 20_000_000;

    /// <summary>Cells that hold something.</summary>
    internal const int Cells = 100_000;

    internal const int Columns = 200;

    /// <summary>Rows that are reached by merged cells, one counted once for each block over it.</summary>
    internal const int MergedRows = 1_000_000;

    /// <summary>Characters of one cell.</summary>
    internal const int CellLength = 2_000;

    /// <summary>Everything that is unpacked of a workbook, in bytes; a file that swells beyond it is a trap or no recipe.</summary>
    internal const long Unpacked = 60_000_000;

    internal const int Sheets = 50;
}

/// <summary>Reading ends here; the message is for people.</summary>
internal sealed class UnusableTableException(string message) : Exception(message);
