using System.Text.Json.Nodes;
using RecipeLint.Editor.Tests.Support;

namespace RecipeLint.Editor.Tests;

/// <summary>What a person at an editor asks for, each with the answer that the example shop gives.</summary>
public sealed class FeatureTests : IDisposable
{
    private const string Settings = "file:///quillmere/recipelint.json";
    private const string Trace = "file:///quillmere/stocks/trace.stock.json";

    private readonly Client _client = Client.InProcess(Shop.InMemory());

    public FeatureTests()
    {
        _client.Initialize();
        foreach (var uri in new[] { Shop.Lettuce, Shop.PartA, Settings })
        {
            _client.Open(uri, Shop.Text(uri));
        }
    }

    public void Dispose()
    {
        Assert.Equal(0, _client.End());
        _client.Dispose();
    }

    /// <summary>The place of a text in a document, so many characters into it.</summary>
    private static (int Line, int Character) Where(string text, string part, int into = 1)
    {
        var at = text.IndexOf(part, StringComparison.Ordinal);
        Assert.True(at >= 0, $"'{part}' is not there");
        var before = text[..(at + into)].Split('\n');
        return (before.Length - 1, before[^1].Length);
    }

    private JsonNode? Ask(string method, string uri, string part, int into = 1) => _client.Result(method, Client.At(uri, Where(Shop.Text(uri), part, into)));

    private string Hover(string uri, string part) => Ask("textDocument/hover", uri, part)?["contents"]!["value"]!.GetValue<string>() ?? "";

    [Fact]
    public void HoverTellsASubstanceWithCompositionAndHazardsAndTheShareOfTheLine()
    {
        var text = Hover(Shop.PartA, "\"calcium-nitrate-fertiliser\"");
        Assert.Contains("`calcium-nitrate-fertiliser`", text, StringComparison.Ordinal);
        Assert.Contains("Ca 19 %", text, StringComparison.Ordinal);
        Assert.Contains("Hazards: harmful if swallowed (H302)", text, StringComparison.Ordinal);
        Assert.Contains("safety data sheet", text, StringComparison.Ordinal);

        // 130 g at 99 % with 19 % of calcium in 2 L: 12,227 mg/L; the rest of the calcium comes with the water.
        Assert.Contains("| Ca | 12227 | 100 % |", text, StringComparison.Ordinal);
        Assert.Contains("| Ca |", Hover(Shop.PartA, "\"130 g\""), StringComparison.Ordinal);
    }

    [Fact]
    public void HoverTellsAStockADoseAKeyAndARule()
    {
        var stock = Hover(Shop.Lettuce, "\"../stocks/part-a.stock.json\"");
        Assert.Contains("Part A", stock, StringComparison.Ordinal);
        Assert.Contains("pH 3.1 when mixed; no finding", stock, StringComparison.Ordinal);
        Assert.Contains("mg/L in the final solution", stock, StringComparison.Ordinal);
        Assert.Contains("The finished volume", Hover(Shop.PartA, "\"makes\""), StringComparison.OrdinalIgnoreCase);
        var settings = """{"rules": {"calcium-with-sulfate": "warning"}}""";
        _client.Replace(Settings, 2, settings);
        var rule = _client.Result("textDocument/hover", Client.At(Settings, Where(settings, "calcium-with", 3)))!["contents"]!["value"]!.GetValue<string>();
        Assert.Contains("RL0101 calcium-with-sulfate", rule, StringComparison.Ordinal);
        Assert.Contains("gypsum", rule, StringComparison.OrdinalIgnoreCase);
    }

    private List<JsonObject> Complete(string uri, string text, string mark = "¦")
    {
        var at = text.IndexOf(mark, StringComparison.Ordinal);
        var whole = text.Remove(at, mark.Length);
        _client.Replace(uri, 7, whole);
        var before = whole[..at].Split('\n');
        return [.. _client.Result("textDocument/completion", Client.At(uri, (before.Length - 1, before[^1].Length)))!["items"]!.AsArray().Select(i => i!.AsObject())];
    }

    private static IEnumerable<string> Labels(List<JsonObject> items) => items.Select(i => i["label"]!.GetValue<string>());

