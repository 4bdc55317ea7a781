using System.Text.Json.Nodes;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Workbench;

/// <summary>
/// The schema of the shop's settings as editors read it: what is written by hand, and the names, ids and options of all rules, so that an
/// editor completes and explains them. The program itself reads the part written by hand, for start-up's sake (the rules cost 60 ms of
/// processor time of 1,370, measured), and says of rules and options what it refuses; so this schema lists them and never forbids.
/// </summary>
public static class SettingsSchema
{
    public const string Path = "schema/recipelint.schema.json";

    public const string HandWritten = "src/RecipeLint.Recipes/Schema/recipelint.core.json";

    private const string RuleName = "ruleName";

    /// <param name="schema">The part written by hand.</param>
    public static string Write(string schema, IReadOnlyCollection<RuleDescriptor> rules)
    {
        var root = JsonNode.Parse(schema)!.AsObject();
        var named = new JsonObject { ["note"] = Reference("note") };
        foreach (var rule in rules)
        {
            named[rule.Name] = Reference(rule.Name);
        }

        foreach (var rule in rules)
        {
            named[rule.Id] = Reference(rule.Name);
        }

        root["properties"]!["rules"]!["properties"] = named;
        root["properties"]!["paths"]!["items"]!["properties"]!["rules"]!["properties"] = named.DeepClone();
        var suppressed = root["properties"]!["suppressions"]!["items"]!["properties"]!["rule"]!;
        suppressed["anyOf"] = new JsonArray(Reference(RuleName), new JsonObject { ["minLength"] = 1 });
        var definitions = root["$defs"]!.AsObject();
        definitions[RuleName] = Names(rules);
        foreach (var rule in rules)
        {
            definitions[rule.Name] = Describe(rule);
        }

        return JsonLayout.Write(root);
    }

    private static JsonObject Names(IReadOnlyCollection<RuleDescriptor> rules) => new()
    {
        ["title"] = "Name of a rule",
        ["description"] = "Rule name or id.",
        ["enum"] = new JsonArray([.. rules.Select(r => (JsonNode)r.Name), .. rules.Select(r => (JsonNode)r.Id)]),
        ["examples"] = new JsonArray("unused-stock"),
    };

    private static JsonObject Describe(RuleDescriptor rule)
    {
        var members = new JsonObject { ["level"] = Reference("level"), ["note"] = Reference("note") };
        foreach (var option in rule.Options)
        {
            members[option.Name] = Describe(option);
        }

        return new JsonObject
        {
            ["title"] = $"{rule.Id} {rule.Name}",
            ["description"] = $"{rule.Title} Its own level is {Words.Of(rule.Level)}.",
            ["type"] = new JsonArray("string", "object"),
            ["if"] = new JsonObject { ["type"] = "string" },
            ["then"] = Reference("level"),
            ["else"] = new JsonObject { ["properties"] = members, ["additionalProperties"] = Reference("option") },
            ["examples"] = new JsonArray("off", Example(rule)),
        };
    }

    private static JsonObject Describe(RuleOption option) => new()
    {
        ["title"] = option.Unit.Length == 0 ? option.Name : $"{option.Name}, {option.Unit}",
        ["description"] = $"{option.Description} Default {option.Default}{(option.Unit.Length == 0 ? "" : " " + option.Unit)} ({option.Source.TrimEnd('.')}).",
        ["type"] = new JsonArray("string", "number", "boolean"),
        ["default"] = Default(option),
        ["examples"] = new JsonArray(Default(option)),
    };

    private static JsonObject Example(RuleDescriptor rule)
    {
        var example = new JsonObject { ["level"] = Words.Of(rule.Level) };
        foreach (var option in rule.Options)
        {
            example[option.Name] = Default(option);
        }

        return example;
    }

    private static JsonNode Default(RuleOption option) => option.IsNumber ? JsonNode.Parse(option.Default)! : option.Default;

    private static JsonObject Reference(string definition) => new() { ["$ref"] = "#/$defs/" + definition };
}
