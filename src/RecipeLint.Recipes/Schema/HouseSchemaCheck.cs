using System.Text.RegularExpressions;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Schema;

/// <summary>
/// Reads a schema of the shop's own before the library does: what it may not use, and how large it is when every reference is followed.
/// </summary>
internal sealed class HouseSchemaCheck(JsonItem root)
{
    private const string Definitions = "#/$defs/";

    private readonly List<SchemaFault> _faults = [];
    private readonly Dictionary<JsonItem, int> _counted = [];
    private readonly HashSet<JsonItem> _open = [];

    public IReadOnlyList<SchemaFault> Faults => _faults;

    /// <summary>Schemas inside the schema, references followed; stops at one more than are taken.</summary>
    public int Count()
    {
        var count = Count(root);
        foreach (var definition in root["$defs"] is { Kind: JsonKind.Object } definitions ? definitions.Members.Select(m => m.Value) : [])
        {
            Count(definition);
        }

        if (count > HouseSchema.MostParts)
        {
            _faults.Add(new SchemaFault(root,
                $"This schema has more than {HouseSchema.MostParts} parts once its references are followed.", []));
        }

        return Math.Max(1, count);
    }

    private int Count(JsonItem schema)
    {
        if (schema.Kind is JsonKind.True or JsonKind.False)
        {
            return 1;
        }

        if (schema.Kind != JsonKind.Object)
        {
            _faults.Add(new SchemaFault(schema, "A schema is an object, true or false.", []));
            return 1;
        }

        if (_counted.TryGetValue(schema, out var known))
        {
            return known;
        }

        if (!_open.Add(schema))
        {
            _faults.Add(new SchemaFault(schema, "This definition refers to itself, directly or through others, and would never end.", []));
            return 1;
        }

        var count = 1;
        foreach (var member in schema.Members)
        {
            count = Math.Min(HouseSchema.MostParts + 1, count + Count(member));
        }

        _open.Remove(schema);
        return _counted[schema] = count;
    }

    private int Count(JsonMember member)
    {
        var (name, value) = (member.Name, member.Value);
        if (HouseDialect.One.Contains(name))
        {
            return Count(value);
        }

        if (HouseDialect.List.Contains(name))
        {
            return value.Kind == JsonKind.Array ? Sum(value.Items) : Wrong(value, $"\"{name}\" must be a list of schemas.");
        }

        if (HouseDialect.Map.Contains(name))
        {
            return value.Kind != JsonKind.Object ? Wrong(value, $"\"{name}\" must be an object of schemas.")
                : name == "$defs" ? 0
                : Sum(value.Members.Select(m => m.Value));
        }

        switch (name)
        {
            case "$ref":
                return Reference(value);
            case "pattern":
                Pattern(value);
                return 0;
            case var _ when HouseDialect.Plain.Contains(name):
                return 0;
            default:
                var known = HouseDialect.One.Concat(HouseDialect.List).Concat(HouseDialect.Map).Concat(HouseDialect.Plain);
                var near = Spelling.Nearest(name, known.Order(StringComparer.Ordinal));
                var hint = near.Count > 0 ? $" Did you mean {Wording.Join([.. near.Select(n => $"\"{n}\"")], "or")}?" : "";
                _faults.Add(new SchemaFault(value,
                    $"\"{Wording.Shorten(name)}\" is no keyword of JSON Schema that a house rule may use.{hint}", near));
                return 0;
        }
    }

    private int Sum(IEnumerable<JsonItem> schemas) => schemas.Aggregate(0, (sum, s) => Math.Min(HouseSchema.MostParts + 1, sum + Count(s)));

    private int Reference(JsonItem value)
    {
        var name = value.Kind == JsonKind.Text && value.Text.StartsWith(Definitions, StringComparison.Ordinal)
            ? value.Text[Definitions.Length..] : null;
        var target = name is null ? null : root["$defs"]?[name];
        return target is null ? Wrong(value, "A reference names a definition of this schema, such as \"#/$defs/small\".") : Count(target);
    }

    private void Pattern(JsonItem value)
    {
        if (value.Kind != JsonKind.Text)
        {
            Wrong(value, "\"pattern\" must be a text.");
        }
        else if (value.Text.Length > HouseSchema.LongestPattern)
        {
            Wrong(value, $"This pattern has {value.Text.Length} characters; {HouseSchema.LongestPattern} are taken.");
        }
        else
        {
            try
            {
                _ = new Regex(value.Text, HouseDialect.Matching);
            }
            catch (Exception e) when (e is ArgumentException or NotSupportedException)
            {
                var why = e is NotSupportedException
                    ? "it looks around, refers back or repeats too often, and could take for ever"
                    : "it is no regular expression";
                Wrong(value, $"This pattern cannot be used: {why}.");
            }
        }
    }

    private int Wrong(JsonItem at, string message)
    {
        _faults.Add(new SchemaFault(at, message, []));
        return 0;
    }
}
