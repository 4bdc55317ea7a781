using System.Text.Json;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Schema;

/// <summary>One of our own schemas as plain JSON: what it says at the end of an evaluation path.</summary>
internal sealed class SchemaDocument
{
    // The document stays open as long as the schema is used, which is as long as the process runs.
    private readonly JsonElement _root;

    private SchemaDocument(string text)
    {
        Text = text;
        _root = JsonDocument.Parse(text).RootElement;
    }

    public string Text { get; }

    public JsonElement Root => _root;

    /// <summary>Reads an embedded schema.</summary>
    /// <exception cref="InvalidOperationException">The build left the schema out.</exception>
    public static SchemaDocument Load(string fileName)
    {
        using var stream = typeof(SchemaDocument).Assembly.GetManifestResourceStream(fileName)
            ?? throw new InvalidOperationException($"The schema {fileName} is not part of this build.");
        using var reader = new StreamReader(stream);
        return new SchemaDocument(reader.ReadToEnd());
    }

    /// <summary>The keys that a whole document may have.</summary>
    public IReadOnlyList<string> KeysAtTop() => SchemaWords.KeysOf(_root);

    /// <summary>The keys of the object that stands under a key of the document; empty where no object does.</summary>
    public IReadOnlyList<string> KeysBelow(string key) =>
        _root.GetProperty("properties").TryGetProperty(key, out var below) ? SchemaWords.KeysOf(below) : [];

    /// <summary>
    /// Follows an evaluation path from the root through references. Null when it cannot be followed, so that a caller never
    /// speaks of the wrong rule.
    /// </summary>
    public SchemaSpot? Follow(string evaluationPath)
    {
        var tokens = new JsonPointer(evaluationPath).Tokens;
        var spot = new SchemaSpot(_root);
        for (var i = 0; i < tokens.Count; i++)
        {
            var keyword = tokens[i];
            if (keyword == "items" && i > 0 && tokens[i - 1] == "items")
            {
                // The evaluator writes the keyword once for the list and once for its entries.
                continue;
            }

            if (!spot.Node.TryGetProperty(keyword, out var next))
            {
                return null;
            }

            switch (keyword)
            {
                case "$ref":
                    if (Resolve(next.GetString()!) is not { } target)
                    {
                        return null;
                    }

                    spot.Stay(target);
                    break;
                case "properties" or "patternProperties" or "dependentSchemas" when i + 1 < tokens.Count:
                    if (!next.TryGetProperty(tokens[++i], out var named))
                    {
                        return null;
                    }

                    spot.Enter(keyword, tokens[i], named);
                    break;
                case "anyOf" or "allOf" or "oneOf" when i + 1 < tokens.Count:
                    spot.EnterBranch(keyword);
                    i++;
                    break;
                case "properties" or "patternProperties" or "dependentSchemas" or "anyOf" or "allOf" or "oneOf":
                    return null;
                default:
                    spot.Enter(keyword, null, next);
                    break;
            }
        }

        return spot;
    }

    private JsonElement? Resolve(string reference)
    {
        const string Definitions = "#/$defs/";
        return reference.StartsWith(Definitions, StringComparison.Ordinal)
            && _root.TryGetProperty("$defs", out var definitions)
            && definitions.TryGetProperty(reference[Definitions.Length..], out var found)
                ? found
                : null;
    }
}

/// <summary>Where in a schema an evaluation path ends, and what stands around it.</summary>
internal sealed class SchemaSpot(JsonElement root)
{
    // Schemas met on the way that speak of the same value, the outermost first.
    private readonly List<JsonElement> _sameValue = [root];

    // Schemas that speak of the object or list around it.
    private List<JsonElement> _around = [];

    public JsonElement Node { get; private set; } = root;

    /// <summary>The schema that holds the keyword that led here.</summary>
    public JsonElement Holder { get; private set; } = root;

    /// <summary>The last keyword that led here; empty at the root.</summary>
    public string Keyword { get; private set; } = "";

    /// <summary>Inside a condition, where failing is no error.</summary>
    public bool IsCondition { get; private set; }

    /// <summary>Inside one of several alternatives; <see cref="Holder"/> is the schema that lists them.</summary>
    public bool IsAlternative { get; private set; }

    /// <summary>The key whose presence made this schema hold; null when none did.</summary>
    public string? DependsOn { get; private set; }

    public void Stay(JsonElement node) => Add(node);

    public void Enter(string keyword, string? name, JsonElement node)
    {
        if (!IsAlternative)
        {
            Holder = Node;
            Keyword = keyword;
        }

        IsCondition |= keyword == "if";
        if (keyword == "dependentSchemas")
        {
            DependsOn = name;
        }

        if (keyword is "properties" or "patternProperties" or "additionalProperties" or "items")
        {
            _around = [.. _sameValue];
            _sameValue.Clear();
        }

        Add(node);
    }

    public void EnterBranch(string keyword)
    {
        Holder = Node;
        Keyword = keyword;
        IsAlternative = keyword == "anyOf";
    }

    /// <summary>The full description of a key of this object, wherever among the schemas of this value it stands.</summary>
    public JsonElement? Property(string name)
    {
        foreach (var schema in _sameValue)
        {
            if (schema.TryGetProperty("properties", out var properties)
                && properties.TryGetProperty(name, out var property)
                && property.ValueKind == JsonValueKind.Object)
            {
                return property;
            }
        }

        return null;
    }

    /// <summary>The keys that choose among the forms of the object around this value (the verbs of a step), in their order.</summary>
    public IReadOnlyList<string> Selectors()
    {
        var selectors = new List<string>();
        var chain = _around.FirstOrDefault(s => s.TryGetProperty("if", out _));
        while (chain.ValueKind == JsonValueKind.Object && chain.TryGetProperty("if", out var condition))
        {
            if (condition.TryGetProperty("required", out var keys) && keys.GetArrayLength() == 1)
            {
                selectors.Add(keys[0].GetString()!);
            }

            chain = chain.TryGetProperty("else", out var otherwise) ? otherwise : default;
        }

        return selectors;
    }

    private void Add(JsonElement node)
    {
        Node = node;
        if (node.ValueKind == JsonValueKind.Object)
        {
            _sameValue.Add(node);
        }
    }
}
