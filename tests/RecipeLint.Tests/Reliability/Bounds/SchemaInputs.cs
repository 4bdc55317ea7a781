using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using RecipeLint.Recipes.Schema;
using RecipeLint.Reports.Tests.Support;

namespace RecipeLint.Tests.Reliability.Bounds;

/// <summary>
/// Inputs at their bounds, made of the published schemas: every list, map, text and number that a schema describes is found there and filled,
/// so that a new one is covered by itself. Around it stands the smallest document that the schema accepts, beside one of every other kind.
/// </summary>
internal sealed class SchemaInputs
{
    private const string OwnKey = "x-of-its-own";
    private static readonly JsonSerializerOptions _plain = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
    private readonly DocumentKind _kind;
    private readonly JsonElement _schema;

    private SchemaInputs(DocumentKind kind)
    {
        _kind = kind;
        _schema = JsonDocument.Parse(File.ReadAllBytes(Path.Combine(Repository.Root, "schema", DocumentKinds.SchemaFileName(kind)!))).RootElement;
    }

    /// <summary>Every kind of document that has a schema.</summary>
    public static IReadOnlyList<DocumentKind> Kinds { get; } = [.. Enum.GetValues<DocumentKind>().Where(k => DocumentKinds.SchemaFileName(k) is not null)];

    public static IEnumerable<BoundedInput> Of(DocumentKind kind) => new SchemaInputs(kind).All();

    private IEnumerable<BoundedInput> All()
    {
        var companions = Kinds.Where(k => k != _kind).ToDictionary(NameOf, k => Bytes(new SchemaInputs(k).Smallest(), ""));
        foreach (var slot in Slots())
        {
            foreach (var (variant, filling) in Fillings(slot))
            {
                var files = new Dictionary<string, byte[]>(companions) { [NameOf(_kind)] = filling };
                yield return new BoundedInput(_kind.ToString().ToLowerInvariant(), slot.Place, variant, slot.Kind, files, "check", ".");
            }
        }
    }

    private static string NameOf(DocumentKind kind) => kind == DocumentKind.Settings ? "recipelint.json" : DocumentKinds.SchemaFileName(kind)!.Replace(".schema.json", "", StringComparison.Ordinal) switch
    {
        "house-rule" => "a.rule.json",
        var name => $"a.{name}.json",
    };

    private JsonNode Smallest() => Example(_schema);

    private IEnumerable<(string Variant, byte[] Document)> Fillings(Slot slot)
    {
        switch (slot.Kind)
        {
            case BoundKind.Text:
                foreach (var (name, text) in BoundedInput.Texts)
                {
                    yield return (name, Document(slot, JsonValue.Create(text)!, ""));
                }

                break;
            case BoundKind.Number:
                foreach (var number in BoundedInput.Numbers)
                {
                    yield return (number.Length > 40 ? $"{number.Length} digits" : number, Document(slot, JsonValue.Create("\u0001")!, number));
                }

                break;
            default:
                foreach (var (variant, entry) in Entries(slot))
                {
                    foreach (var isOwn in (bool[])[false, true])
                    {
                        var list = Many(slot, entry, isOwn, BoundedInput.Entries);
                        var document = Document(slot, list, "");
                        if (document.Length > BoundedInput.LargestDocument)
                        {
                            document = Document(slot, Many(slot, entry, isOwn, (int)(BoundedInput.Entries * 0.97 * BoundedInput.LargestDocument / document.Length)), "");
                        }

                        yield return ($"{variant}, {(isOwn ? "each of its own" : "all alike")}", document);
                        yield return ($"{variant}, {(isOwn ? "each of its own" : "all alike")}, as many as are taken", Document(slot, Many(slot, entry, isOwn, Math.Min(1000, Count(document, slot))), ""));
                    }
                }

                break;
        }
    }

    private static int Count(byte[] document, Slot slot) => slot.Most ?? Math.Max(1, document.Length / 1000);

