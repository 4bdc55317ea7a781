using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using RecipeLint.Recipes.Json;

namespace RecipeLint.Recipes.Schema;

/// <summary>
/// Says of most documents whether they fit one of our own schemas, many times faster than <see cref="SchemaEvaluator"/> and without
/// loading it. It knows the keywords that our schemas use and nothing else; where it is not sure it says so, and the evaluator decides.
/// Parts of the schema are read when a document first comes to them.
/// </summary>
internal sealed class QuickSchema
{
    private readonly JsonElement _definitions;
    private readonly Dictionary<string, Part> _named = new(StringComparer.Ordinal);
    private readonly Part _root;
    private readonly Lock _gate = new();

    /// <param name="schema">The whole schema; it must stay open as long as this is used.</param>
    public QuickSchema(JsonElement schema)
    {
        _ = schema.TryGetProperty("$defs", out _definitions);
        _root = new Part(this, schema);
    }

    /// <summary>True where the document fits, false where it does not, null where only the evaluator can tell.</summary>
    /// <param name="document">Of a file without duplicate keys: of those only the last stands in the tree.</param>
    public bool? Fits(JsonItem document) => _root.Fits(document);

    private Part? Named(string reference)
    {
        const string Definitions = "#/$defs/";
        if (!reference.StartsWith(Definitions, StringComparison.Ordinal))
        {
            return null;
        }

        var name = reference[Definitions.Length..];
        lock (_gate)
        {
            if (!_named.TryGetValue(name, out var part)
                && _definitions.ValueKind == JsonValueKind.Object && _definitions.TryGetProperty(name, out var definition))
            {
                _named[name] = part = new Part(this, definition);
            }

            return part;
        }
    }

    /// <summary>No where one says no, else not sure where one is not, else yes.</summary>
    private static bool? All(bool? one, bool? other) => one == false || other == false ? false : one is null || other is null ? null : true;

    /// <summary>One schema: what it asks of the value it stands for.</summary>
    private sealed class Part(QuickSchema whole, JsonElement schema)
    {
        private readonly Lazy<Func<JsonItem, bool?>[]> _asks = new(() => [.. Read(whole, schema)]);

        public bool? Fits(JsonItem item)
        {
            bool? all = true;
            foreach (var ask in _asks.Value)
            {
                all = All(all, ask(item));
                if (all == false)
                {
                    return false;
                }
            }

            return all;
        }

        private static IEnumerable<Func<JsonItem, bool?>> Read(QuickSchema whole, JsonElement schema)
        {
            if (schema.ValueKind is JsonValueKind.True or JsonValueKind.False)
            {
                var answer = schema.ValueKind == JsonValueKind.True;
                yield return _ => answer;
                yield break;
            }

            foreach (var keyword in schema.EnumerateObject())
            {
                if (Keyword(whole, schema, keyword.Name, keyword.Value) is { } ask)
                {
                    yield return ask;
                }
            }
        }

        /// <summary>What a keyword asks; null for one that asks nothing by itself.</summary>
        private static Func<JsonItem, bool?>? Keyword(QuickSchema whole, JsonElement schema, string name, JsonElement value)
        {
            switch (name)
            {
                // Formats are not asserted: 2020-12 makes them a remark, and so does the evaluator.
                case "$schema" or "$id" or "$comment" or "$defs" or "title" or "description" or "examples" or "default" or "format"
                    or "deprecated" or "then" or "else":
                    return null;
                case "$ref":
                    return Reference(whole, value.GetString()!);
                case "type":
                    return QuickChecks.Type(value);
                case "const":
                    return item => QuickChecks.Same(value, item);
                case "enum":
                    return Enumerated([.. value.EnumerateArray()]);
                case "pattern":
                    return QuickChecks.Pattern(value.GetString()!);
                case "minLength" or "minItems" or "maxItems" or "minProperties" or "maxProperties" or "minimum" or "maximum":
                    return QuickChecks.Bound(name, value);
                case "required":
                    return Required([.. value.EnumerateArray().Select(v => v.GetString()!)]);
                case "properties":
                    return Properties(
                        value.EnumerateObject().ToDictionary(p => p.Name, p => new Part(whole, p.Value), StringComparer.Ordinal));
                case "patternProperties" or "additionalProperties":
                    return Others(whole, schema, name);
                case "dependentSchemas":
                    return Dependent([.. value.EnumerateObject().Select(p => (p.Name, new Part(whole, p.Value)))]);
                case "items":
                    return Items(new Part(whole, value));
                case "anyOf":
                    return Any([.. value.EnumerateArray().Select(v => new Part(whole, v))]);
                case "if":
                    return Condition(whole, schema, new Part(whole, value));
                default:
                    return _ => null;
            }
        }

