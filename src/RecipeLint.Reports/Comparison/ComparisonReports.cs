using System.Buffers;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using RecipeLint.Reports.Formats;
using RecipeLint.Reports.Tables;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.Comparison;

/// <summary>A comparison in words for the terminal.</summary>
public static class ComparisonText
{
    public static void Write(TextWriter writer, Comparison comparison, TextOptions options)
    {
        var lines = new StyledLines(writer, options.Color);
        foreach (var line in TextWrap.Wrap(
            Printable.Show($"{comparison.Old} compared with {comparison.New}: {ComparisonSections.Summary(comparison)}"), options.Width))
        {
            lines.Line((line, Style.Strong));
        }

        foreach (var section in ComparisonSections.Of(comparison))
        {
            lines.Blank();
            lines.Line((section.Title, Style.Strong));
            foreach (var line in section.Says.SelectMany(s => TextWrap.Wrap(Printable.Show(s), options.Width - 2)))
            {
                lines.Line(("  " + line, Style.Plain));
            }

            foreach (var line in section.Table is { } table ? TableText.Lines(table, options.Width) : [])
            {
                lines.Line((line, Style.Plain));
            }
        }
    }
}

/// <summary>A comparison as Markdown for a pull request; what is past the size of a comment is left out and counted.</summary>
public static class ComparisonMarkdown
{
    public static void Write(TextWriter writer, Comparison comparison)
    {
        writer.Write($"## RecipeLint: {MarkdownEscape.Code(comparison.Old)} compared with {MarkdownEscape.Code(comparison.New)}\n\n");
        writer.Write($"{MarkdownEscape.Text(ComparisonSections.Summary(comparison))}\n");
        var room = MarkdownReport.MostCharacters;
        foreach (var section in ComparisonSections.Of(comparison))
        {
            var head = new StringBuilder($"\n### {MarkdownEscape.Text(section.Title)}\n\n");
            section.Says.ToList().ForEach(s => head.Append(MarkdownEscape.Text(s)).Append("\n\n"));
            var table = section.Table is { IsEmpty: false } known ? known : null;
            if (table is not null)
            {
                head.Append(Row(table.Columns.Select(c => c.Head)))
                    .Append('|')
                    .Append(string.Concat(table.Columns.Select(c => c.IsNumber ? " ---: |" : " --- |")))
                    .Append('\n');
            }

            writer.Write(head.ToString());
            room -= head.Length;
            var left = 0;
            foreach (var row in table?.Rows ?? [])
            {
                var line = Row(row);
                if (room < line.Length)
                {
                    left++;
                    continue;
                }

                writer.Write(line);
                room -= line.Length;
            }

            if (left > 0)
            {
                writer.Write($"\n{Say.Number(left)} more rows are left out here; 'recipelint compare' shows them all.\n");
            }
        }
    }

    private static string Row(IEnumerable<string> cells) => $"| {string.Join(" | ", cells.Select(MarkdownEscape.Text))} |\n";
}

/// <summary>A comparison as JSON; a key may be added without a new version, none is renamed or removed.</summary>
public static class ComparisonJson
{
    public const int FormatVersion = 1;

    private static readonly JsonWriterOptions Options = new()
    {
        Indented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    public static void Write(TextWriter writer, Comparison comparison)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(buffer, Options))
        {
            json.WriteStartObject();
            json.WriteNumber("formatVersion", FormatVersion);
            json.WriteString("kind", "comparison");
            Text(json, "old", comparison.Old);
            Text(json, "new", comparison.New);
            Each(json, "files", comparison.Files, f =>
            {
                Text(json, "file", f.Shown);
                json.WriteString("change", f.Kind.ToString().ToLowerInvariant());
                Text(json, "old", f.Old);
                Text(json, "new", f.New);
            });
            Each(json, "findingsNew", comparison.Brought, f => Finding(json, f));
            Each(json, "findingsGone", comparison.Gone, f => Finding(json, f));
            Each(json, "amounts", comparison.Amounts, a =>
            {
                Text(json, "file", a.File);
                Text(json, "id", a.Id);
                Text(json, "substance", a.What);
                Number(json, "old_g", a.OldGrams);
                Number(json, "new_g", a.NewGrams);
            });
            Each(json, "figures", comparison.Figures, f =>
            {
                Text(json, "file", f.File);
                Text(json, "kind", f.Kind);
                Text(json, "figure", f.Figure);
                Text(json, "unit", f.Unit);
                Number(json, "old", f.Old);
                Number(json, "new", f.New);
            });
            json.WriteStartArray("recipesMovedByOthers");
            comparison.Moved.ToList().ForEach(m => json.WriteStringValue(Printable.WellFormed(m)));
            json.WriteEndArray();
            json.WriteEndObject();
        }

        using var safe = new JsonSafeWriter(writer);
        safe.Write(Encoding.UTF8.GetString(buffer.WrittenSpan));
        safe.Write('\n');
        safe.Flush();
    }

    private static void Each<T>(Utf8JsonWriter json, string key, IEnumerable<T> items, Action<T> write)
    {
        json.WriteStartArray(key);
        foreach (var item in items)
        {
            json.WriteStartObject();
            write(item);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Finding(Utf8JsonWriter json, FindingChange change)
    {
        Text(json, "file", change.File);
        json.WriteNumber("line", change.Placed.Spot.Lines.Start.Line);
        Text(json, "rule", change.Finding.Rule.Id);
        Text(json, "name", change.Finding.Rule.Name);
        json.WriteString("level", Words.Of(change.Finding.Level));
        Text(json, "message", change.Finding.Message);
    }

    private static void Text(Utf8JsonWriter json, string key, string? text)
    {
        if (text is null)
        {
            json.WriteNull(key);
        }
        else
        {
            json.WriteString(key, Printable.WellFormed(text));
        }
    }

    private static void Number(Utf8JsonWriter json, string key, double? value)
    {
        if (value is { } number && double.IsFinite(number))
        {
            json.WriteNumber(key, number);
        }
        else
        {
            json.WriteNull(key);
        }
    }
}
