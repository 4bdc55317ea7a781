using RecipeLint.Recipes.Importing;
using RecipeLint.Recipes.Importing.Tables;
using RecipeLint.Reports;

namespace RecipeLint.Commands;

/// <summary>Asks what a table does not say by itself. An empty answer skips a question; the end of the input ends the asking.</summary>
internal sealed class ImportQuestions(TextReader answers, TextWriter screen)
{
    private bool _ended;

    public (List<(Table Table, ColumnMap Columns)> Read, ImportWishes Wishes) Ask(
        List<(Table Table, ColumnMap Columns)> read, ImportWishes wishes)
    {
        var said = new Dictionary<string, ColumnMeaning>(StringComparer.Ordinal);
        var asked = new List<(Table, ColumnMap)>();
        foreach (var (table, columns) in read)
        {
            var map = columns;
            foreach (var column in columns.Columns.Where(c => c.Meaning is null))
            {
                if (!said.TryGetValue(column.Heading, out var meaning) && AskColumn(column, map) is { } answer)
                {
                    said[column.Heading] = meaning = answer;
                }

                map = meaning is null ? map : map.With(column, meaning);
            }

            asked.Add((table, map));
        }

        return (asked, AskRest(asked, wishes));
    }

    private ColumnMeaning? AskColumn(Column column, ColumnMap map)
    {
        var usual = ColumnWords.Usual(column.Heading) is { } word && !map.Has(word) ? word : null;
        Say($"What does the column '{column.Heading}' hold? ({string.Join(", ", column.Samples)})");
        Say($"  {string.Join(", ", ColumnWords.All)}, or an ion such as Ca; with a unit: amount in g.");
        Say(usual is null ? "Enter keeps it in notes." : $"Often it is '{usual}'. Enter keeps it in notes.");
        while (Line() is { Length: > 0 } answer)
        {
            if (ColumnMeaning.Read(answer) is { } meaning)
            {
                return meaning;
            }

            Say($"'{answer}' is none of them.");
        }

        return null;
    }

    private ImportWishes AskRest(List<(Table Table, ColumnMap Columns)> read, ImportWishes wishes)
    {
        if (wishes.DecimalComma is null && OpenNumber(read) is { } open)
        {
            Say($"Which is the decimal sign in '{open}': comma or point? Enter writes numbers as they stand.");
            wishes = wishes with { DecimalComma = Line() switch { "comma" or "," => true, "point" or "." => false, _ => null } };
        }

        var needsVolume = read.Exists(r => r.Columns.IsStock && !r.Columns.Has(ColumnWords.Makes));
        if (needsVolume && wishes.Makes is null && wishes.MakesOfParts.Count == 0)
        {
            Say("How much does each part make, such as 2 L? Enter leaves it out.");
            wishes = wishes with { Makes = Line() is { Length: > 0 } makes ? makes : null };
        }

        return wishes;
    }

    /// <summary>A number that reads in two ways; null when there is none.</summary>
    private static string? OpenNumber(List<(Table Table, ColumnMap Columns)> read) =>
        read.SelectMany(r => r.Columns.Columns
                .Where(c => c.Meaning is { } m && (m.Word is ColumnWords.Amount or ColumnWords.Value || ColumnWords.IsWaterKey(m.Word)))
                .SelectMany(c => r.Columns.Rows.Select(row => row[c.Index])))
            .FirstOrDefault(c => !c.IsNumber && !c.IsEmpty && DecimalSign.IsOpen(c.Text)).Text;

    private void Say(string text) => screen.WriteLine(Printable.Show(text));

    private string? Line()
    {
        if (_ended)
        {
            return null;
        }

        screen.Write("> ");
        screen.Flush();
        var line = answers.ReadLine()?.Trim();
        _ended = line is null;
        return line;
    }
}
