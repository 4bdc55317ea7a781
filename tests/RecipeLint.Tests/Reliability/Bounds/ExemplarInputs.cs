using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using RecipeLint.Living;
using RecipeLint.Recipes.Importing;
using RecipeLint.Rules.Engine;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests.Reliability.Bounds;

/// <summary>
/// Files that have no schema of ours but are written by the program and read again: each list, object, text and number of one that it wrote is
/// filled to its bound.
/// </summary>
internal static class ExemplarInputs
{
    /// <summary>Larger logs and baselines are refused before they are read.</summary>
    private const int LargestFile = 4_000_000;

    private const string Stock = """{"format": 1, "makes": "1 L", "steps": [{"pour": "500 mL", "of": "distilled"}, {"add": "calcium-nitrate-4h2o", "amount": "50 g"}, {"add": "magnesium-sulfate-7h2o", "amount": "50 g"}, {"topUp": "1 L", "of": "distilled"}]}""";

    private static readonly JsonSerializerOptions _plain = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static IReadOnlyList<string> Formats { get; } = ["baseline", "log", "score", "mapping"];

    public static IEnumerable<BoundedInput> Of(string format)
    {
        var (name, exemplar, others, arguments) = Exemplar(format);
        var root = JsonNode.Parse(exemplar)!;
        foreach (var (place, kind, path) in Places(root))
        {
            foreach (var (variant, bytes) in Fillings(exemplar, path, kind))
            {
                yield return new BoundedInput(format, place, variant, kind, new Dictionary<string, byte[]>(others) { [name] = bytes }, arguments);
            }
        }
    }

    private static (string Name, byte[] Exemplar, Dictionary<string, byte[]> Others, string[] Arguments) Exemplar(string format)
    {
        var shop = new Dictionary<string, byte[]> { ["a.stock.json"] = Encoding.UTF8.GetBytes(Stock) };
        switch (format)
        {
            case "baseline":
                return ("b.json", BaselineFile.Write([new BaselineEntry("RL0101", "a.stock.json", "magnesium-sulfate-7h2o", 3.5)]), shop, ["check", ".", "--baseline", "b.json"]);
            case "log":
                var log = Cli.RunOver(new BoundedInput("", "", "", BoundKind.List, shop).Tree(), "check", ".", "--format", "sarif", "--fail-on", "never").Out;
                return ("a.sarif", Encoding.UTF8.GetBytes(log), [], ["merge", "a.sarif"]);
            case "score":
                return ("first-week/score.json", """{"format": 1, "exercises": {"1a-x": {"answered": true, "tries": 1, "mended": true, "shown": false}}}"""u8.ToArray(), [], ["learn", "--score"]);
            default:
                var mapping = new Mapping(new Dictionary<string, ColumnMeaning> { ["Salt"] = new("substance", null), ["Weight"] = new("amount", "g") }, true, ';').Write();
                return ("m.json", mapping, new Dictionary<string, byte[]> { ["t.csv"] = "Salt;Weight\nKNO3;2,5\n"u8.ToArray() }, ["import", "t.csv", "--mapping", "m.json", "--dry-run"]);
        }
    }

    /// <summary>One place of each path without indices.</summary>
    private static List<(string Place, BoundKind Kind, List<object> Path)> Places(JsonNode root)
    {
        var places = new List<(string, BoundKind, List<object>)>();
        var seen = new HashSet<string>(StringComparer.Ordinal);
        var open = new Queue<(JsonNode? Node, string Place, List<object> Path)>([(root, "", [])]);
        while (open.TryDequeue(out var next))
        {
            var kind = next.Node switch
            {
                JsonArray or JsonObject => BoundKind.List,
                JsonValue value when value.GetValueKind() == JsonValueKind.String => BoundKind.Text,
                JsonValue value when value.GetValueKind() == JsonValueKind.Number => BoundKind.Number,
                _ => (BoundKind?)null,
            };
            if (kind is { } known && seen.Add(next.Place) && next.Node is not (JsonArray { Count: 0 } or JsonObject { Count: 0 }))
            {
                places.Add((next.Place.Length == 0 ? "/" : next.Place, known, next.Path));
            }

            switch (next.Node)
            {
                case JsonArray items:
                    open.Enqueue((items.Count > 0 ? items[0] : null, next.Place + "/*", [.. next.Path, 0]));
                    break;
                case JsonObject members:
                    foreach (var (key, value) in members)
                    {
                        open.Enqueue((value, $"{next.Place}/{key}", [.. next.Path, key]));
                    }

                    break;
            }
        }

        return places;
    }

    private static IEnumerable<(string Variant, byte[] Bytes)> Fillings(byte[] exemplar, List<object> path, BoundKind kind)
    {
        if (kind == BoundKind.List)
        {
            yield return ("many", Changed(exemplar, path, Many));
            yield break;
        }

        foreach (var (name, text) in BoundedInput.Texts)
        {
            if (kind == BoundKind.Text)
            {
                yield return (name, Changed(exemplar, path, _ => JsonValue.Create(text)!));
            }
        }

        foreach (var number in BoundedInput.Numbers)
        {
            if (kind == BoundKind.Number)
            {
                yield return (number.Length > 40 ? $"{number.Length} digits" : number, Changed(exemplar, path, _ => JsonValue.Create("\u0001")!, number));
            }
        }
    }

    /// <summary>Ten thousand of the first entry, fewer where the file would not be read any more.</summary>
    private static JsonNode Many(JsonNode node)
    {
        if (node is JsonArray items)
        {
            var one = items[0]!.ToJsonString(_plain);
            return new JsonArray([.. Enumerable.Range(0, Count(one)).Select(_ => JsonNode.Parse(one))]);
        }

        var members = (JsonObject)node.DeepClone();
        var (key, value) = members.First();
        var text = value?.ToJsonString(_plain) ?? "null";
        for (var i = Count(text); i > 0; i--)
        {
            members[string.Create(CultureInfo.InvariantCulture, $"{key}-{i}")] = JsonNode.Parse(text);
        }

        return members;
    }

    private static int Count(string entry) => Math.Clamp(LargestFile / (entry.Length + 4), 1, BoundedInput.Entries);

    private static byte[] Changed(byte[] exemplar, List<object> path, Func<JsonNode, JsonNode> change, string raw = "")
    {
        var root = JsonNode.Parse(exemplar)!;
        if (path.Count == 0)
        {
            root = change(root);
        }
        else
        {
            var parent = path.Take(path.Count - 1).Aggregate(root, (at, step) => step is int i ? at[i]! : at[(string)step]!);
            if (path[^1] is int index)
            {
                parent[index] = change(parent[index]!);
            }
            else
            {
                parent[(string)path[^1]] = change(parent[(string)path[^1]]!);
            }
        }

        var text = root.ToJsonString(_plain);
        return Encoding.UTF8.GetBytes(raw.Length == 0 ? text : text.Replace("\"\\u0001\"", raw, StringComparison.Ordinal));
    }
}