    /// <summary>One entry of each shape that the schema knows: for a step, one with each verb.</summary>
    private IEnumerable<(string Variant, JsonNode Entry)> Entries(Slot slot)
    {
        var node = Resolve(slot.Entry, out _);
        var branches = Branches(node).Select(b => b.Key).ToList();
        if (branches.Count == 0)
        {
            yield return ("smallest", Example(node));
            yield return ("whole", Example(node, whole: true));
        }

        foreach (var verb in branches)
        {
            yield return (verb, Example(node, verb));
        }
    }

    private static JsonNode Many(Slot slot, JsonNode entry, bool isOwn, int count)
    {
        if (slot.IsMap)
        {
            return new JsonObject(Enumerable.Range(0, count).Select(i => KeyValuePair.Create(string.Create(CultureInfo.InvariantCulture, $"{OwnKey}-{i}"), (JsonNode?)(isOwn ? Own(entry, i) : entry.DeepClone()))));
        }

        return new JsonArray([.. Enumerable.Range(0, count).Select(i => isOwn ? Own(entry, i) : entry.DeepClone())]);
    }

    /// <summary>The same with a number behind every text, so that no two are alike and no name is known.</summary>
    private static JsonNode Own(JsonNode entry, int number) => entry switch
    {
        JsonObject members => new JsonObject(members.Select(m => KeyValuePair.Create(m.Key, m.Value is null ? null : Own(m.Value, number)))),
        JsonArray items => new JsonArray([.. items.Select(i => i is null ? null : Own(i, number))]),
        JsonValue value when value.GetValueKind() == JsonValueKind.String => JsonValue.Create(string.Create(CultureInfo.InvariantCulture, $"{value.GetValue<string>()}{number}"))!,
        _ => entry.DeepClone(),
    };

    private byte[] Document(Slot slot, JsonNode filling, string raw) => Bytes(Around(_schema, slot.Segments, filling), raw);

    private static byte[] Bytes(JsonNode node, string raw) => Encoding.UTF8.GetBytes(raw.Length == 0 ? node.ToJsonString(_plain) : node.ToJsonString(_plain).Replace("\"\\u0001\"", raw, StringComparison.Ordinal));

    /// <summary>The smallest document with something at the end of a path.</summary>
    private JsonNode Around(JsonElement at, ReadOnlySpan<string> path, JsonNode filling)
    {
        if (path.Length == 0)
        {
            return filling;
        }

        var node = Resolve(at, out _);
        if (path[0] == "*")
        {
            return new JsonArray(Around(node.GetProperty("items"), path[1..], filling));
        }

        var members = Example(node, path[0] == "{}" ? null : path[0]).AsObject();
        var (key, child) = path[0] == "{}" ? (OwnKey, node.GetProperty("additionalProperties")) : (path[0], node.GetProperty("properties").GetProperty(path[0]));
        members[key] = Around(child, path[1..], filling);
        return members;
    }

    /// <summary>What the schema gives as an example, or the smallest thing that it accepts.</summary>
    /// <param name="with">A key that has to stand in it.</param>
    /// <param name="whole">With every key that it may have.</param>
    private JsonNode Example(JsonElement at, string? with = null, bool whole = false)
    {
        var node = Resolve(at, out _);
        if (node.TryGetProperty("const", out var constant))
        {
            return JsonNode.Parse(constant.GetRawText())!;
        }

        if (node.TryGetProperty("enum", out var words))
        {
            return JsonNode.Parse(words[0].GetRawText())!;
        }

        if (!node.TryGetProperty("properties", out var properties))
        {
            return node.TryGetProperty("items", out var items) ? new JsonArray(Example(items))
                : node.TryGetProperty("examples", out var examples) ? JsonNode.Parse(examples[0].GetRawText())!
                : node.TryGetProperty("type", out var type) && type.ValueKind == JsonValueKind.String && type.GetString() == "object" ? new JsonObject() : JsonValue.Create("x")!;
        }

        var members = new JsonObject();
        foreach (var key in Needed(node, with).Concat(whole ? properties.EnumerateObject().Select(p => p.Name) : []).Distinct())
        {
            if (properties.TryGetProperty(key, out var child))
            {
                members[key] = Example(child, null, whole);
            }
        }

        return members;
    }

