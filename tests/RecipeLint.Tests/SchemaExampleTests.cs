using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using RecipeLint.Reports.Tests.Support;
using RecipeLint.Rules.Engine;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

/// <summary>What an editor offers as an example must not be found fault with: the program reads it as if a person had taken it over.</summary>
public sealed class SchemaExampleTests
{
    private static readonly JsonSerializerOptions _plain = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private static JsonObject Schema(string kind) =>
        JsonNode.Parse(File.ReadAllText(Path.Combine(Repository.Root, "schema", kind + ".schema.json")))!.AsObject();

    private static IEnumerable<JsonNode> Of(JsonNode? schema) => (schema?["examples"]?.AsArray() ?? []).OfType<JsonNode>().Select(e => e.DeepClone());

    /// <summary>Findings on what a file says wrongly; that a suppression finds nothing to suppress in an empty shop is no fault of its wording.</summary>
    private static List<string> Faults(string folder) =>
    [
        .. Cli.RunIn(folder, null, "check", ".").Findings.Where(f =>
            RuleBook.Descriptors.Single(r => f.Contains($" {r.Id} {r.Name}", StringComparison.Ordinal)) is { Family: "documents" } rule
            && rule.Name is not ("suppression-unused" or "unused-stock")),
    ];

    /// <summary>Every member of the settings, and every rule by its name and by its id with its level and all its options.</summary>
    [Fact]
    public void Settings_taken_from_the_schema_are_in_order()
    {
        using var scratch = new Scratch();
        var documents = Settings();
        Assert.True(documents.Count > 2 * RuleBook.Descriptors.Length, $"{documents.Count} examples");
        for (var i = 0; i < documents.Count; i++)
        {
            scratch.Write(string.Create(CultureInfo.InvariantCulture, $"e{i}/recipelint.json"), documents[i].ToJsonString(_plain));
        }

        Assert.Empty(Faults(scratch.Path));
    }

    [Theory]
    [InlineData("stock")]
    [InlineData("recipe")]
    [InlineData("water")]
    [InlineData("substances")]
    [InlineData("profile")]
    public void A_document_taken_from_the_schema_is_in_order(string kind)
    {
        using var scratch = new Scratch();
        foreach (var example in Of(Schema(kind)))
        {
            scratch.Write($"x.{kind}.json", example.ToJsonString(_plain));
        }

        scratch.Write("rain.water.json", """{"format": 1, "name": "Rain", "pH": 6.0, "ec": "0.02 mS/cm", "ions": {"Ca": "1 mg/L", "HCO3": "3 mg/L"}}""");
        scratch.Write("a.stock.json", """{"format": 1, "name": "A", "makes": "2 L", "dose": "10 mL/L", "steps": [{"pour": "1.5 L"}, {"add": "KNO3", "amount": "100 g"}, {"topUp": "2 L"}]}""");
        Assert.Empty(Faults(scratch.Path));
    }

    /// <summary>The check sees a fault: an example with a rule that does not exist.</summary>
    [Fact]
    public void A_name_that_no_rule_has_would_be_found()
    {
        using var scratch = new Scratch();
        scratch.Write("e0/recipelint.json", """{"rules": {"stock-not-used": "off"}}""");
        Assert.Contains(Faults(scratch.Path), f => f.Contains("unknown-rule", StringComparison.Ordinal));
    }

    private static List<JsonObject> Settings()
    {
        var schema = Schema("recipelint");
        var members = schema["properties"]!.AsObject();
        var definitions = schema["$defs"]!.AsObject();
        var documents = Of(schema).Select(e => e.AsObject()).ToList();
        foreach (var (name, member) in members.Where(m => m.Value is JsonObject))
        {
            documents.AddRange(Of(member).Select(e => new JsonObject { [name] = e }));
            documents.AddRange(Of(member!["items"]).Select(e => new JsonObject { [name] = new JsonArray(e) }));
        }

        foreach (var (name, rule) in members["rules"]!["properties"]!.AsObject().Where(r => r.Key != "note"))
        {
            var definition = definitions[rule!["$ref"]!.GetValue<string>().Split('/')[^1]];
            documents.AddRange(Of(definition).Select(e => new JsonObject { ["rules"] = new JsonObject { [name] = e } }));
        }

        return documents;
    }
}
