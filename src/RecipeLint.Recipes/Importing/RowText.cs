using System.Globalization;
using RecipeLint.Recipes.Importing.Tables;
using RecipeLint.Recipes.Patching;
using RecipeLint.Recipes.Quantities;

namespace RecipeLint.Recipes.Importing;

/// <summary>What a row says, as text for the file.</summary>
internal sealed class RowText(ColumnMap columns, ImportWishes wishes)
{
    public string Cell(TableRow row, string word) => columns.Find(word) is { } column ? row[column.Index].Text : "";

    /// <summary>A quantity: the number with a decimal point where the user said how it is written, and its unit.</summary>
    /// <param name="unit">Of the row; empty for that of the heading.</param>
    public string Quantity(TableRow row, Column column, string unit = "")
    {
        var cell = row[column.Index];
        var text = cell.IsNumber || wishes.DecimalComma is not { } comma ? cell.Text : DecimalSign.ToPoint(cell.Text, comma);
        var own = unit.Length > 0 ? unit : column.Meaning?.Unit ?? "";
        return own.Length == 0 || text.Length == 0 || EndsWith(text, own) || HasUnit(text) ? text : text + " " + own;
    }

    /// <summary>True where the reader can make a quantity of a text as it stands.</summary>
    public static bool Reads(string text, Due due) => QuantityReader.TryRead(text, due, out _, out _);

    /// <inheritdoc cref="Quantity(TableRow, Column, string)"/>
    public string Quantity(TableRow row, string word, string unit = "") =>
        columns.Find(word) is { } column ? Quantity(row, column, unit) : "";

    /// <summary>Everything of a row that has no place of its own: notes, columns that nobody named, remarks on values.</summary>
    public string Note(TableRow row)
    {
        var parts = new List<string>();
        foreach (var column in columns.Columns)
        {
            var cell = row[column.Index];
            if (cell.IsEmpty || column.Meaning?.Word == ColumnWords.Ignore)
            {
                continue;
            }

            if (column.Meaning is null)
            {
                parts.Add($"{column.Heading}: {cell.Text}");
            }
            else if (column.Meaning.Word == ColumnWords.Note)
            {
                parts.Add(cell.Text);
            }

            if (cell.Remark is { } remark)
            {
                parts.Add($"{column.Heading} {remark}");
            }
        }

        return string.Join("; ", parts);
    }

    /// <summary>A row that could not be placed, whole.</summary>
    public static JsonDraft Kept(TableRow row, string? because)
    {
        var cells = string.Join(" | ", row.Cells.Where(c => !c.IsEmpty).Select(c => c.Text));
        var why = (because, row.IsHidden) switch
        {
            (null, true) => " (hidden in the table)",
            ({ } reason, _) => $" ({reason})",
            _ => "",
        };
        return JsonDraft.Of(string.Create(CultureInfo.InvariantCulture, $"row {row.Number}{why}: {cells}"));
    }

    /// <summary>What stands at the top of every file: where it came from, and titles above the headings.</summary>
    public string Origin()
    {
        var titles = columns.Above.SelectMany(r => r.Cells).Where(c => !c.IsEmpty).Select(c => c.Text);
        return string.Join(". ", titles.Prepend($"Imported from {wishes.Source}"));
    }

    /// <summary>True where the cell names a unit of its own ("4 lbs", "1.5kg"), which then holds and not that of the heading.</summary>
    private static bool HasUnit(string text) =>
        text.Length > 0 && (char.IsAsciiDigit(text[0]) || text[0] is '<' or '~' or '.') && (char.IsLetter(text[^1]) || text[^1] == '%');

    /// <summary>True when the unit stands behind the number already.</summary>
    private static bool EndsWith(string text, string unit) =>
        text.EndsWith(unit, StringComparison.Ordinal)
        && text[..^unit.Length].TrimEnd() is { Length: > 0 } number
        && char.IsAsciiDigit(number[^1]);
}
