using System.Globalization;
using System.Text.Json;
using RecipeLint.Recipes.Schema;
using RecipeLint.Recipes.Tests.Json;
using Evaluation = Json.Schema;

namespace RecipeLint.Recipes.Tests.Schema;

/// <summary>The schema files themselves, as editors and the tool read them.</summary>
public sealed class SchemaFilesTests
{
    private const string Dialect = "https://json-schema.org/draft/2020-12/schema";

    private static readonly string[] _keywords =
    [
        "$schema", "$id", "$ref", "$defs", "title", "description", "examples", "type", "format", "const", "enum", "required", "properties",
        "patternProperties", "additionalProperties", "minProperties", "maxProperties", "dependentSchemas", "items", "minItems", "maxItems", "minLength", "pattern",
        "minimum", "maximum", "if", "then", "else", "anyOf", "default", "deprecated",
    ];

    private static readonly string[] _names = [.. Enum.GetValues<DocumentKind>().Select(DocumentKinds.SchemaFileName).OfType<string>()];

    public static TheoryData<string> Names() => [.. _names];

    private static JsonElement Load(string name) => JsonDocument.Parse(File.ReadAllText(Repository.PathOf("schema", name))).RootElement;

    private static Evaluation.JsonSchema Build(JsonElement schema) =>
        Evaluation.JsonSchema.FromText(schema.GetRawText(), new Evaluation.BuildOptions { SchemaRegistry = new Evaluation.SchemaRegistry { Fetch = (_, _) => null } });

    /// <summary>Every subschema with its pointer, and how it is used.</summary>
    private static IEnumerable<(string Pointer, string Use, JsonElement Schema)> Walk(JsonElement schema, string pointer = "", string use = "root")
    {
        yield return (pointer, use, schema);
        if (schema.ValueKind != JsonValueKind.Object)
        {
            yield break;
        }

        foreach (var keyword in schema.EnumerateObject())
        {
            var below = $"{pointer}/{keyword.Name}";
            IEnumerable<(string, string, JsonElement)> children = keyword.Name switch
            {
                "properties" or "patternProperties" or "dependentSchemas" or "$defs" =>
                    keyword.Value.EnumerateObject().SelectMany(p => Walk(p.Value, $"{below}/{p.Name}", keyword.Name)),
                "anyOf" => keyword.Value.EnumerateArray().SelectMany((s, i) => Walk(s, $"{below}/{i.ToString(CultureInfo.InvariantCulture)}", "anyOf")),
                "items" or "additionalProperties" or "if" or "then" or "else" => Walk(keyword.Value, below, keyword.Name),
                _ => [],
            };
            foreach (var child in children)
            {
                yield return child;
            }
        }
    }

    [Fact]
    public void ThereIsOneForEachKindThatIsRead() =>
        Assert.Equal(["batch.schema.json", "house-rule.schema.json", "profile.schema.json", "recipe.schema.json", "recipelint.schema.json", "stock.schema.json", "substances.schema.json", "water.schema.json"], _names.Order());

    [Theory]
    [MemberData(nameof(Names))]
    public void TheIdIsANameAndNoAddress(string name)
    {
        var schema = Load(name);
        Assert.Equal(Dialect, schema.GetProperty("$schema").GetString());
        Assert.Equal($"urn:recipelint:schema:{name[..name.IndexOf('.', StringComparison.Ordinal)]}:1", schema.GetProperty("$id").GetString());
    }

    /// <summary>The evaluator passes over keywords it does not know, so that a misspelt one would check nothing.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void EveryKeywordIsOneThatWeUse(string name)
    {
        foreach (var (pointer, _, schema) in Walk(Load(name)).Where(s => s.Schema.ValueKind == JsonValueKind.Object))
        {
            var unknown = schema.EnumerateObject().Select(k => k.Name).Except(_keywords);
            Assert.True(!unknown.Any(), $"{name}#{pointer}: {string.Join(", ", unknown)}");
            if (schema.TryGetProperty("required", out var required) && schema.TryGetProperty("properties", out var properties))
            {
                Assert.All(required.EnumerateArray(), r => Assert.True(properties.TryGetProperty(r.GetString()!, out _), $"{name}#{pointer}: {r}"));
            }
        }
    }

    [Fact]
    public void AMisspeltKeywordWouldBeNoticed()
    {
        var schema = JsonDocument.Parse("""{"properties": {"a": {"propertes": {}}}}""").RootElement;
        Assert.Contains(Walk(schema), s => s.Schema.EnumerateObject().Any(k => !_keywords.Contains(k.Name)));
    }

    /// <summary>The 2020-12 meta-schema as published at json-schema.org and carried by JsonSchema.Net.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void EachIsValidByTheMetaSchema(string name) =>
        Assert.True(Evaluation.MetaSchemas.Draft202012.Evaluate(Load(name)).IsValid);