        private static Func<JsonItem, bool?> Reference(QuickSchema whole, string reference)
        {
            var target = new Lazy<Part?>(() => whole.Named(reference));
            return item => target.Value?.Fits(item);
        }

        private static Func<JsonItem, bool?> Enumerated(JsonElement[] values) => item =>
        {
            bool? any = false;
            foreach (var value in values)
            {
                switch (QuickChecks.Same(value, item))
                {
                    case true:
                        return true;
                    case null:
                        any = null;
                        break;
                }
            }

            return any;
        };

        private static Func<JsonItem, bool?> Required(string[] names) =>
            item => item.Kind != JsonKind.Object || Array.TrueForAll(names, n => item[n] is not null);

        private static Func<JsonItem, bool?> Properties(Dictionary<string, Part> known) => item =>
        {
            bool? all = true;
            foreach (var member in item.Members)
            {
                if (known.TryGetValue(member.Name, out var part))
                {
                    all = All(all, part.Fits(member.Value));
                }
            }

            return all;
        };

        /// <summary>Members by pattern, or those that neither a name nor a pattern speaks of.</summary>
        private static Func<JsonItem, bool?> Others(QuickSchema whole, JsonElement schema, string keyword)
        {
            var byName = schema.TryGetProperty("properties", out var properties)
                ? properties.EnumerateObject().Select(p => p.Name).ToHashSet(StringComparer.Ordinal)
                : [];
            var byPattern = schema.TryGetProperty("patternProperties", out var patterns)
                ? patterns.EnumerateObject().Select(p => (Check: QuickChecks.Matcher(p.Name), Part: new Part(whole, p.Value))).ToList()
                : [];
            if (keyword == "patternProperties")
            {
                return item => item.Members.Aggregate(
                    (bool?)true,
                    (all, m) => byPattern.Aggregate(
                        all, (a, p) => p.Check(m.Name) is { } meant ? meant ? All(a, p.Part.Fits(m.Value)) : a : All(a, null)));
            }

            var rest = new Part(whole, schema.GetProperty("additionalProperties"));
            return item =>
            {
                bool? all = true;
                foreach (var member in item.Members)
                {
                    if (!byName.Contains(member.Name))
                    {
                        all = All(all, byPattern.Count == 0 ? rest.Fits(member.Value) : Unnamed(member));
                    }
                }

                return all;
            };

            bool? Unnamed(JsonMember member)
            {
                var met = byPattern.ConvertAll(p => p.Check(member.Name));
                return met.Contains(true) ? true : met.Contains(null) ? null : rest.Fits(member.Value);
            }
        }

        private static Func<JsonItem, bool?> Dependent((string Name, Part Part)[] parts) => item =>
        {
            bool? all = true;
            foreach (var (name, part) in parts)
            {
                if (item.Kind == JsonKind.Object && item[name] is not null)
                {
                    all = All(all, part.Fits(item));
                }
            }

            return all;
        };

        private static Func<JsonItem, bool?> Items(Part part) => item =>
        {
            bool? all = true;
            foreach (var entry in item.Items)
            {
                all = All(all, part.Fits(entry));
            }

            return all;
        };

        private static Func<JsonItem, bool?> Any(Part[] parts) => item =>
        {
            bool? any = false;
            foreach (var part in parts)
            {
                switch (part.Fits(item))
                {
                    case true:
                        return true;
                    case null:
                        any = null;
                        break;
                }
            }

            return any;
        };

        private static Func<JsonItem, bool?> Condition(QuickSchema whole, JsonElement schema, Part condition)
        {
            var then = schema.TryGetProperty("then", out var t) ? new Part(whole, t) : null;
            var otherwise = schema.TryGetProperty("else", out var e) ? new Part(whole, e) : null;
            return item => condition.Fits(item) switch
            {
                true => then is null ? true : then.Fits(item),
                false => otherwise is null ? true : otherwise.Fits(item),
                null => null,
            };
        }
    }
}

