using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Schema;

/// <summary>Sentences about shape, made from the titles, descriptions and examples of our schemas.</summary>
internal static partial class SchemaWords
{
    private const int MostKeysListed = 24;

    private static readonly string[] _remarks =
        ["comment", "comments", "_comment", "$comment", "//", "#", "remark", "remarks", "description", "notes", "_note", "info", "memo"];

    /// <summary>Whether a key looks like a place people keep remarks in.</summary>
    public static bool IsRemark(string key) => _remarks.Contains(key.ToLowerInvariant());

    public static bool IsQuantity(JsonElement schema) =>
        schema.TryGetProperty("format", out var format) && format.ValueEquals("quantity");

    /// <summary>The keys to offer; older spellings are read, but not offered.</summary>
    public static IReadOnlyList<string> KeysOf(JsonElement schema) => schema.TryGetProperty("properties", out var properties)
        ? [.. properties.EnumerateObject().Where(p => !IsOlder(p.Value)).Select(p => p.Name)]
        : [];

    private static bool IsOlder(JsonElement property) =>
        property.ValueKind == JsonValueKind.Object
            && property.TryGetProperty("deprecated", out var older)
            && older.ValueKind == JsonValueKind.True;

    /// <summary>The texts of a keyword whose value is one text or a list of them; others in the list are left out.</summary>
    public static IReadOnlyList<string> Strings(JsonElement schema, string keyword)
    {
        if (!schema.TryGetProperty(keyword, out var value))
        {
            return [];
        }

        return value.ValueKind == JsonValueKind.Array
            ? [.. value.EnumerateArray().Where(v => v.ValueKind == JsonValueKind.String).Select(v => v.GetString()!)]
            : value.ValueKind == JsonValueKind.String ? [value.GetString()!] : [];
    }

    /// <summary>The keys of which a schema wants at least one.</summary>
    public static IReadOnlyList<string> AlternativesOf(JsonElement schema) =>
        schema.TryGetProperty("anyOf", out var branches) ? [.. branches.EnumerateArray().SelectMany(b => Strings(b, "required"))] : [];

    /// <summary>Keys without those that are read but not offered.</summary>
    public static IReadOnlyList<string> Offered(JsonElement schema, IReadOnlyList<string> keys) =>
        [.. keys.Where(k => !IsOlderKey(schema, k))];

    private static bool IsOlderKey(JsonElement schema, string key) =>
        schema.TryGetProperty("properties", out var properties) && properties.TryGetProperty(key, out var property) && IsOlder(property);

    /// <param name="there">The nearest known key when the object already has it.</param>
    /// <param name="free">Known keys that the object does not have.</param>
    public static string UnknownKey(string key, IReadOnlyList<string> suggestions, string? there, IReadOnlyList<string> free)
    {
        var first = $"The key \"{Wording.Shorten(key)}\" is not known here.";
        if (there is not null)
        {
            return $"{first} \"{there}\" is there already.";
        }

        if (suggestions.Count > 0)
        {
            return $"{first} Did you mean {Wording.Join(Quote(suggestions), "or")}?";
        }

        if (free.Count == 0)
        {
            return first;
        }

        return free.Count > MostKeysListed
            ? $"{first} Known are {string.Join(", ", Quote([.. free.Take(MostKeysListed)]))} and others."
            : $"{first} Known are {Wording.Join(Quote(free), "and")}.";
    }

    /// <param name="property">What the schema says of the key, where it says something.</param>
    public static string MissingKey(string key, JsonElement? property)
    {
        var meaning = property is { } described && Strings(described, "description") is [var text, ..] ? text : null;
        var what = meaning is null ? "" : $" ({LowerFirst(FirstClause(meaning))})";
        var shownExample = property is { } shown && ScalarExample(shown) is { } example ? $" Example: \"{key}\": {example}." : "";
        return $"The key \"{key}\" is missing{what}.{shownExample}";
    }

    public static string MissingOneOf(IReadOnlyList<string> keys) => $"One of these keys is missing: {Wording.Join(Quote(keys), "or")}.";

    /// <summary>What a value is called: its key, or its number in a list.</summary>
    public static string NameOf(JsonItem item)
    {
        var tokens = item.Pointer.Tokens;
        if (tokens.Count == 0)
        {
            return "The file";
        }

        if (item.KeySpan is not null)
        {
            return $"\"{Wording.Shorten(tokens[^1])}\"";
        }

        var list = tokens.Count > 1 ? $" of \"{Wording.Shorten(tokens[^2])}\"" : "";
        var index = int.Parse(tokens[^1], CultureInfo.InvariantCulture);
        return string.Create(CultureInfo.InvariantCulture, $"Entry {index + 1}{list}");
    }