    /// <summary>The keys that have to stand beside one.</summary>
    private List<string> Needed(JsonElement node, string? with)
    {
        var keys = Required(node).ToList();
        var branches = Branches(node).ToList();
        if (branches.Count > 0)
        {
            var (key, branch) = branches.FirstOrDefault(b => b.Key == with) is { Key: not null } own ? own
                : branches.FirstOrDefault(b => with is not null && b.Branch.TryGetProperty("properties", out var p) && p.TryGetProperty(with, out _)) is { Key: not null } fitting ? fitting
                : branches[0];
            keys.Add(key);
            keys.AddRange(Required(branch));
        }

        if (node.TryGetProperty("anyOf", out var choices) && choices.GetArrayLength() > 0)
        {
            keys.AddRange(Required(choices[0]));
        }

        return keys;
    }

    private static IEnumerable<string> Required(JsonElement node) => node.TryGetProperty("required", out var keys) ? keys.EnumerateArray().Select(k => k.GetString()!) : [];

    /// <summary>The choices of a chain of if, then and else: the key that chooses and what then holds.</summary>
    private IEnumerable<(string Key, JsonElement Branch)> Branches(JsonElement node)
    {
        while (node.TryGetProperty("if", out var condition) && Required(condition).FirstOrDefault() is { } key)
        {
            yield return (key, Resolve(node.GetProperty("then"), out _));
            node = Resolve(node.GetProperty("else"), out _);
        }
    }

    private JsonElement Resolve(JsonElement node, out string? name)
    {
        name = null;
        while (node.ValueKind == JsonValueKind.Object && node.TryGetProperty("$ref", out var reference))
        {
            name = reference.GetString()!.Split('/')[^1];
            node = _schema.GetProperty("$defs").GetProperty(name);
        }

        return node;
    }

    /// <summary>Every place of the schema once, where it is reached on the shortest way.</summary>
    private List<Slot> Slots()
    {
        var slots = new List<Slot>();
        var seen = new HashSet<string>(StringComparer.Ordinal);
        var open = new Queue<(JsonElement At, string[] Path, string Pointer)>([(_schema, [], "#")]);
        while (open.TryDequeue(out var next))
        {
            var node = Resolve(next.At, out var name);
            var pointer = name is null ? next.Pointer : "#/$defs/" + name;
            if (node.ValueKind != JsonValueKind.Object || !seen.Add(pointer))
            {
                continue;
            }

            if (node.TryGetProperty("items", out var items))
            {
                slots.Add(new Slot(BoundKind.List, next.Path, items, false, Most(node, "maxItems")));
                open.Enqueue((items, [.. next.Path, "*"], pointer + "/items"));
            }

            if (node.TryGetProperty("additionalProperties", out var more) && more.ValueKind == JsonValueKind.Object)
            {
                slots.Add(new Slot(BoundKind.List, next.Path, more, true, Most(node, "maxProperties")));
                open.Enqueue((more, [.. next.Path, "{}"], pointer + "/{}"));
            }

            if (node.TryGetProperty("properties", out var properties))
            {
                foreach (var property in properties.EnumerateObject())
                {
                    open.Enqueue((property.Value, [.. next.Path, property.Name], $"{pointer}/{property.Name}"));
                }
            }

            foreach (var type in Types(node))
            {
                if (next.Path.Length > 0 && type is "string" or "integer" or "number")
                {
                    slots.Add(new Slot(type == "string" ? BoundKind.Text : BoundKind.Number, next.Path, node, false, null));
                }
            }
        }

        return slots;
    }

    private static int? Most(JsonElement node, string key) => node.TryGetProperty(key, out var most) ? most.GetInt32() : null;

    private static IEnumerable<string> Types(JsonElement node) => !node.TryGetProperty("type", out var type) ? node.TryGetProperty("enum", out _) ? ["string"] : []
        : type.ValueKind == JsonValueKind.String ? [type.GetString()!]
        : type.EnumerateArray().Select(t => t.GetString()!);

    private sealed record Slot(BoundKind Kind, string[] Segments, JsonElement Entry, bool IsMap, int? Most)
    {
        public string Place => "/" + string.Join('/', Segments);
    }
}
