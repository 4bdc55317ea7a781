using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace RecipeLint.Fuzz;

/// <summary>
/// Changes shops as values: a value of the same key from another file, an extreme number, an element many times, a member moved elsewhere, a
/// reference to another file; now and then as bytes.
/// </summary>
internal static class ShopMutator
{
    /// <summary>Three as a rule. Whether there is another is drawn after each, so that a guided run can put one in between others.</summary>
    private const int MostChanges = 30;
    private const string RawMark = "\u0001raw:";
    private static readonly JsonSerializerOptions _plain = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping, WriteIndented = true };

    private static readonly string[] _odd =
    [
        "null", "true", "[]", "{}", "\"\"", "\" \"", "[[]]", "[null]", "{\"\":0}", "{\"note\":{}}", "[1,2]", "\"..\"", "\"/dev/zero\"", "\"../../x.water.json\"", "\"C:/x.stock.json\"", "\"http://x.invalid/a\"", "\"\\u202e\\u001b[2J\"", "\"\\ud800\"",
    ];

    public static Dictionary<string, byte[]> Mutate(Random random, FuzzShop shop)
    {
        var files = shop.Files.ToDictionary(f => f.Path, f => f.Bytes, StringComparer.Ordinal);
        for (var made = 0; made == 0 || (made < MostChanges && files.Count > 0 && random.Next(3) > 0); made++)
        {
            var path = Words.Pick(random, [.. files.Keys]);
            switch (random.Next(24))
            {
                case 0:
                    files[path] = Bytes(random, files[path]);
                    break;
                case 1:
                    var donor = Words.Pick(random, Words.Pick(random, Corpus.Instance.Shops).Files);
                    files[donor.Path] = donor.Bytes;
                    break;
                case 2 when files.Count > 1:
                    files.Remove(path);
                    break;
                case 3:
                    files[Renamed(random, path)] = files[path];
                    break;
                default:
                    files[path] = Values(random, files[path], [.. files.Keys]);
                    break;
            }
        }

        return files;
    }

    private static string Renamed(Random random, string path)
    {
        var at = path.LastIndexOf('/') + 1;
        return path[..at] + Words.Pick(random, "b-", "ü", "a b ", "-", "x.", "'") + path[at..];
    }

    public static byte[] Bytes(Random random, byte[] bytes)
    {
        var list = bytes.ToList();
        for (var left = random.Next(1, 5); left > 0; left--)
        {
            var at = random.Next(list.Count + 1);
            switch (random.Next(5))
            {
                case 0:
                    list.RemoveRange(at, Math.Min(random.Next(1, 30), list.Count - at));
                    break;
                case 1:
                    list.InsertRange(at, Encoding.UTF8.GetBytes(Words.Pick(random, Words.Pieces)));
                    break;
                case 2:
                    list.Insert(at, (byte)random.Next(256));
                    break;
                case 3:
                    list.InsertRange(at, list.GetRange(at, Math.Min(random.Next(1, 200), list.Count - at)));
                    break;
                case 4 when list.Count > 0:
                    list[random.Next(list.Count)] = (byte)random.Next(256);
                    break;
            }
        }

        return [.. list];
    }

    /// <summary>One document with another value, member or element somewhere.</summary>
    public static byte[] Values(Random random, byte[] bytes, string[] paths)
    {
        try
        {
            var root = JsonNode.Parse(bytes, null, Corpus.Lenient);
            var nodes = new List<JsonNode>();
            Walk(root, nodes);
            if (nodes.Count == 0)
            {
                return Bytes(random, bytes);
            }

            Change(random, nodes[random.Next(nodes.Count)], paths);
            return Encoding.UTF8.GetBytes(Unraw(root!.ToJsonString(_plain)));
        }
        catch (Exception e) when (e is JsonException or ArgumentException or InvalidOperationException)
        {
            // No JSON, a member twice or half a character: as bytes then.
            return Bytes(random, bytes);
        }
    }

    private static void Walk(JsonNode? node, List<JsonNode> nodes)
    {
        switch (node)
        {
            case JsonObject members:
                nodes.Add(members);
                foreach (var (_, value) in members)
                {
                    Walk(value, nodes);
                }

                break;
            case JsonArray items:
                nodes.Add(items);
                foreach (var item in items)
                {
                    Walk(item, nodes);
                }

                break;
        }
    }

    private static void Change(Random random, JsonNode node, string[] paths)
    {
        if (node is JsonArray items)
        {
            ChangeList(random, items);
            return;
        }

        var members = (JsonObject)node;
        var names = members.Select(m => m.Key).ToList();
        if (names.Count == 0 || random.Next(6) == 0)
        {
            // A member that stands somewhere else in the corpus.
            var key = Words.Pick(random, Corpus.Instance.Keys);
            members[key] = Parsed(Words.Pick(random, Corpus.Instance.Values[key]));
            return;
        }

        var name = Words.Pick(random, names);
        switch (random.Next(12))
        {
            case 0:
                members.Remove(name);
                break;
            case 1:
                var moved = members[name]?.DeepClone();
                members.Remove(name);
                members[Words.Pick(random, Words.Scratch(random, name), Words.Pick(random, Corpus.Instance.Keys))] = moved;
                break;
            case 2:
                members[name] = Parsed(Words.Pick(random, _odd));
                break;
            case 3:
                members[name] = RawMark + Words.Pick(random, Words.Numbers);
                break;
            case 4:
                members[name] = Words.Quantity(random);
                break;
            case 5:
                members[name] = Words.Pick(random, paths);
                break;
            case 6:
                members[name] = Words.Pick(random, Words.Formulas);
                break;
            case 7 when members[name]?.GetValueKind() == JsonValueKind.String:
                members[name] = Words.Scratch(random, members[name]!.GetValue<string>());
                break;
            case 8 when members[name]?.GetValueKind() == JsonValueKind.String:
                members[name] = Rescaled(random, members[name]!.GetValue<string>());
                break;
            default:
                members[name] = Parsed(Words.Pick(random, Corpus.Instance.Values.TryGetValue(name, out var same) ? same : Corpus.Instance.Strings));
                break;
        }
    }

    /// <summary>The same text with another number in the place of the first.</summary>
    private static string Rescaled(Random random, string text)
    {
        var start = text.AsSpan().IndexOfAnyInRange('0', '9');
        if (start < 0)
        {
            return text;
        }

        var end = start;
        while (end < text.Length && (char.IsAsciiDigit(text[end]) || text[end] == '.'))
        {
            end++;
        }

        return text[..start] + Words.Pick(random, random.Next(2) == 0 ? Words.Extremes : Words.Numbers) + text[end..];
    }

    private static void ChangeList(Random random, JsonArray items)
    {
        var at = items.Count == 0 ? 0 : random.Next(items.Count);
        switch (random.Next(6))
        {
            case 0 when items.Count > 0:
                items.RemoveAt(at);
                break;
            case 1 when items.Count > 0:
                var copies = random.Next(20) == 0 ? random.Next(1, 400) : random.Next(1, 4);
                for (var i = 0; i < copies && items.Count < 2000; i++)
                {
                    items.Insert(at, items[at]?.DeepClone());
                }

                break;
            case 2 when items.Count > 1:
                var moved = items[at]?.DeepClone();
                items.RemoveAt(at);
                items.Insert(random.Next(items.Count + 1), moved);
                break;
            case 3:
                items.Insert(at, Parsed(Words.Pick(random, _odd)));
                break;
            default:
                var donor = Corpus.Instance.Values.TryGetValue(items.GetPropertyNameOrEmpty(), out var same) ? same : Corpus.Instance.Strings;
                var value = Parsed(Words.Pick(random, donor));
                items.Insert(at, value is JsonArray { Count: > 0 } list ? list[random.Next(list.Count)]?.DeepClone() : value);
                break;
        }
    }

    private static string GetPropertyNameOrEmpty(this JsonArray items) => items.Parent is JsonObject ? items.GetPropertyName() : "";

    private static JsonNode? Parsed(string text) => text.Contains("\\ud800", StringComparison.Ordinal) ? RawMark + text : JsonNode.Parse(text);

    /// <summary>Marked strings stand without quotes in the file: numbers that no JSON library would write.</summary>
    private static string Unraw(string text)
    {
        const string Escaped = "\"\\u0001raw:";
        int at;
        while ((at = text.IndexOf(Escaped, StringComparison.Ordinal)) >= 0)
        {
            var end = at + Escaped.Length;
            while (end < text.Length && (text[end] != '"' || text[end - 1] == '\\'))
            {
                end++;
            }

            var raw = text[(at + Escaped.Length)..Math.Min(end, text.Length)].Replace("\\\"", "\"", StringComparison.Ordinal).Replace("\\\\", "\\", StringComparison.Ordinal);
            text = text[..at] + raw + (end < text.Length ? text[(end + 1)..] : "");
        }

        return text;
    }
}
