using System.Text;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Patching;

namespace RecipeLint.Recipes.Importing;

/// <summary>What was said once of tables of a kind, kept in a file to be used again.</summary>
/// <param name="Columns">Meaning of each heading, as written.</param>
/// <param name="DecimalComma">True for a decimal comma, false for a point; null when nothing was said.</param>
/// <param name="Separator">Of a text file; null when nothing was said.</param>
public sealed record Mapping(IReadOnlyDictionary<string, ColumnMeaning> Columns, bool? DecimalComma, char? Separator)
{
    public static Mapping Empty { get; } = new(new Dictionary<string, ColumnMeaning>(StringComparer.Ordinal), null, null);

    /// <summary>The mapping of a file's bytes, or one plain line why it cannot be used.</summary>
    public static (Mapping? Mapping, string? Fault) Read(byte[] bytes)
    {
        if (JsonReading.Read("mapping", bytes).Source.Tree?.Root is not { Kind: JsonKind.Object } root)
        {
            return (null, "is no mapping: it cannot be read as a JSON object.");
        }

        var columns = new Dictionary<string, ColumnMeaning>(StringComparer.Ordinal);
        foreach (var (name, item) in root["columns"]?.Members.Select(m => (m.Name, m.Value)) ?? [])
        {
            if (item.Kind != JsonKind.Text || ColumnMeaning.Read(item.Text) is not { } meaning)
            {
                return (null, $"says of the column '{name}' what no column can hold.");
            }

            columns[name] = meaning;
        }

        if (root.Members.FirstOrDefault(m => m.Name is not ("columns" or "decimal" or "separator" or "note" or "$schema"))
            is { Name: { } odd })
        {
            return (null, $"has the key '{odd}'; a mapping has 'columns', 'decimal', 'separator' and 'note'.");
        }

        return (Decimal(root["decimal"]), Apart(root["separator"])) switch
        {
            ((_, false), _) => (null, "has a 'decimal' that is neither \"comma\" nor \"point\"."),
            (_, (_, false)) => (null, "has a 'separator' that is no single character."),
            var ((comma, _), (apart, _)) => (new Mapping(columns, comma, apart), null),
        };
    }

    public byte[] Write()
    {
        var members = new List<DraftMember>
        {
            new("columns", new JsonDraft.Object([.. Columns.Select(c => new DraftMember(c.Key, JsonDraft.Of(c.Value.ToString())))])),
        };
        if (DecimalComma is { } comma)
        {
            members.Add(new DraftMember("decimal", JsonDraft.Of(comma ? "comma" : "point")));
        }

        if (Separator is { } apart)
        {
            members.Add(new DraftMember("separator", JsonDraft.Of(apart.ToString())));
        }

        return Encoding.UTF8.GetBytes(JsonDraftWriter.Document(new JsonDraft.Object(members)));
    }

    private static (bool? Comma, bool IsRight) Decimal(JsonItem? item) => item switch
    {
        null => (null, true),
        { Kind: JsonKind.Text, Text: "comma" } => (true, true),
        { Kind: JsonKind.Text, Text: "point" } => (false, true),
        _ => (null, false),
    };

    private static (char? Apart, bool IsRight) Apart(JsonItem? item) => item switch
    {
        null => (null, true),
        { Kind: JsonKind.Text, Text: [var one] } => (one, true),
        _ => (null, false),
    };
}