/// <summary>The keywords that ask something of one value alone.</summary>
internal static class QuickChecks
{
    public static Func<JsonItem, bool?> Type(JsonElement types)
    {
        string[] names = types.ValueKind == JsonValueKind.Array
            ? [.. types.EnumerateArray().Select(t => t.GetString()!)]
            : [types.GetString()!];
        return item =>
        {
            bool? any = false;
            foreach (var name in names)
            {
                switch (Is(item, name))
                {
                    case true:
                        return true;
                    case null:
                        any = null;
                        break;
                }
            }

            return any;
        };
    }

    /// <summary>Whether a constant of the schema and a value are the same; not sure of numbers that are written differently.</summary>
    public static bool? Same(JsonElement constant, JsonItem item) => (constant.ValueKind, item.Kind) switch
    {
        (JsonValueKind.String, JsonKind.Text) => constant.GetString() == item.Text,
        (JsonValueKind.True, JsonKind.True) or (JsonValueKind.False, JsonKind.False) or (JsonValueKind.Null, JsonKind.Null) => true,
        (JsonValueKind.Number, JsonKind.Number) => constant.GetRawText() == item.Text ? true
            : IsPlainInteger(constant.GetRawText()) && IsPlainInteger(item.Text) ? false : null,
        (JsonValueKind.Object or JsonValueKind.Array, JsonKind.Object or JsonKind.Array) => null,
        _ => false,
    };

    public static Func<JsonItem, bool?> Pattern(string pattern)
    {
        var matches = Matcher(pattern);
        return item => item.Kind == JsonKind.Text ? matches(item.Text) : true;
    }

    /// <summary>Whether a text matches; not sure of one that is not plain, where two engines may differ.</summary>
    public static Func<string, bool?> Matcher(string pattern)
    {
        var expression = new Lazy<Regex>(() => new Regex(pattern, RegexOptions.CultureInvariant));
        return text => !text.AsSpan().ContainsAnyExceptInRange(' ', '~') ? expression.Value.IsMatch(text) : null;
    }

    public static Func<JsonItem, bool?> Bound(string keyword, JsonElement bound)
    {
        if (keyword is "minimum" or "maximum")
        {
            return bound.TryGetDecimal(out var limit)
                ? item => item.Kind != JsonKind.Number ? true
                    : Plain(item.Text) is not { } number ? null
                    : keyword == "minimum" ? number >= limit : number <= limit
                : _ => null;
        }

        var least = bound.TryGetInt32(out var n) ? n : -1;
        return keyword switch
        {
            _ when least < 0 => _ => null,
            // How many characters a text has is a matter of taste; whether it has any is not.
            "minLength" => item => item.Kind != JsonKind.Text ? true : item.Text.Length == 0 ? least == 0 : least <= 1 ? true : null,
            "minItems" => item => item.Kind != JsonKind.Array || item.Items.Count >= least,
            "maxItems" => item => item.Kind != JsonKind.Array || item.Items.Count <= least,
            "minProperties" => item => item.Kind != JsonKind.Object || item.Members.Count >= least,
            "maxProperties" => item => item.Kind != JsonKind.Object || item.Members.Count <= least,
            _ => _ => null,
        };
    }

    private static bool? Is(JsonItem item, string type) => (type, item.Kind) switch
    {
        ("object", JsonKind.Object) or ("array", JsonKind.Array) or ("string", JsonKind.Text) or ("number", JsonKind.Number)
            or ("boolean", JsonKind.True or JsonKind.False) or ("null", JsonKind.Null) => true,
        ("integer", JsonKind.Number) => IsPlainInteger(item.Text) ? true : null,
        ("object" or "array" or "string" or "number" or "boolean" or "null" or "integer", _) => false,
        _ => null,
    };

    private static bool IsPlainInteger(string literal) =>
        literal.Length is > 0 and < 16 && literal.All(char.IsAsciiDigit) && (literal.Length == 1 || literal[0] != '0');

    /// <summary>A number of few digits; null for others, which two readers may round differently.</summary>
    private static decimal? Plain(string literal) =>
        literal.Length < 16
        && decimal.TryParse(
            literal, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number)
            ? number
            : null;
}
