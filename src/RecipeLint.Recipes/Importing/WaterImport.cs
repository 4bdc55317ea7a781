using System.Globalization;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Importing.Tables;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Patching;
using RecipeLint.Recipes.Schema;

namespace RecipeLint.Recipes.Importing;

/// <summary>
/// Makes water files of analyses: one value a row (analyte, value, unit, basis), or one sample a row with a column for each value. What an
/// analyte is called and what a value means is not guessed: both stand in the file as the table has them, and what is unclear is a finding.
/// </summary>
public static class WaterImport
{
    public static ImportResult Of(IReadOnlyList<(Table Table, ColumnMap Columns)> tables, ImportWishes wishes)
    {
        var samples = new List<ImportedSample>();
        foreach (var (table, columns) in tables)
        {
            var text = new RowText(columns, wishes);
            var origin = text.Origin() + (table.Name.Length > 0 ? $", sheet '{table.Name}'" : "");
            var name = tables.Count > 1 && table.Name.Length > 0 ? table.Name : wishes.Name;
            foreach (var row in columns.Rows)
            {
                var named = text.Cell(row, ColumnWords.Sample) is { Length: > 0 } own ? own : name;
                var sample = samples.Find(s => s.Name == named);
                if (sample is null)
                {
                    samples.Add(sample = new ImportedSample(named, origin));
                }

                if (columns.Has(ColumnWords.Analyte))
                {
                    sample.TakeOne(row, columns, text);
                }
                else
                {
                    sample.TakeAll(row, columns, text);
                }
            }
        }

        if (samples.Sum(s => s.Understood + s.Strange) == 0)
        {
            return ImportResult.No("no row has a value of an analysis, so there is nothing to write.");
        }

        if (samples.Count > StockImport.MostEntries || samples.Exists(s => s.Left.Count > StockImport.MostEntries))
        {
            return ImportResult.No($"it would give more than {StockImport.MostEntries} entries or files; no analysis has that many.");
        }

        var names = new FileNames("water", Resolution.WaterEnding);
        return new ImportResult([.. samples.Select(s => new ImportedFile(names.For(s.Name), JsonDraftWriter.Document(s.Document())))], null)
        {
            Understood = samples.Sum(s => s.Understood),
            NotUnderstood = samples.Sum(s => s.Left.Count + s.Strange),
        };
    }
}

/// <summary>One analysis as it is put together.</summary>
internal sealed class ImportedSample(string name, string origin)
{
    private readonly List<DraftMember> _whole = [];
    private readonly List<DraftMember> _ions = [];
    private readonly List<string> _notes = [origin];

    public string Name => name;

    public List<JsonDraft> Left { get; } = [];

    /// <summary>What the reader of water files will take as it stands.</summary>
    public int Understood { get; private set; }

    /// <summary>Values that went over as they stand and that the reader will not understand; each is a finding on the file.</summary>
    public int Strange => _whole.Count + _ions.Count - Understood;

    /// <summary>A row with one analyte.</summary>
    public void TakeOne(TableRow row, ColumnMap columns, RowText text)
    {
        var analyte = text.Cell(row, ColumnWords.Analyte);
        var value = text.Quantity(row, ColumnWords.Value, text.Cell(row, ColumnWords.Unit));
        if (text.Cell(row, ColumnWords.Basis) is { Length: > 0 } basis)
        {
            value += basis.StartsWith("as ", StringComparison.Ordinal) ? " " + basis : " as " + basis;
        }

        if (row.IsHidden || analyte.Length is 0 or > JsonReading.KeyLengthLimit || value.Length == 0 || !Add(analyte, value))
        {
            Left.Add(RowText.Kept(row, null));
        }

        if (text.Note(row) is { Length: > 0 } note)
        {
            _notes.Add($"{analyte}: {note}");
        }
    }

    /// <summary>A row with a whole sample.</summary>
    public void TakeAll(TableRow row, ColumnMap columns, RowText text)
    {
        if (row.IsHidden)
        {
            Left.Add(RowText.Kept(row, null));
            return;
        }

        foreach (var column in columns.Columns.Where(c => c.Meaning is { } m && ColumnWords.IsWaterKey(m.Word)))
        {
            var value = text.Quantity(row, column);
            if (value.Length > 0 && !Add(column.Meaning!.Word, value))
            {
                Left.Add(JsonDraft.Of(string.Create(
                    CultureInfo.InvariantCulture, $"row {row.Number}: {column.Heading} {value} (stated twice)")));
            }
        }

        if (text.Note(row) is { Length: > 0 } note)
        {
            _notes.Add(note);
        }
    }

    public JsonDraft.Object Document()
    {
        var members = new List<DraftMember>
        {
            new("format", new JsonDraft.Literal("1")),
            new("name", JsonDraft.Of(name)),
            new("note", JsonDraft.Of(string.Join("; ", _notes))),
        };
        members.AddRange(_whole);
        if (_ions.Count > 0)
        {
            members.Add(new DraftMember("ions", new JsonDraft.Object(_ions)));
        }

        if (Left.Count > 0)
        {
            members.Add(new DraftMember(NotUnderstoodReader.Key, new JsonDraft.List(Left)));
        }

        return new JsonDraft.Object(members);
    }

    /// <summary>False when the same is stated already.</summary>
    private bool Add(string key, string value)
    {
        // "Calcium" is Ca by any reading; what counts as an ion and what as its element ("Nitrate") is left to be asked.
        key = KeyAliases.Symbol(key, Analytes.All.Keys) ?? key;
        var known = ColumnWords.Find(key);
        var list = known is not null && ColumnWords.WaterKeys.Contains(known) ? _whole : _ions;
        var named = list == _whole ? known! : key;
        if (list.Exists(m => m.Name == named))
        {
            return false;
        }

        list.Add(new DraftMember(named, JsonDraft.Of(value)));
        if (WaterReader.Reads(named, value))
        {
            Understood++;
        }

        return true;
    }
}
