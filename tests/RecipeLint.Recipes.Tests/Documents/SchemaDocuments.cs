using System.Globalization;
using System.Text;
using System.Text.Json;
using CsCheck;

namespace RecipeLint.Recipes.Tests.Documents;

/// <summary>
/// Makes documents that a schema describes: every key it knows, values from its examples, its words, or text that looks like a
/// quantity and is none. Which branch of a choice is taken, and which optional keys stand, is random.
/// </summary>
internal sealed class SchemaDocuments(JsonElement schema)
{
    private static readonly string[] Texts =
    [
        "", " ", "1", "24 g", "7,5 g", "1,000 mg", "1 gal", "5 fl oz", "50 ppm", "99 %", "38 % w/w", "2 L", "1:100", "1:0", "0:0", "0 L", "-1 g", "1e999 g", "1e-320 g",
        "4..30 °C", "30..4 °C", "± 5 %", "5.8 ± 0.2", "pH 3", "NaN", "½ L", "10 meq/L", "180 mg/L as CaCO3", "1 mg/L as P2O5", "0 mg/L", "3 drops", "2 tsp", "1e300 t/L",
        "KNO3", "magnesium sulfate", "boric-acid", "7757-79-1", "Ca(NO3)2.4H2O", "(((", "a.stock.json", "w.water.json", "../x.stock.json", "../../x.stock.json",
        "C:\\x.stock.json", "rain", "nothing", "\0", "\uFFFD", "𝟙 g", "\u202E", "2027-03-01", "2027-99-99", "H302", "5ONe", "x", "aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa",
    ];

    private static readonly string[] Numbers = ["0", "1", "4", "-1", "5.8", "1e3", "1e999", "-0", "1e-400", "4.0", "99999999999"];

    /// <summary>A generator of documents as JSON text.</summary>
    public Gen<string> Documents => Gen.Int.Select(seed => Write(new Random(seed)));

    private string Write(Random random)
    {
        var text = new StringBuilder();
        Append(text, schema, random);
        return text.ToString();
    }

    private void Append(StringBuilder text, JsonElement node, Random random)
    {
        node = Resolve(node);
        if (node.TryGetProperty("const", out var constant))
        {
            text.Append(constant.GetRawText());
        }
        else if (node.TryGetProperty("enum", out var words))
        {
            text.Append(words[random.Next(words.GetArrayLength())].GetRawText());
        }
        else
        {
            switch (Types(node)[random.Next(Types(node).Count)])
            {
                case "object":
                    AppendObject(text, node, random);
                    break;
                case "array":
                    AppendList(text, node, random);
                    break;
                case "integer":
                    text.Append((1 + random.Next(9)).ToString(CultureInfo.InvariantCulture));
                    break;
                case "number":
                    text.Append(Numbers[random.Next(Numbers.Length)]);
                    break;
                case "boolean":
                    text.Append(random.Next(2) == 0 ? "true" : "false");
                    break;
                default:
                    AppendText(text, node, random);
                    break;
            }
        }
    }

    private static List<string> Types(JsonElement node) => !node.TryGetProperty("type", out var type) ? ["string"]
        : type.ValueKind == JsonValueKind.String ? [type.GetString()!]
        : [.. type.EnumerateArray().Select(t => t.GetString()!)];

    private static void AppendText(StringBuilder text, JsonElement node, Random random)
    {
        var examples = node.TryGetProperty("examples", out var list) ? list.EnumerateArray().Where(e => e.ValueKind == JsonValueKind.String).ToArray() : [];
        var kebab = node.TryGetProperty("pattern", out _);
        text.Append(examples.Length > 0 && (kebab || random.Next(3) > 0)
            ? examples[random.Next(examples.Length)].GetRawText()
            : JsonSerializer.Serialize(Texts[random.Next(Texts.Length)]));
    }

    private void AppendList(StringBuilder text, JsonElement node, Random random)
    {
        text.Append('[');
        var count = 1 + random.Next(4);
        for (var i = 0; i < count; i++)
        {
            text.Append(i > 0 ? "," : "");
            Append(text, node.GetProperty("items"), random);
        }

        text.Append(']');
    }

    private void AppendObject(StringBuilder text, JsonElement node, Random random)
    {
        var properties = node.TryGetProperty("properties", out var known) ? known.EnumerateObject().ToDictionary(p => p.Name, p => p.Value) : [];
        var required = new HashSet<string>(Required(node));
        var allowed = new HashSet<string>(properties.Keys);
        var branches = Branches(node).ToArray();
        if (branches.Length > 0)
        {
            var (key, branch) = branches[random.Next(branches.Length)];
            required.Add(key);
            required.UnionWith(Required(branch));
            if (branch.TryGetProperty("properties", out var fitting))
            {
                allowed.IntersectWith(fitting.EnumerateObject().Select(p => p.Name));
            }
        }

        if (node.TryGetProperty("anyOf", out var choices) && choices.GetArrayLength() > 0)
        {
            required.UnionWith(Required(choices[random.Next(choices.GetArrayLength())]));
        }

        text.Append('{');
        var first = true;
        foreach (var (name, value) in properties.Where(p => required.Contains(p.Key) || (allowed.Contains(p.Key) && random.Next(3) == 0)))
        {
            text.Append(first ? "" : ",").Append(JsonSerializer.Serialize(name)).Append(':');
            Append(text, value, random);
            first = false;
        }

        if (node.TryGetProperty("additionalProperties", out var more) && more.ValueKind == JsonValueKind.Object && random.Next(2) == 0)
        {
            text.Append(first ? "" : ",").Append("\"RL9999\":");
            Append(text, more, random);
        }

        text.Append('}');
    }

    private static IEnumerable<string> Required(JsonElement node) =>
        node.TryGetProperty("required", out var keys) ? keys.EnumerateArray().Select(k => k.GetString()!) : [];

    /// <summary>The choices of a chain of if, then and else: the key that chooses and what then holds.</summary>
    private IEnumerable<(string Key, JsonElement Branch)> Branches(JsonElement node)
    {
        while (node.TryGetProperty("if", out var condition) && Required(condition).FirstOrDefault() is { } key)
        {
            yield return (key, Resolve(node.GetProperty("then")));
            node = Resolve(node.GetProperty("else"));
        }
    }

    private JsonElement Resolve(JsonElement node)
    {
        while (node.TryGetProperty("$ref", out var reference))
        {
            node = schema.GetProperty("$defs").GetProperty(reference.GetString()!.Split('/')[^1]);
        }

        return node;
    }
}
