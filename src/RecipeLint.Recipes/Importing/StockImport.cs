using System.Globalization;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Importing.Tables;
using RecipeLint.Recipes.Patching;
using RecipeLint.Recipes.Quantities;

namespace RecipeLint.Recipes.Importing;

/// <summary>
/// Makes stock files of tables of substance, amount, unit and part. Names and amounts go into the files as they stand: what cannot be
/// understood is a finding there. A row that is no step is kept under "notUnderstood".
/// </summary>
public static class StockImport
{
    /// <summary>Entries of a list that the reader takes.</summary>
    internal const int MostEntries = 1000;

    /// <param name="tables">Each with its columns; without a column for parts, a named sheet is a part.</param>
    public static ImportResult Of(IReadOnlyList<(Table Table, ColumnMap Columns)> tables, ImportWishes wishes)
    {
        var parts = new List<ImportedPart>();
        foreach (var (table, columns) in tables)
        {
            Sort(table, columns, wishes, parts, tables.Count > 1 && table.Name.Length > 0 ? table.Name : wishes.Name);
        }

        if (parts.TrueForAll(p => p.Steps.Count == 0))
        {
            return ImportResult.No("no row has both a substance and an amount, so there is nothing to write.");
        }

        GiveToNeighbours(parts);

        if (parts.FirstOrDefault(p => p.Steps.Count >= MostEntries || p.Left.Count > MostEntries) is { } endless)
        {
            return ImportResult.No($"'{endless.Name}' would get more than {MostEntries} entries; no stock has that many steps.");
        }

        var names = new FileNames("part", Resolution.StockEnding);
        return new ImportResult(
            [.. parts.Select(p => new ImportedFile(names.For(p.Name), JsonDraftWriter.Document(p.Document(wishes))))], null)
        {
            Understood = parts.Sum(p => p.Steps.Count - p.Strange),
            NotUnderstood = parts.Sum(p => p.Left.Count + p.Strange),
        };
    }

    private static void Sort(Table table, ColumnMap columns, ImportWishes wishes, List<ImportedPart> parts, string name)
    {
        var text = new RowText(columns, wishes);
        var origin = text.Origin() + (table.Name.Length > 0 ? $", sheet '{table.Name}'" : "");
        var current = (ImportedPart?)null;
        foreach (var row in columns.Rows)
        {
            var named = columns.Has(ColumnWords.Part) ? text.Cell(row, ColumnWords.Part) : name;
            if (named.Length > 0)
            {
                current = Part(parts, named, origin);
            }

            if (named.Length == 0 && !wishes.FillsDown)
            {
                (current ??= Part(parts, name, origin)).Left.Add(RowText.Kept(row, "names no part"));
            }
            else
            {
                (current ??= Part(parts, name, origin)).Take(row, columns, text);
            }
        }
    }

    /// <summary>
    /// A part without a single step is no stock but a word in its column, such as "Total": its rows are kept with the part before it, or
    /// with the first.
    /// </summary>
    private static void GiveToNeighbours(List<ImportedPart> parts)
    {
        var keeper = parts.First(p => p.Steps.Count > 0);
        foreach (var part in parts)
        {
            if (part.Steps.Count > 0)
            {
                keeper = part;
            }
            else
            {
                keeper.Left.AddRange(part.Left);
            }
        }

        parts.RemoveAll(p => p.Steps.Count == 0);
    }

    private static ImportedPart Part(List<ImportedPart> parts, string name, string origin)
    {
        var found = parts.Find(p => p.Name == name);
        if (found is null)
        {
            parts.Add(found = new ImportedPart(name, origin));
        }

        return found;
    }
}

/// <summary>One stock as it is put together.</summary>
internal sealed class ImportedPart(string name, string origin)
{
    private static readonly string[] _handlings = ["stir", "filter", "warm", "cool", "rest", "rinse"];

    private readonly Dictionary<string, string> _once = new(StringComparer.Ordinal);

    /// <summary>True where the table tells every step, so that none is added.</summary>
    private bool _tellsSteps;

    public string Name => name;

    public List<JsonDraft> Steps { get; } = [];

    public List<JsonDraft> Left { get; } = [];

    /// <summary>Steps whose amount went over as it stands and cannot be read; each is a finding on the file.</summary>
    public int Strange { get; private set; }