    [Theory]
    [InlineData("{ \"format\": 1, \"¦", "makes")]
    [InlineData("{ \"format\": 1, \"makes\": \"2 L\", \"steps\": [ { \"¦", "add")]
    [InlineData("{ \"format\": 1, \"makes\": \"2 L\", \"steps\": [ { \"add\": \"KNO3\", \"¦", "amount")]
    [InlineData("{ \"format\": 1, \"makes\": \"2 L\", \"steps\": [ { \"add\": \"¦", "magnesium-sulfate-7h2o")]
    [InlineData("{ \"format\": 1, \"makes\": \"2 L\", \"steps\": [ { \"add\": \"mag¦", "part-b.stock.json")]
    [InlineData("{ \"format\": 1, \"makes\": \"2 L\", \"steps\": [ { \"add\": \"KNO3\", \"amount\": \"12¦", "12 g")]
    [InlineData("{ \"format\": 1, \"makes\": \"2¦\" }", "2 L")]
    [InlineData("{ \"steps\": [ { \"add\": \"KNO3\", \"with\": \"¦\" } ] }", "bench-scale")]
    [InlineData("{ \"steps\": [ { \"pour\": \"1 L\", \"of\": \"¦\" } ] }", "../water/rain.water.json")]
    [InlineData("{ \"steps\": [ { \"pour\": \"1 L\", \"of\": \"¦\" } ] }", "reverse-osmosis")]
    [InlineData("{ \"keep\": { \"light\": \"¦", "dark")]
    [InlineData("{ \"keep\": { \"at\": \"¦", "store")]
    public void CompletionKnowsWhatMayStandInAStock(string text, string expected)
    {
        var items = Complete(Shop.PartA, text);
        Assert.Contains(expected, Labels(items));
    }

    [Fact]
    public void CompletionOffersOnlyWhatTheFormOfAStepTakes()
    {
        var labels = Labels(Complete(Shop.PartA, "{ \"steps\": [ { \"topUp\": \"2 L\", \"¦")).ToList();
        Assert.Equal(["id", "note", "of"], labels.Order());
    }

    [Theory]
    [InlineData("{ \"doses\": [ { \"stock\": \"¦", "../stocks/part-a.stock.json")]
    [InlineData("{ \"crop\": \"¦", "lettuce")]
    [InlineData("{ \"doses\": [ { \"stock\": \"a\", \"dose\": \"10¦", "10 mL/L")]
    public void CompletionKnowsWhatMayStandInARecipe(string text, string expected) => Assert.Contains(expected, Labels(Complete(Shop.Lettuce, text)));

    [Theory]
    [InlineData("{ \"rules\": { \"¦", "calcium-with-sulfate")]
    [InlineData("{ \"rules\": { \"calcium-with-sulfate\": { \"¦", "visible")]
    [InlineData("{ \"rules\": { \"calcium-with-sulfate\": \"¦", "warning")]
    [InlineData("{ \"suppressions\": [ { \"rule\": \"¦", "target-missed")]
    [InlineData("{ \"suppressions\": [ { \"file\": \"¦", "stocks/part-a.stock.json")]
    public void CompletionKnowsWhatMayStandInSettings(string text, string expected) => Assert.Contains(expected, Labels(Complete(Settings, text)));

    /// <summary>What is put in fits what stands there: the quotes close, and a key gets its colon.</summary>
    [Fact]
    public void WhatIsCompletedIsJson()
    {
        const string Before = "{ \"format\": 1, \"makes\": \"2 L\", \"steps\": [ { \"add\": \"pot¦ass\", \"amount\": \"1 g\" } ] }";
        var item = Complete(Shop.PartA, Before).Single(i => i["label"]!.GetValue<string>() == "potassium-nitrate");
        var edited = Apply(Before.Replace("¦", "", StringComparison.Ordinal), item["textEdit"]!);
        Assert.Equal("potassium-nitrate", JsonNode.Parse(edited)!["steps"]![0]!["add"]!.GetValue<string>());
        const string Key = "{ \"mak¦ }";
        Assert.StartsWith("{ \"makes\": ", Apply(Key.Replace("¦", "", StringComparison.Ordinal), Complete(Shop.PartA, Key).Single(i => i["label"]!.GetValue<string>() == "makes")["textEdit"]!), StringComparison.Ordinal);
    }

    private static string Apply(string text, JsonNode edit)
    {
        int Offset(JsonNode position)
        {
            var lines = text.Split('\n');
            return lines.Take(position["line"]!.GetValue<int>()).Sum(l => l.Length + 1) + position["character"]!.GetValue<int>();
        }

        return text[..Offset(edit["range"]!["start"]!)] + edit["newText"]!.GetValue<string>() + text[Offset(edit["range"]!["end"]!)..];
    }

