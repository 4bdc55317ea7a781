using System.Text.Json;

namespace RecipeLint.Generators;

/// <summary>What one kind of file owes, as fields.json says it.</summary>
internal sealed class RowContract
{
    private RowContract(string pattern, JsonElement says)
    {
        Pattern = pattern;
        Rows = says.GetProperty("rows").GetString()!;
        Name = says.GetProperty("name").GetString()!;
        Owes = Words(says, "owes");
        May = Words(says, "may");
        When = [.. says.GetProperty("when")
            .EnumerateArray()
            .Select(w => (w.GetProperty("field").GetString()!, Words(w, "says"), Words(w, "owes")))];
    }

    internal string Pattern { get; }
    internal string Rows { get; }
    internal string Name { get; }
    internal IReadOnlyList<string> Owes { get; }
    internal IReadOnlyList<string> May { get; }
    internal IReadOnlyList<(string Field, IReadOnlyList<string> Says, IReadOnlyList<string> Owes)> When { get; }

    internal static IReadOnlyList<RowContract> Read(string text)
    {
        using var document = JsonDocument.Parse(text);
        return [.. document.RootElement.GetProperty("files").EnumerateObject().Select(f => new RowContract(f.Name, f.Value.Clone()))];
    }

    /// <summary>"substances/*.json" is for every file of that folder that has such rows.</summary>
    internal bool IsFor(string file) => Pattern == file
        || (Pattern.EndsWith("/*.json", StringComparison.Ordinal)
            && file.StartsWith(Pattern.Substring(0, Pattern.Length - 6), StringComparison.Ordinal));

    private static IReadOnlyList<string> Words(JsonElement item, string field) =>
        [.. item.GetProperty(field).EnumerateArray().Select(w => w.GetString()!)];
}