    public void Take(TableRow row, ColumnMap columns, RowText text)
    {
        if (row.IsHidden)
        {
            Left.Add(RowText.Kept(row, null));
            return;
        }

        _tellsSteps |= columns.Has(ColumnWords.Step);
        TakeOnce(row, columns, text, ColumnWords.Makes);
        TakeOnce(row, columns, text, ColumnWords.Dose);
        if (Step(row, text) is { } step)
        {
            var members = step.Where(m => m.Text.Length > 0).Select(m => new DraftMember(m.Key, JsonDraft.Of(m.Text)));
            Steps.Add(new JsonDraft.Object([.. members]));
            Strange += step.Exists(m => m.Key == "amount" && !RowText.Reads(m.Text, Due.Portion)) ? 1 : 0;
        }
        else
        {
            Left.Add(RowText.Kept(row, null));
        }
    }

    public JsonDraft.Object Document(ImportWishes wishes)
    {
        var members = new List<DraftMember>
        {
            new("format", new JsonDraft.Literal("1")),
            new("name", JsonDraft.Of(name)),
            new("note", JsonDraft.Of(origin)),
        };
        var makes = _once.GetValueOrDefault(ColumnWords.Makes) ?? wishes.MakesOfParts.GetValueOrDefault(name) ?? wishes.Makes;
        var dose = _once.GetValueOrDefault(ColumnWords.Dose) ?? wishes.Dose;
        if (makes is not null)
        {
            members.Add(new DraftMember("makes", JsonDraft.Of(makes)));
        }

        if (dose is not null)
        {
            members.Add(new DraftMember("dose", JsonDraft.Of(dose)));
        }

        // A stock that makes so much is brought to it with water: the one step that a table of salts leaves out.
        var steps = makes is null || _tellsSteps ? Steps : [.. Steps, JsonDraft.Of(("topUp", JsonDraft.Of(makes)))];
        members.Add(new DraftMember("steps", new JsonDraft.List(steps)));
        if (Left.Count > 0)
        {
            members.Add(new DraftMember(NotUnderstoodReader.Key, new JsonDraft.List(Left)));
        }

        return new JsonDraft.Object(members);
    }

    /// <summary>What holds for the whole part may stand in every row, but only once differently.</summary>
    private void TakeOnce(TableRow row, ColumnMap columns, RowText text, string word)
    {
        if (text.Quantity(row, word) is { Length: > 0 } said && !_once.TryAdd(word, said) && _once[word] != said)
        {
            Left.Add(JsonDraft.Of(string.Create(
                CultureInfo.InvariantCulture, $"row {row.Number}: {columns.Find(word)!.Heading} {said} differs from {_once[word]} above")));
        }
    }

    /// <summary>Keys and texts of the step that a row stands for, blank ones among them; null when it is none.</summary>
    private static List<(string Key, string Text)>? Step(TableRow row, RowText text)
    {
        var verb = text.Cell(row, ColumnWords.Step);
        var what = text.Cell(row, ColumnWords.Substance);
        var amount = text.Quantity(row, ColumnWords.Amount, text.Cell(row, ColumnWords.Unit));
        (string, string)[] after = [("id", text.Cell(row, ColumnWords.Id)), ("note", text.Note(row))];
        var with = ("with", text.Cell(row, ColumnWords.With));
        switch (verb)
        {
            case "" or "add" when what.Length > 0 && amount.Length > 0:
                var (strength, assay) = (text.Quantity(row, ColumnWords.Strength), text.Quantity(row, ColumnWords.Assay));
                return [("add", what), ("amount", amount), with, ("strength", strength), ("assay", assay), .. after];
            case "pour" when amount.Length > 0:
                return [("pour", amount), ("of", what), with, .. after];
            case "topUp" when amount.Length > 0:
                return [("topUp", amount), ("of", what), .. after];
            case "adjust" when amount.Length > 0 && what.Length > 0:
                return [("adjust", amount), ("using", what), ("strength", text.Quantity(row, ColumnWords.Strength)), .. after];
            case not "" when _handlings.Contains(verb) && what.Length + amount.Length > 0:
                return [(verb, what.Length > 0 ? what : amount), .. after];
            default:
                return null;
        }
    }
}