    /// <summary>A sentence for a value that does not fit its schema.</summary>
    public static string Shape(string keyword, string name, JsonItem item, JsonElement schema, IReadOnlyList<string> suggestions)
    {
        var such = Examples(schema) is { Length: > 0 } examples ? $", such as {examples}" : "";
        return keyword switch
        {
            "type" when item.Kind == JsonKind.Number && IsQuantity(schema) =>
                $"{Wording.Shorten(item.Text)} has no unit. Write {name} as text with its unit{such}.",
            "type" when item.Kind == JsonKind.Null =>
                $"{name} is null, which says nothing. Write a value{such}, or leave the key out where it may be missing.",
            "type" when item.Kind == JsonKind.Text && Strings(schema, "type") is ["object"] && ObjectExample(schema) is { } whole =>
                $"{name} must be an object in {{ and }}, such as {whole}, not {Actual(item)}.",
            "type" => $"{name} must be {Wording.Join([.. Strings(schema, "type").Select(TypeWords)], "or")}{such}, not {Actual(item)}.",
            "const" when name == "\"format\"" && IsNewer(item, schema.GetProperty("const")) =>
                $"{name} is {Wording.Shorten(item.Text)}, a newer form of this file; this program reads {Limit(schema, keyword)}. "
                    + $"Take a newer program, or write {Limit(schema, keyword)} if the file was written by hand.",
            "const" => $"{name} must be {schema.GetProperty("const").GetRawText()}, not {Actual(item)}.",
            "enum" => $"{name} must be {Wording.Join(Quote(Strings(schema, "enum")), "or")}, not {Actual(item)}.{DidYouMean(suggestions)}",
            "minProperties" => $"{name} is empty; at least {Limit(schema, keyword)} entry is needed.",
            "minItems" => $"{name} is empty; at least {Limit(schema, keyword)} entry is needed.",
            "minLength" => $"{name} is empty. Write something{such}, or leave the key out.",
            "minimum" => $"{name} must be at least {Limit(schema, keyword)}, not {Actual(item)}.",
            "maximum" => $"{name} must be at most {Limit(schema, keyword)}, not {Actual(item)}.",
            "pattern" => $"{name} does not have the form it needs{such}: found {Actual(item)}.",
            _ => $"{name} is not written as this file needs it{such}.",
        };
    }

    /// <param name="what">Entries, keys or values.</param>
    public static string TooMany(string name, string what, int limit) => string.Create(
        CultureInfo.InvariantCulture,
        $"{name} has more than {limit:N0} {what}; this is the first too many. Nothing in this file was read. Take out what is not needed, "
            + $"or make several files of it.");

    public static string BeyondNumber(string name, JsonItem item) =>
        $"{name} is {Wording.Shorten(item.Text)}, more than can be computed with.";

    private static string DidYouMean(IReadOnlyList<string> suggestions) =>
        suggestions.Count == 0 ? "" : $" Did you mean {Wording.Join(Quote(suggestions), "or")}?";

    private static string Limit(JsonElement schema, string keyword) => schema.GetProperty(keyword).GetRawText();

    private static string[] Quote(IReadOnlyList<string> words) => [.. words.Select(w => $"\"{w}\"")];

    private static string TypeWords(string type) => type switch
    {
        "string" => "text in double quotes",
        "number" => "a number",
        "integer" => "a whole number",
        "object" => "an object in { and }",
        "array" => "a list in [ and ]",
        "boolean" => "true or false",
        _ => type,
    };

    private static string Actual(JsonItem item) => item.Kind switch
    {
        JsonKind.Text => $"\"{Wording.Shorten(item.Text)}\"",
        JsonKind.Number => Wording.Shorten(item.Text),
        JsonKind.True => "true",
        JsonKind.False => "false",
        JsonKind.Null => "null",
        JsonKind.Array => "a list",
        _ => "an object",
    };

    private static string Examples(JsonElement schema) => schema.TryGetProperty("examples", out var examples)
        ? Wording.Join([.. examples.EnumerateArray().Where(IsScalar).Take(2).Select(e => e.ToJsonText())], "or")
        : "";

    private static bool IsNewer(JsonItem item, JsonElement known) =>
        item.Kind == JsonKind.Number && known.ValueKind == JsonValueKind.Number
        && double.TryParse(item.Text, NumberStyles.Float, CultureInfo.InvariantCulture, out var written) && written > known.GetDouble();

    /// <summary>The first example of an object on one line; null where there is none, or none that is short.</summary>
    private static string? ObjectExample(JsonElement schema)
    {
        const int Longest = 90;
        if (!schema.TryGetProperty("examples", out var examples) || examples.GetArrayLength() == 0)
        {
            return null;
        }

        var text = Blanks().Replace(examples[0].GetRawText(), " ");
        return text.Length <= Longest && text.StartsWith('{') ? text : null;
    }

    [GeneratedRegex(@"\s+")]
    private static partial Regex Blanks();

    private static string? ScalarExample(JsonElement schema) =>
        schema.TryGetProperty("examples", out var examples) && examples.GetArrayLength() > 0 && IsScalar(examples[0])
            ? examples[0].ToJsonText()
            : null;

    private static bool IsScalar(JsonElement value) => value.ValueKind is not (JsonValueKind.Object or JsonValueKind.Array);

    private static string ToJsonText(this JsonElement value) =>
        value.ValueKind == JsonValueKind.String ? $"\"{value.GetString()}\"" : value.GetRawText();

    private static string FirstClause(string text)
    {
        // A stop inside a word, as in ".gitignore", ends nothing.
        var end = Enumerable.Range(0, text.Length)
            .FirstOrDefault(i => text[i] is '.' or ':' or ';' && (i + 1 == text.Length || text[i + 1] == ' '), text.Length);
        return text[..end];
    }

    private static string LowerFirst(string text) =>
        text.Length > 1 && char.IsUpper(text[0]) && !char.IsUpper(text[1]) ? char.ToLowerInvariant(text[0]) + text[1..] : text;
}
