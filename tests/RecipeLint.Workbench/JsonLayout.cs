using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace RecipeLint.Workbench;

/// <summary>How the schema files are laid out: a member a line, but references, lists of plain values and what stands in examples in one.</summary>
internal static class JsonLayout
{
    private const int Width = 140;

    internal static readonly JsonSerializerOptions Plain = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    internal static string Write(JsonNode root)
    {
        var text = new StringBuilder();
        Append(text, root, 0, 0, inExample: false);
        return text.Append('\n').ToString();
    }

    private static void Append(StringBuilder text, JsonNode? node, int indent, int column, bool inExample)
    {
        var line = OneLine(node);
        if (node is null or JsonValue || (column + line.Length < Width && (inExample || IsPlain(node))))
        {
            text.Append(line);
            return;
        }

        var (open, close) = node is JsonObject ? ('{', '}') : ('[', ']');
        text.Append(open);
        var first = true;
        foreach (var (key, value) in Children(node))
        {
            text.Append(first ? "\n" : ",\n").Append(' ', indent + 2);
            var label = key is null ? "" : Quoted(key) + ": ";
            text.Append(label);
            Append(text, value, indent + 2, indent + 2 + label.Length, inExample || key == "examples");
            first = false;
        }

        text.Append('\n').Append(' ', indent).Append(close);
    }

    private static bool IsPlain(JsonNode node) => node switch
    {
        JsonArray list => list.All(v => v is null or JsonValue),
        JsonObject { Count: 1 } one => one.All(p => IsLeaf(p.Value)),
        _ => false,
    };

    private static bool IsLeaf(JsonNode? node) => node is null or JsonValue || (node is JsonObject { Count: 1 } or JsonArray && IsPlain(node));

    private static IEnumerable<(string? Key, JsonNode? Value)> Children(JsonNode node) =>
        node is JsonObject members ? members.Select(p => ((string?)p.Key, p.Value)) : node.AsArray().Select(v => ((string?)null, v));

    private static string OneLine(JsonNode? node) => node switch
    {
        null => "null",
        JsonObject members => "{" + string.Join(", ", members.Select(p => $"{Quoted(p.Key)}: {OneLine(p.Value)}")) + "}",
        JsonArray list => "[" + string.Join(", ", list.Select(OneLine)) + "]",
        _ => node.ToJsonString(Plain),
    };

    private static string Quoted(string text) => JsonSerializer.Serialize(text, Plain);
}