    private static string ApplyAll(string text, JsonArray edits) =>
        edits.OrderByDescending(e => (e!["range"]!["start"]!["line"]!.GetValue<int>(), e["range"]!["start"]!["character"]!.GetValue<int>())).Aggregate(text, (t, e) => Apply(t, e!));

    [Fact]
    public void ACodeActionIsAppliedAndTheFindingIsGone()
    {
        var text = Shop.Text(Shop.PartA).Replace("\"potassium-nitrate\"", "\"potasium-nitrate\"", StringComparison.Ordinal);
        _client.Replace(Shop.PartA, 2, text);
        var diagnostic = Assert.Single(_client.Diagnostics(Shop.PartA, 2));
        var actions = _client.Result("textDocument/codeAction", new JsonObject
        {
            ["textDocument"] = new JsonObject { ["uri"] = Shop.PartA },
            ["range"] = diagnostic["range"]!.DeepClone(),
            ["context"] = new JsonObject { ["diagnostics"] = new JsonArray(diagnostic.DeepClone()) },
        })!.AsArray();
        var action = actions[0]!;
        Assert.Equal("quickfix", action["kind"]!.GetValue<string>());
        var change = Assert.Single(action["edit"]!["documentChanges"]!.AsArray())!;
        Assert.Equal(Shop.PartA, change["textDocument"]!["uri"]!.GetValue<string>());
        Assert.Equal(2, change["textDocument"]!["version"]!.GetValue<int>());
        var mended = ApplyAll(text, change["edits"]!.AsArray());
        Assert.Equal(Shop.Text(Shop.PartA), mended);
        _client.Replace(Shop.PartA, 3, mended);
        Assert.Empty(_client.Diagnostics(Shop.PartA, 3));
    }

    [Fact]
    public void AFindingIsAcceptedFromTheEditor()
    {
        var text = Shop.Text(Shop.PartA).Replace("\"potassium-nitrate\"", "\"potasium-nitrate\"", StringComparison.Ordinal);
        _client.Replace(Shop.PartA, 2, text);
        var diagnostic = Assert.Single(_client.Diagnostics(Shop.PartA, 2));
        var accept = Assert.Single(
            _client.Result("textDocument/codeAction", new JsonObject
            {
                ["textDocument"] = new JsonObject { ["uri"] = Shop.PartA },
                ["range"] = diagnostic["range"]!.DeepClone(),
                ["context"] = new JsonObject { ["diagnostics"] = new JsonArray() },
            })!.AsArray(),
            a => a!["title"]!.GetValue<string>().StartsWith("Accept RL0021 unknown-substance here, in recipelint.json", StringComparison.Ordinal))!;
        Assert.False(accept["isPreferred"]!.GetValue<bool>());
        var change = Assert.Single(accept["edit"]!["documentChanges"]!.AsArray())!;
        Assert.Equal(Settings, change["textDocument"]!["uri"]!.GetValue<string>());
        _client.Replace(Settings, 2, ApplyAll(Shop.Text(Settings), change["edits"]!.AsArray()));
        _client.Replace(Shop.PartA, 3, text);
        Assert.Empty(_client.Diagnostics(Shop.PartA, 3));
    }

    /// <summary>A repair that changes what is mixed says so by name and is never the preferred one.</summary>
    [Fact]
    public void ARepairThatChangesTheMixIsNamed()
    {
        var text = Shop.Text(Shop.PartA).Replace("\"130 g\"", "\"130.123 g\"", StringComparison.Ordinal).Replace("\"3.4 g\"", "\"0.02 g\"", StringComparison.Ordinal);
        _client.Replace(Shop.PartA, 2, text);
        Assert.NotEmpty(_client.Diagnostics(Shop.PartA, 2));
        var actions = _client.Result("textDocument/codeAction", new JsonObject
        {
            ["textDocument"] = new JsonObject { ["uri"] = Shop.PartA },
            ["range"] = Client.Range((0, 0), (99, 0)),
            ["context"] = new JsonObject { ["diagnostics"] = new JsonArray() },
        })!.AsArray();
        Assert.Contains(actions, a => a!["title"]!.GetValue<string>().Contains("changes what is mixed", StringComparison.Ordinal));
        Assert.All(actions, a => Assert.False(a!["isPreferred"]!.GetValue<bool>() && a["title"]!.GetValue<string>().Contains("changes what is mixed", StringComparison.Ordinal)));
    }

