using System.Text.Json.Nodes;

namespace RecipeLint.Tests.Support;

/// <summary>
/// Documents with one example of a schema each: the whole example of the object that a key belongs to, with the example of the key in its place.
/// </summary>
internal static class SingleValues
{
    /// <summary>Equipment and sites that the examples name.</summary>
    public const string Settings = """
        {"scales": [{"name": "scale-0.01", "readability": "0.01 g", "capacity": "500 g"}, {"name": "scale-1", "readability": "1 g", "capacity": "5 kg"}],
         "measures": [{"name": "cylinder-100", "kind": "cylinder", "capacity": "100 mL", "readability": "1 mL"}, {"name": "cylinder-2000", "kind": "cylinder", "capacity": "2 L", "readability": "20 mL"},
                      {"name": "syringe-60", "kind": "syringe", "capacity": "60 mL", "readability": "1 mL"}],
         "vessels": [{"name": "bottle-2L", "capacity": "2 L", "tare": "100 g"}], "sites": [{"name": "shed", "at": "5..30 °C"}, {"name": "tunnel", "at": "5..30 °C"}, {"name": "cold-room", "at": "5..8 °C"}]}
        """;

    private const string AnyStock = """{"format": 1, "makes": "2 L", "dose": "10 mL/L", "steps": [{"pour": "1.5 L"}, {"add": "KNO3", "amount": "100 g"}, {"topUp": "2 L"}]}""";

    private const string AnyWater = """{"format": 1, "pH": 6.0, "EC": "0.02 mS/cm", "ions": {"Ca": "1 mg/L", "HCO3": "3 mg/L"}}""";

    /// <summary>Files that the examples refer to.</summary>
    public static IReadOnlyList<(string Name, string Text)> Neighbours { get; } =
    [
        ("rain.water.json", AnyWater), ("a.stock.json", AnyStock), ("part-a.stock.json", AnyStock), ("trace.stock.json", AnyStock), ("molybdate-pre.stock.json", AnyStock),
        ("../water/rain.water.json", AnyWater), ("../stocks/a.stock.json", AnyStock), ("../stocks/trace.stock.json", AnyStock),
    ];

    public static IEnumerable<JsonObject> Of(JsonObject schema)
    {
        var whole = Examples(schema).First().AsObject();
        foreach (var changed in Variants(schema, schema, whole, 0))
        {
            yield return changed;
        }
    }

    /// <summary>The object with one of its keys, or one inside of these, as an example has it.</summary>
    private static IEnumerable<JsonObject> Variants(JsonObject root, JsonObject schema, JsonObject whole, int depth)
    {
        foreach (var (name, written) in schema["properties"]?.AsObject().Where(p => p.Value is JsonObject) ?? [])
        {
            var property = Target(root, written!.AsObject());
            foreach (var example in Examples(property))
            {
                if (Fits(schema, whole, name))
                {
                    yield return With(whole, name, example);
                }
            }

            if (depth > 4)
            {
                continue;
            }

            foreach (var inner in Inner(root, property, depth))
            {
                if (Fits(schema, whole, name))
                {
                    yield return With(whole, name, inner);
                }
            }
        }
    }

    private static IEnumerable<JsonNode> Inner(JsonObject root, JsonObject property, int depth)
    {
        if (property["properties"] is not null && Examples(property).FirstOrDefault() is JsonObject example)
        {
            foreach (var variant in Variants(root, property, example, depth + 1))
            {
                yield return variant;
            }
        }

        if (property["items"] is JsonObject items && Target(root, items) is { } entry)
        {
            // Of a step each form has its own example; elsewhere the entry has one.
            foreach (var of in Examples(entry).OfType<JsonObject>().Concat(Forms(root, entry)))
            {
                foreach (var variant in Variants(root, entry, of, depth + 1).Prepend(of))
                {
                    yield return new JsonArray(variant.DeepClone());
                }
            }
        }
    }

    private static IEnumerable<JsonObject> Forms(JsonObject root, JsonObject entry) =>
        entry["if"] is null ? [] : root["$defs"]!.AsObject().Where(d => d.Key.EndsWith("Step", StringComparison.Ordinal)).SelectMany(d => Examples(d.Value!.AsObject())).OfType<JsonObject>();

    /// <summary>A key that the example does not have may stand beside the others only where no form of the object forbids it.</summary>
    private static bool Fits(JsonObject schema, JsonObject whole, string name) =>
        whole.ContainsKey(name) || (schema["if"] is null && schema["oneOf"] is null && schema["anyOf"] is null && schema["dependentSchemas"] is null && schema["allOf"] is null);

    private static JsonObject With(JsonObject whole, string name, JsonNode value)
    {
        var changed = whole.DeepClone().AsObject();
        changed[name] = value.DeepClone();
        Suit(changed, name);
        return changed;
    }

    /// <summary>What stands beside the value follows it where the two would contradict each other: the example is about the value.</summary>
    private static void Suit(JsonObject changed, string name)
    {
        var text = changed[name] is JsonValue value && value.TryGetValue<string>(out var read) ? read : "";
        switch (name)
        {
            case "amount" when text.EndsWith('L') && changed.ContainsKey("add"):
                changed["add"] = "nitric-38";
                changed.Remove("assay");
                changed.Remove("with");
                break;
            case "makes":
                changed["steps"] = new JsonArray(new JsonObject { ["topUp"] = text });
                break;
            case "S":
                changed.Remove("SO4");
                break;
        }
    }

    private static JsonObject Target(JsonObject root, JsonObject schema) =>
        schema["$ref"]?.GetValue<string>() is { } reference ? root["$defs"]![reference.Split('/')[^1]]!.AsObject() : schema;

    private static IEnumerable<JsonNode> Examples(JsonObject schema) => (schema["examples"]?.AsArray() ?? []).OfType<JsonNode>();
}
