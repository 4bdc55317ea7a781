using System.Text.Json;
using RecipeLint.Recipes.Schema;

namespace RecipeLint.Editor.Reading;

/// <summary>A key as the schema of its file describes it.</summary>
/// <param name="Words">Values it may have, where those are a few words.</param>
/// <param name="Examples">Values as they would stand in the file.</param>
internal sealed record SchemaKey(string Name, string Description, string Type, bool IsQuantity, IReadOnlyList<string> Words,
    IReadOnlyList<string> Examples);

/// <summary>What may stand where in a file of ours, read from the published schema that editors use too.</summary>
internal sealed class SchemaGuide
{
    private static readonly Lazy<Dictionary<DocumentKind, SchemaGuide>> _all = new(() => Enum.GetValues<DocumentKind>()
        .Where(k => DocumentKinds.SchemaFileName(k) is not null)
            .ToDictionary(k => k, k => new SchemaGuide(DocumentKinds.SchemaFileName(k)!)));

    // The document stays open as long as the schema is used, which is as long as the process runs.
    private readonly JsonElement _root;

    private SchemaGuide(string fileName)
    {
        using var stream = typeof(SchemaGuide).Assembly.GetManifestResourceStream("schema/" + fileName)
            ?? throw new InvalidOperationException($"The schema {fileName} is not part of this build.");
        _root = JsonDocument.Parse(stream).RootElement;
    }

    public static SchemaGuide? For(DocumentKind? kind) => kind is { } known ? _all.Value.GetValueOrDefault(known) : null;

    /// <summary>The key that leads to a value; null for an entry of a list and for what the schema does not know.</summary>
    public SchemaKey? KeyAt(IReadOnlyList<string> tokens) =>
        tokens.Count == 0 ? null : KeysAt([.. tokens.Take(tokens.Count - 1)], []).FirstOrDefault(k => k.Name == tokens[^1]);

    /// <summary>The keys that an object may have beside those it has.</summary>
    /// <param name="tokens">The way to the object.</param>
    /// <param name="present">The keys it has; they decide between forms, such as the verbs of a step.</param>
    public IReadOnlyList<SchemaKey> KeysAt(IReadOnlyList<string> tokens, IReadOnlyCollection<string> present)
    {
        if (Schema(tokens) is not { } schema)
        {
            return [];
        }

        var keys = new Dictionary<string, SchemaKey>(StringComparer.Ordinal);
        var allowed = Allowed(schema, present);
        Collect(schema, keys);
        return [.. keys.Values.Where(k => !present.Contains(k.Name) && (allowed is null || allowed.Contains(k.Name)))];
    }

    private JsonElement? Schema(IReadOnlyList<string> tokens)
    {
        JsonElement? at = _root;
        foreach (var token in tokens)
        {
            at = at is { } schema ? Step(Resolve(schema), token) : null;
        }

        return at is { } found ? Resolve(found) : null;
    }

    private JsonElement? Step(JsonElement schema, string token)
    {
        if (schema.ValueKind != JsonValueKind.Object)
        {
            return null;
        }

        if (schema.TryGetProperty("properties", out var properties) && properties.TryGetProperty(token, out var property)
            && property.ValueKind == JsonValueKind.Object)
        {
            return property;
        }

        foreach (var keyword in new[] { "else", "then" })
        {
            if (schema.TryGetProperty(keyword, out var branch) && Step(Resolve(branch), token) is { } inside)
            {
                return inside;
            }
        }

        if (schema.TryGetProperty("items", out var items) && int.TryParse(token, out _))
        {
            return items;
        }

        return schema.TryGetProperty("additionalProperties", out var other) && other.ValueKind == JsonValueKind.Object ? other : null;
    }

    /// <summary>The keys of the form that the present ones choose; null where there is only one form or none is chosen yet.</summary>
    private HashSet<string>? Allowed(JsonElement schema, IReadOnlyCollection<string> present)
    {
        for (var at = schema; at.ValueKind == JsonValueKind.Object
            && at.TryGetProperty("if", out var condition); at = at.TryGetProperty("else", out var next) ? Resolve(next) : default)
        {
            if (condition.TryGetProperty("required", out var keys) && keys.EnumerateArray().All(k => present.Contains(k.GetString()!))
                && at.TryGetProperty("then", out var then) && Resolve(then).TryGetProperty("properties", out var own))
            {
                return [.. own.EnumerateObject().Select(p => p.Name)];
            }
        }

        return null;
    }

    private void Collect(JsonElement schema, Dictionary<string, SchemaKey> keys)
    {
        if (schema.TryGetProperty("properties", out var properties))
        {
            foreach (var property in properties.EnumerateObject().Where(p => p.Value.ValueKind == JsonValueKind.Object))
            {
                keys.TryAdd(property.Name, Describe(property.Name, Resolve(property.Value)));
            }
        }

        if (schema.TryGetProperty("else", out var branch) && !schema.TryGetProperty("properties", out _))
        {
            Collect(Resolve(branch), keys);
        }
    }

    private static SchemaKey Describe(string name, JsonElement schema)
    {
        string Text(string key) => schema.TryGetProperty(key, out var value) && value.ValueKind == JsonValueKind.String
            ? value.GetString()! : "";
        IReadOnlyList<string> words = schema.TryGetProperty("enum", out var list)
            ? [.. list.EnumerateArray().Select(v => v.GetRawText())] : [];
        IReadOnlyList<string> examples = schema.TryGetProperty("examples", out var shown)
            ? [.. shown.EnumerateArray().Select(v => v.GetRawText())] : [];
        return new SchemaKey(name, Text("description"), Text("type"), Text("format") == "quantity", words, examples);
    }

    private JsonElement Resolve(JsonElement schema) =>
        schema.ValueKind == JsonValueKind.Object && schema.TryGetProperty("$ref", out var reference)
        && _root.GetProperty("$defs").TryGetProperty(reference.GetString()!.Split('/')[^1], out var found)
            ? found
            : schema;
}
