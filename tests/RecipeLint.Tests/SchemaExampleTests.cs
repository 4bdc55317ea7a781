using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using RecipeLint.Reports.Tests.Support;
using RecipeLint.Rules.Engine;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

/// <summary>
/// What an editor offers as an example must not be found fault with: every example of every schema is put into a document of its kind and the
/// program reads it. Where an example needs a fitting neighbour (a measure for a volume, a basis for a label), the carrier says so.
/// </summary>
public sealed class SchemaExampleTests
{
    private static readonly JsonSerializerOptions _plain = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private static readonly Dictionary<string, string> _files = new()
    {
        ["stock"] = "x.stock.json",
        ["recipe"] = "x.recipe.json",
        ["water"] = "x.water.json",
        ["substances"] = "x.substances.json",
        ["profile"] = "x.profile.json",
        ["recipelint"] = "recipelint.json",
    };

    /// <summary>What the examples name: a small invented shop.</summary>
    private static readonly Dictionary<string, string> _kit = new()
    {
        ["rain.water.json"] = """{"format": 1, "name": "Rain", "pH": 6.0, "ec": "0.02 mS/cm", "ions": {"Ca": "1 mg/L", "HCO3": "3 mg/L"}}""",
        ["a.stock.json"] = """{"format": 1, "name": "A", "makes": "2 L", "dose": "10 mL/L", "steps": [{"pour": "1.5 L"}, {"add": "KNO3", "amount": "100 g"}, {"topUp": "2 L"}]}""",
        ["trace.stock.json"] = """{"format": 1, "name": "Trace", "makes": "2 L", "steps": [{"pour": "1.4 L"}, {"add": "boric-acid", "amount": "2 g"}, {"topUp": "2 L"}]}""",
        ["molybdate-pre.stock.json"] = """{"format": 1, "name": "Pre", "makes": "100 mL", "steps": [{"pour": "90 mL"}, {"add": "sodium-molybdate-2h2o", "amount": "1 g"}, {"topUp": "100 mL"}]}""",
    };

    private const string Shop =
        """
        {"scales": [{"name": "scale-0.01", "readability": "0.01 g"}, {"name": "scale-1", "readability": "1 g"}],
         "measures": [{"name": "cylinder-100", "kind": "cylinder", "capacity": "100 mL", "readability": "1 mL"},
                      {"name": "syringe-60", "kind": "syringe", "capacity": "60 mL", "readability": "1 mL"}],
         "vessels": [{"name": "bottle-2L", "capacity": "2 L"}], "sites": [{"name": "cold-room", "at": "4..8 °C"}]}
        """;

    /// <summary>Neighbours that single values need, by the end of their place in the document and the value; found in this order.</summary>
    private static readonly (string End, string Value, string Carrier)[] _carriers =
    [
        ("/ions/S", "", """{"Ca": "82 mg/L", "HCO3": "220 mg/L"}"""),
        ("/label/P", "", """{"basis": "element"}"""),
        ("/label/K", "", """{"basis": "element"}"""),
        ("/label/Ca", "", """{"basis": "element"}"""),
        ("/label/Mg", "", """{"basis": "element"}"""),
        ("/label/S", "", """{"basis": "element"}"""),
        ("/label/Fe", "", """{"basis": "oxide", "chelatedWith": "EDDHA"}"""),
        ("/label/basis", "", """{"N": "15 %"}"""),
        ("/label/percent", "", """{"basis": "oxide", "N": "15 %"}"""),
        ("/label/note", "", """{"basis": "oxide", "N": "15 %"}"""),
        ("/label/chelatedWith", "", """{"basis": "oxide", "Fe": "6 %"}"""),
        ("/label/", "", """{"basis": "oxide"}"""),
        ("/steps/0/amount", "\"90 mL\"", """{"add": "nitric-38"}"""),
        ("/doses/0/amount", "\"2 L\"", """{"stock": "a.stock.json"}"""),
        ("/doses/0/with", "\"scale-0.01\"", """{"add": "KNO3", "amount": "236 g"}"""),
        ("/doses/0/stock", "\"../stocks/trace.stock.json\"", """{"dose": "1 mL/L"}"""),
        ("/doses/0/assay", "", """{"add": "KNO3", "amount": "236 g"}"""),
        ("/makes", "\"500 mL\"", """{"format": 1, "name": "Half", "steps": [{"pour": "400 mL"}, {"add": "KNO3", "amount": "20 g"}, {"topUp": "500 mL"}]}"""),
        ("/meters/0/accuracy", "\"± 0.1\"", """{"name": "ph-pen", "measures": "pH"}"""),
        ("/rules/tank-precipitate/visible", "", """{"level": "warning"}"""),
    ];

    public static TheoryData<string> Kinds() => [.. _files.Keys];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void No_example_is_found_fault_with(string kind)
    {
        using var scratch = new Scratch();
        scratch.Write("recipelint.json", Shop);
        var examples = new Examples(kind).All();
        Assert.True(examples.Count >= 25, $"{examples.Count} examples");
        for (var i = 0; i < examples.Count; i++)
        {
            Write(scratch, string.Create(CultureInfo.InvariantCulture, $"e{i}"), kind, examples[i].Document);
        }

        var faults = Cli.RunIn(scratch.Path, null, "check", ".").Findings
            .Select(f => (Example: int.Parse(f[1..f.IndexOf('/', StringComparison.Ordinal)], CultureInfo.InvariantCulture), Said: f))
            .Where(f => IsAboutTheExample(f.Said, kind))
            .Select(f => $"{kind}.schema.json, example of {examples[f.Example].Place}: {examples[f.Example].Document}\n  {f.Said}")
            .ToList();
        Assert.True(faults.Count == 0, string.Join("\n", faults));
    }

