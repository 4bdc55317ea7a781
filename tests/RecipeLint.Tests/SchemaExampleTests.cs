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

    /// <summary>
    /// Findings on what a file says wrongly; that a suppression finds nothing to suppress in an empty shop is no fault of its wording, nor what the stand-ins
    /// beside it are called, nor that the example of an older key is older.
    /// </summary>
    private static List<string> Faults(string folder) =>
    [
        .. Cli.RunIn(folder, null, "check", ".").Findings.Where(f =>
            RuleBook.Descriptors.Single(r => f.Contains($" {r.Id} {r.Name}", StringComparison.Ordinal)) is { Family: "documents" } rule
            && rule.Name is not ("suppression-unused" or "unused-stock" or "substance-named-two-ways" or "two-stocks-of-one-name" or "older-spelling")),
    ];

    /// <summary>Every member of the settings, and every rule by its name and by its id with its level and all its options.</summary>
    [Fact]
    public void SettingsTakenFromTheSchemaAreInOrder()
    {
        using var scratch = new Scratch();
        var documents = Settings();
        Assert.True(documents.Count > 2 * RuleBook.Descriptors.Length, $"{documents.Count} examples");
        for (var i = 0; i < documents.Count; i++)
        {
            scratch.Write(string.Create(CultureInfo.InvariantCulture, $"e{i}/recipelint.json"), documents[i].ToJsonString(_plain));

            // The folders that settings name as examples are there.
            scratch.Write(string.Create(CultureInfo.InvariantCulture, $"e{i}/house-rules/readme.txt"), "");
        }

        Assert.Empty(Faults(scratch.Path));
    }

    [Theory]
    [InlineData("stock")]
    [InlineData("recipe")]
    [InlineData("water")]
    [InlineData("substances")]
    [InlineData("profile")]
    [InlineData("batch")]
    public void ADocumentTakenFromTheSchemaIsInOrder(string kind)
    {
        using var scratch = new Scratch();
        foreach (var example in Of(Schema(kind)))
        {
            scratch.Write($"x.{kind}.json", example.ToJsonString(_plain));
        }

        scratch.Write("rain.water.json", """{"format": 1, "name": "Rain", "pH": 6.0, "EC": "0.02 mS/cm", "ions": {"Ca": "1 mg/L", "HCO3": "3 mg/L"}}""");
        scratch.Write("a.stock.json", """{"format": 1, "name": "A", "makes": "2 L", "dose": "10 mL/L", "steps": [{"pour": "1.5 L"}, {"add": "KNO3", "amount": "100 g"}, {"topUp": "2 L"}]}""");
        scratch.Write("part-a.stock.json", """{"format": 1, "name": "Part A", "makes": "1 L", "dose": "5 mL/L", "steps": [{"pour": "700 mL"}, {"add": "potassium-nitrate", "amount": "40 g"}, {"topUp": "1 L"}]}""");
        scratch.Write("tomato.recipe.json", """{"format": 1, "name": "Tomato", "final": "100 L", "volume": "made up", "water": "rain.water.json", "doses": [{"stock": "a.stock.json"}], "adjust": {"pH": 5.8, "using": "nitric-38"}}""");
        scratch.Write("recipelint.json", SingleValues.Settings);
        Assert.Empty(Faults(scratch.Path));
    }

    [Fact]
    public void AHouseRuleTakenFromTheSchemaIsInOrderAndDoesWhatItSays()
    {
        using var scratch = new Scratch();
        var schema = Schema("house-rule");
        scratch.Write("recipelint.json", "{}");
        var rule = Of(schema).Single().AsObject();
        foreach (var (name, property) in schema["properties"]!.AsObject().Where(p => p.Value!["examples"] is not null))
        {
            rule[name] = Of(property).First();
        }

        scratch.Write("x.rule.json", rule.ToJsonString(_plain));
        Assert.Empty(Faults(scratch.Path));
        Assert.Equal(0, Cli.RunIn(scratch.Path, null, "rules", "--test").Code);
    }

    /// <summary>Every example of a single value, taken over into a document at its place; what it names is there.</summary>
    [Theory]
    [InlineData("stock")]
    [InlineData("recipe")]
    [InlineData("water")]
    [InlineData("substances")]
    [InlineData("profile")]
    [InlineData("batch")]
    public void ASingleValueTakenFromTheSchemaIsInOrder(string kind)
    {
        using var scratch = new Scratch();
        var schema = Schema(kind);
        var documents = SingleValues.Of(schema).ToList();
        Assert.True(documents.Count > 10, $"{documents.Count} examples");
        scratch.Write("recipelint.json", SingleValues.Settings);
        foreach (var (name, text) in SingleValues.Neighbours)
        {
            scratch.Write(name, text);
            scratch.Write("shop/" + name, text);
        }

        for (var i = 0; i < documents.Count; i++)
        {
            // Each in a folder of its own: two files that name the same product would clash.
            scratch.Write(string.Create(CultureInfo.InvariantCulture, $"e{i}/x.{kind}.json"), documents[i].ToJsonString(_plain));
            scratch.Write(string.Create(CultureInfo.InvariantCulture, $"e{i}/recipelint.json"), SingleValues.Settings);
            foreach (var (name, text) in SingleValues.Neighbours)
            {
                scratch.Write(string.Create(CultureInfo.InvariantCulture, $"e{i}/{name}"), text);
            }
        }

        // These weigh several values of a file against each other, and only one of them is the example. What waits for its place is a finding
        // by its meaning.
        var faults = Faults(scratch.Path).Where(f => !f.Contains(" unbalanced-water", StringComparison.Ordinal) && !f.Contains(" dose-contradicts-dilution", StringComparison.Ordinal) && !f.Contains(" import-not-understood", StringComparison.Ordinal)).ToList();
        Assert.True(faults.Count == 0, string.Join('\n', faults.Select(f => $"{f}   {Document(f)}")));

        string? Document(string finding) =>
            documents.ElementAtOrDefault(int.Parse(finding[1..finding.IndexOf('/', StringComparison.Ordinal)], CultureInfo.InvariantCulture))?.ToJsonString(_plain);
    }

    /// <summary>The check sees a fault: an example with a rule that does not exist.</summary>
    [Fact]
    public void ANameThatNoRuleHasWouldBeFound()
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
