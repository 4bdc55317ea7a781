using System.Text.Json;

namespace RecipeLint.Generators;

/// <summary>Finds what is wrong with the rows of one file.</summary>
internal static class RowChecker
{
    /// <summary>Each fault in one line, with its place in the text.</summary>
    internal static IEnumerable<(string Message, int At)> Faults(string file, string text, RowContract contract)
    {
        JsonDocument document;
        string? broken = null;
        try
        {
            document = JsonDocument.Parse(text);
        }
        catch (JsonException e)
        {
            document = JsonDocument.Parse("{}");
            broken = $"{file}: not JSON: {e.Message}";
        }

        using (document)
        {
            if (broken is not null)
            {
                yield return (broken, 0);
            }
            else if (document.RootElement.TryGetProperty(contract.Rows, out var rows) && rows.ValueKind == JsonValueKind.Array)
            {
                foreach (var fault in InRows(file, text, contract, rows))
                {
                    yield return fault;
                }
            }
            else if (contract.Pattern == file)
            {
                yield return ($"{file}: the list '{contract.Rows}' is missing", 0);
            }
        }
    }

    private static IEnumerable<(string Message, int At)> InRows(string file, string text, RowContract contract, JsonElement rows)
    {
        var number = 0;
        var names = new HashSet<string>();
        foreach (var row in rows.EnumerateArray())
        {
            number++;
            var at = Math.Max(0, text.IndexOf(row.GetRawText(), StringComparison.Ordinal));
            var known = row.TryGetProperty(contract.Name, out var given) && given.ValueKind == JsonValueKind.String
                ? $"'{given.GetString()}'"
                : $"number {number}";
            var where = $"{file}: the row {known}";
            foreach (var field in Owed(row, contract).Where(f => !Has(row, f)))
            {
                yield return ($"{where} has no '{field}'", at);
            }

            foreach (var member in row.EnumerateObject().Where(m => !contract.Owes.Contains(m.Name) && !contract.May.Contains(m.Name)))
            {
                yield return ($"{where} has a field '{member.Name}' that nothing reads", at);
            }

            if (!names.Add(known))
            {
                yield return ($"{where} stands there twice", at);
            }
        }
    }

    private static IEnumerable<string> Owed(JsonElement row, RowContract contract) =>
        contract.Owes.Concat(contract.When.Where(w => Says(row, w.Field, w.Says)).SelectMany(w => w.Owes)).Distinct();

    private static bool Has(JsonElement row, string field) =>
        row.TryGetProperty(field, out var value) && value.ValueKind switch
        {
            JsonValueKind.Null or JsonValueKind.Undefined => false,
            JsonValueKind.String => !string.IsNullOrWhiteSpace(value.GetString()),
            _ => true,
        };

    private static bool Says(JsonElement row, string field, IReadOnlyList<string> words)
    {
        if (!row.TryGetProperty(field, out var value))
        {
            return false;
        }

        var said = value.ValueKind == JsonValueKind.Array ? value.EnumerateArray().Select(v => v.ToString()) : [value.ToString()];
        return words.Contains("*") || said.Any(s => words.Contains(s, StringComparer.OrdinalIgnoreCase));
    }
}