    [Fact]
    public void DefinitionAndReferencesGoFromNameToThingAndBack()
    {
        Assert.Equal(Shop.PartA, Ask("textDocument/definition", Shop.Lettuce, "\"../stocks/part-a.stock.json\"")!["uri"]!.GetValue<string>());
        var scale = Ask("textDocument/definition", Shop.PartA, "\"bench-scale\"")!;
        Assert.Equal(Settings, scale["uri"]!.GetValue<string>());
        Assert.Equal("\"bench-scale\"", Cut(Shop.Text(Settings), scale["range"]!));
        Assert.Null(Ask("textDocument/definition", Shop.PartA, "\"potassium-nitrate\""));

        JsonArray Uses(string uri, string part) => _client.Result("textDocument/references", new JsonObject
        {
            ["textDocument"] = new JsonObject { ["uri"] = uri },
            ["position"] = Client.Position(Where(Shop.Text(uri), part)),
            ["context"] = new JsonObject { ["includeDeclaration"] = false },
        })!.AsArray();
        Assert.Equal(Shop.Lettuce, Assert.Single(Uses(Shop.PartA, "\"Part A\""))!["uri"]!.GetValue<string>());
        Assert.True(Uses(Shop.PartA, "\"../water/rain.water.json\"").Count >= 5);
        Assert.Contains(Uses(Settings, "\"bench-scale\""), u => u!["uri"]!.GetValue<string>() == Shop.PartA);
    }

    private static string Cut(string text, JsonNode range)
    {
        var line = text.Split('\n')[range["start"]!["line"]!.GetValue<int>()];
        return line[range["start"]!["character"]!.GetValue<int>()..range["end"]!["character"]!.GetValue<int>()];
    }

    [Fact]
    public void AStockIsRenamedWithItsFileAndEveryReference()
    {
        var ready = Ask("textDocument/prepareRename", Shop.Lettuce, "\"../stocks/part-a.stock.json\"")!;
        Assert.Equal("part-a", ready["placeholder"]!.GetValue<string>());
        var asked = Client.At(Shop.Lettuce, Where(Shop.Text(Shop.Lettuce), "\"../stocks/part-a.stock.json\""));
        asked["newName"] = "calcium";
        var changes = _client.Result("textDocument/rename", asked)!["documentChanges"]!.AsArray();
        var recipe = Assert.Single(changes, c => c!["textDocument"]?["uri"]!.GetValue<string>() == Shop.Lettuce)!;
        Assert.Contains("\"../stocks/calcium.stock.json\"", ApplyAll(Shop.Text(Shop.Lettuce), recipe["edits"]!.AsArray()), StringComparison.Ordinal);
        var rename = Assert.Single(changes, c => c!["kind"]?.GetValue<string>() == "rename")!;
        Assert.Equal((Shop.PartA, "file:///quillmere/stocks/calcium.stock.json"), (rename["oldUri"]!.GetValue<string>(), rename["newUri"]!.GetValue<string>()));

        foreach (var bad in new[] { "part-b", "../escape", "", "a/b", "." })
        {
            var refused = asked.DeepClone();
            refused["newName"] = bad;
            Assert.True(_client.Wait(_client.Begin("textDocument/rename", refused)).ContainsKey("error"), bad);
        }
    }

    [Fact]
    public void AnIdIsRenamedWithTheSuppressionsThatNameIt()
    {
        var settings = Shop.Text(Settings).TrimEnd()[..^1] + """, "suppressions": [{"rule": "target-missed", "file": "stocks/part-a.stock.json", "at": "steps/iron-dtpa/amount", "reason": "tried"}]}""";
        _client.Replace(Settings, 2, settings);
        var asked = Client.At(Shop.PartA, Where(Shop.Text(Shop.PartA), "\"iron-dtpa\""));
        asked["newName"] = "iron";
        var changes = _client.Result("textDocument/rename", asked)!["documentChanges"]!.AsArray();
        string After(string uri, string text) => ApplyAll(text, changes.Single(c => c!["textDocument"]!["uri"]!.GetValue<string>() == uri)!["edits"]!.AsArray());
        Assert.Contains("\"id\": \"iron\"", After(Shop.PartA, Shop.Text(Shop.PartA)), StringComparison.Ordinal);
        Assert.Contains("\"at\": \"steps/iron/amount\"", After(Settings, settings), StringComparison.Ordinal);
    }