    /// <summary>The check sees a fault: an example with a rule that does not exist.</summary>
    [Fact]
    public void A_name_that_no_rule_has_would_be_found()
    {
        using var scratch = new Scratch();
        Write(scratch, "e0", "recipelint", """{"rules": {"stock-not-used": "off"}}""");
        Assert.Contains(Cli.RunIn(scratch.Path, null, "check", ".").Findings, f => f.Contains("unknown-rule", StringComparison.Ordinal) && IsAboutTheExample(f, "recipelint"));
    }

    /// <summary>
    /// What a file says wrongly. That a small example leaves a crop short, or that a suppression has nothing to suppress in a shop that makes no
    /// mistake, is no fault of its wording.
    /// </summary>
    private static bool IsAboutTheExample(string finding, string kind)
    {
        var rule = RuleBook.Descriptors.Single(r => finding.Contains($" {r.Id} {r.Name}", StringComparison.Ordinal));
        return finding.Contains("/" + _files[kind] + ":", StringComparison.Ordinal) && rule.Family == "documents" && rule.Name != "suppression-unused";
    }

    private static void Write(Scratch scratch, string folder, string kind, string document)
    {
        scratch.Write($"{folder}/a/b/{_files[kind]}", document);
        foreach (var (name, text) in _kit.Where(k => document.Contains(k.Key, StringComparison.Ordinal)))
        {
            scratch.Write($"{folder}/a/b/{name}", text);
            scratch.Write($"{folder}/a/b/stocks/{name}", text);
            scratch.Write($"{folder}/a/stocks/{name}", text);
            scratch.Write($"{folder}/a/water/{name}", text);
        }
    }

    /// <summary>The examples of one schema, each with its place in a document of that kind.</summary>
    private sealed class Examples(string kind)
    {
        private readonly JsonObject _root = JsonNode.Parse(File.ReadAllText(Path.Combine(Repository.Root, "schema", kind + ".schema.json")))!.AsObject();
        private readonly Dictionary<string, List<JsonObject>> _found = [];

        internal List<(string Place, string Document)> All()
        {
            Walk(_root, "", []);
            return
            [
                .. _found.SelectMany(f => f.Value.SelectMany(s => s["examples"]?.AsArray() ?? []).Select(e => (Place: f.Key, Document: Build(f.Key, e!).ToJsonString(_plain))))
                    .DistinctBy(e => e.Document),
            ];
        }

        private void Walk(JsonNode? node, string place, HashSet<string> within)
        {
            if (node is not JsonObject schema)
            {
                return;
            }

            if (schema["$ref"] is { } reference)
            {
                var name = reference.GetValue<string>().Split('/')[^1];
                if (!within.Contains(name))
                {
                    Walk(_root["$defs"]![name], place, [.. within, name]);
                }

                return;
            }

            if (!_found.TryGetValue(place, out var here))
            {
                _found[place] = here = [];
            }

            here.Add(schema);
            foreach (var (keyword, value) in schema)
            {
                switch (keyword)
                {
                    case "properties":
                        foreach (var (name, below) in value!.AsObject().Where(p => p.Value is JsonObject))
                        {
                            Walk(below, $"{place}/{name}", within);
                        }

                        break;
                    case "patternProperties":
                        Walk(value!.AsObject().First().Value, place + "/As", within);
                        break;
                    case "additionalProperties":
                        if (Free(place) is { } free)
                        {
                            Walk(value, $"{place}/{free}", within);
                        }

                        break;
                    case "items":
                        Walk(value, place + "/0", within);
                        break;
                    case "if" or "then" or "else":
                        Walk(value, place, within);
                        break;
                    case "anyOf" or "allOf" or "oneOf":
                        foreach (var branch in value!.AsArray())
                        {
                            Walk(branch, place, within);
                        }

                        break;
                }
            }
        }

        /// <summary>A key that stands for those a person is free to choose; null where another place shows the same.</summary>
        private static string? Free(string place) => place switch
        {
            "/rules" => "tank-precipitate",
            "/rules/tank-precipitate" => "visible",
            _ when place.StartsWith("/rules/", StringComparison.Ordinal) => null,
            _ => "heading",
        };

        /// <summary>The document whose value at a place is the example; what stands beside it comes from the examples around it.</summary>
        private JsonNode Build(string place, JsonNode value)
        {
            var node = value.DeepClone();
            for (var at = place; at.Length > 0; at = at[..at.LastIndexOf('/')])
            {
                var key = at[(at.LastIndexOf('/') + 1)..];
                node = key == "0" ? new JsonArray(node) : With(at, key, node);
            }

            return node;
        }

        private JsonObject With(string at, string key, JsonNode value)
        {
            var text = value.ToJsonString(_plain);
            var own = _carriers.FirstOrDefault(c => (c.End.EndsWith('/') ? at.Contains(c.End, StringComparison.Ordinal) : at.EndsWith(c.End, StringComparison.Ordinal))
                && (c.Value.Length == 0 || c.Value == text)).Carrier;
            var around = _found[at[..at.LastIndexOf('/')]].SelectMany(s => s["examples"]?.AsArray() ?? []).OfType<JsonObject>().ToList();
            var carrier = own is not null ? JsonNode.Parse(own)!.AsObject()
                : (around.FirstOrDefault(e => e.ContainsKey(key)) ?? around.FirstOrDefault())?.DeepClone().AsObject() ?? [];
            carrier[key] = value;
            return carrier;
        }
    }
}