    [Fact]
    public void TheMetaSchemaRefusesAWrongSchema() =>
        Assert.False(Evaluation.MetaSchemas.Draft202012.Evaluate(JsonDocument.Parse("""{"properties": {"a": {"minLength": -1}}}""").RootElement).IsValid);

    [Theory]
    [MemberData(nameof(Names))]
    public void ReferencesLeadSomewhereAndEveryDefinitionIsUsed(string name)
    {
        var root = Load(name);
        var used = Walk(root)
            .Where(s => s.Schema.ValueKind == JsonValueKind.Object && s.Schema.TryGetProperty("$ref", out _))
            .Select(s => s.Schema.GetProperty("$ref").GetString()!);
        Assert.Equal(root.GetProperty("$defs").EnumerateObject().Select(d => "#/$defs/" + d.Name).Order(), used.Distinct().Order());
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void EveryPropertyHasATitleADescriptionAndAnExample(string name)
    {
        var root = Load(name);
        foreach (var (pointer, use, schema) in Walk(root))
        {
            var isOwed = use is "root" or "$defs" or "patternProperties" || (use == "properties" && schema.ValueKind == JsonValueKind.Object);
            if (isOwed && !schema.TryGetProperty("$ref", out _))
            {
                Assert.All(["title", "description", "examples"], k => Assert.True(schema.TryGetProperty(k, out var v) && v.GetRawText().Length > 2, $"{name}#{pointer}: {k}"));
            }
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void EveryObjectIsClosedAndTakesANoteAndEveryListEnds(string name)
    {
        foreach (var (pointer, _, schema) in Walk(Load(name)).Where(s => s.Schema.ValueKind == JsonValueKind.Object))
        {
            if (schema.TryGetProperty("additionalProperties", out var rest))
            {
                Assert.True(
                    (schema.TryGetProperty("properties", out var members) && members.TryGetProperty("note", out _)) || IsOpen(name, pointer),
                    $"{name}#{pointer}: no note");
                if (rest.ValueKind != JsonValueKind.False)
                {
                    Assert.True(
                        IsOpen(name, pointer),
                        $"{name}#{pointer}: an open object");
                }
            }
            else if (schema.TryGetProperty("type", out var type) && type.ToString().Contains("object", StringComparison.Ordinal))
            {
                Assert.True(schema.TryGetProperty("if", out _) || IsOpen(name, pointer), $"{name}#{pointer}: an open object");
            }

            if (schema.TryGetProperty("items", out _))
            {
                Assert.Equal(SchemaCheck.EntryLimit, schema.GetProperty("maxItems").GetInt32());
            }
        }
    }

    /// <summary>Objects whose members are names of rules, stages or files, or a schema of the shop's own.</summary>
    private static bool IsOpen(string name, string pointer) =>
        pointer is "/properties/rules" or "/properties/stages"
        || (name == "recipelint.schema.json" && (pointer is "/properties/paths/items/properties/rules" || pointer.EndsWith("/else", StringComparison.Ordinal)))
        || (name == "house-rule.schema.json" && (pointer is "/properties/must" || pointer.StartsWith("/$defs/example/properties/files", StringComparison.Ordinal)));

    [Theory]
    [MemberData(nameof(Names))]
    public void EveryExampleFitsItsOwnSchema(string name)
    {
        var root = Load(name);
        var definitions = root.GetProperty("$defs").GetRawText();
        var checkedExamples = 0;
        foreach (var (pointer, _, schema) in Walk(root))
        {
            if (schema.ValueKind != JsonValueKind.Object || !schema.TryGetProperty("examples", out var examples))
            {
                continue;
            }

            var members = schema.EnumerateObject().Where(m => m.Name is not ("$schema" or "$id" or "$defs")).Select(m => $"{JsonSerializer.Serialize(m.Name)}: {m.Value.GetRawText()}");
            var alone = Build(JsonDocument.Parse($$"""{"$schema": "{{Dialect}}", {{string.Join(", ", members)}}, "$defs": {{definitions}}}""").RootElement);
            foreach (var example in examples.EnumerateArray())
            {
                Assert.True(alone.Evaluate(example).IsValid, $"{name}#{pointer}: {example}");
                checkedExamples++;
            }
        }

        Assert.True(checkedExamples > 10);
    }

    [Fact]
    public void AnUnknownReferenceIsNotFetched()
    {
        var schema = Build(JsonDocument.Parse($$"""{"$schema": "{{Dialect}}", "$ref": "https://example.invalid/other.json"}""").RootElement);
        Assert.Throws<Evaluation.RefResolutionException>(() => schema.Evaluate(JsonDocument.Parse("1").RootElement));
    }
}