    [Fact]
    public void HintsGiveWhatAnAmountComesTo()
    {
        var hints = _client.Result("textDocument/inlayHint", new JsonObject { ["textDocument"] = new JsonObject { ["uri"] = Shop.PartA }, ["range"] = Client.Range((0, 0), (99, 0)) })!.AsArray();
        var labels = hints.Select(h => h!["label"]!.GetValue<string>()).ToList();

        // 40 g of KNO3 (101.10 g/mol) at 99.5 % in 2 L: 196.8 mmol/L; 10 mL of it in a litre bring 77 mg of potassium.
        Assert.Contains(labels, l => l.StartsWith("196.8 mmol/L → K 76.96", StringComparison.Ordinal) && l.EndsWith("mg/L at 10 mL/L", StringComparison.Ordinal));
        Assert.Equal(3, labels.Count);
        var doses = _client.Result("textDocument/inlayHint", new JsonObject { ["textDocument"] = new JsonObject { ["uri"] = Shop.Lettuce }, ["range"] = Client.Range((0, 0), (99, 0)) })!.AsArray();
        Assert.Equal(3, doses.Count);
        Assert.Contains("Ca 122", doses[0]!["label"]!.GetValue<string>(), StringComparison.Ordinal);
    }

    [Fact]
    public void TheOutlineNamesStepsAndTheLensTellsVerdictAndPh()
    {
        var symbols = _client.Result("textDocument/documentSymbol", new JsonObject { ["textDocument"] = new JsonObject { ["uri"] = Shop.PartA } })!.AsArray();
        var steps = Assert.Single(symbols, s => s!["name"]!.GetValue<string>() == "steps")!;
        Assert.Equal(7, steps["children"]!.AsArray().Count);
        Assert.Contains(steps["children"]!.AsArray(), s => s!["name"]!.GetValue<string>() == "add potassium-nitrate");
        var lens = Assert.Single(_client.Result("textDocument/codeLens", new JsonObject { ["textDocument"] = new JsonObject { ["uri"] = Shop.PartA } })!.AsArray())!;
        Assert.StartsWith("no finding · pH 3.1", lens["command"]!["title"]!.GetValue<string>(), StringComparison.Ordinal);
        var tank = Assert.Single(_client.Result("textDocument/codeLens", new JsonObject { ["textDocument"] = new JsonObject { ["uri"] = Shop.Lettuce } })!.AsArray())!;
        Assert.Contains("mS/cm in the tank", tank["command"]!["title"]!.GetValue<string>(), StringComparison.Ordinal);
    }

    /// <summary>Every request at every few characters of every document, whole and cut off: each is answered, none with a fault of the server's own.</summary>
    [Fact]
    public void NoPointOfADocumentBringsTheServerDown()
    {
        var version = 10;
        foreach (var uri in new[] { Shop.PartA, Shop.Lettuce, Settings, Trace })
        {
            var whole = Shop.Text(uri);
            _client.Open(uri, whole, version);
            foreach (var text in new[] { whole, whole[..(whole.Length * 2 / 3)], whole.Replace("\"", "", StringComparison.Ordinal), "", "[]", "[[[", "{\"steps\": 7, \"doses\": [7, null]}" })
            {
                _client.Replace(uri, ++version, text);
                var lines = text.Split('\n');
                for (var line = 0; line < lines.Length + 1; line += 3)
                {
                    foreach (var method in new[] { "hover", "completion", "definition", "prepareRename", "references" })
                    {
                        var answer = _client.Wait(_client.Begin("textDocument/" + method, Client.At(uri, (line, line * 7 % 40))));
                        Assert.NotEqual(-32603, answer["error"]?["code"]?.GetValue<int>());
                    }
                }

                foreach (var method in new[] { "documentSymbol", "codeLens", "inlayHint" })
                {
                    var asked = new JsonObject { ["textDocument"] = new JsonObject { ["uri"] = uri }, ["range"] = Client.Range((0, 0), (999, 0)) };
                    Assert.False(_client.Wait(_client.Begin("textDocument/" + method, asked)).ContainsKey("error"));
                }
            }
        }
    }
}
