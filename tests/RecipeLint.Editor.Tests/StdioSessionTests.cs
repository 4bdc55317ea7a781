using System.Text;
using System.Text.Json.Nodes;
using RecipeLint.Editor.Tests.Support;

namespace RecipeLint.Editor.Tests;

/// <summary>
/// The real program over standard input and output in a repository of two shops: what people type, what other systems write, and what lies
/// somewhere else. Everything is answered, nothing is a fault of the server's own, and at the end nothing of it is left.
/// </summary>
public sealed class StdioSessionTests : IDisposable
{
    private const int Seed = 20261130;

    private readonly string _folder = Directory.CreateTempSubdirectory("recipelint-editor").FullName;

    public StdioSessionTests()
    {
        Directory.CreateDirectory(Path.Combine(_folder, ".git"));
        foreach (var (path, text) in Shop.Files())
        {
            Write("one/" + path, text);
            Write("two/" + path, text);
        }

        foreach (var (path, text) in Shop.Files("fennelwick"))
        {
            Write("garden/" + path, text);
        }

        Write("two/recipes/lettuce.recipe.json", Read("two/recipes/lettuce.recipe.json").Replace("../stocks/part-a", "../../one/stocks/part-a", StringComparison.Ordinal));
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    /// <summary>A new name for a stock goes wherever the stock is dosed, into the other shop too.</summary>
    [Fact]
    public void AStockIsRenamedAcrossShops()
    {
        using var client = Client.OfProcess(_folder);
        client.Initialize();
        var uri = UriOf("one/recipes/lettuce.recipe.json");
        var text = Read("one/recipes/lettuce.recipe.json");
        client.Open(uri, text);
        client.Diagnostics(uri, 1);
        var line = Array.FindIndex(text.Split('\n'), l => l.Contains("part-a.stock.json", StringComparison.Ordinal));
        var asked = Client.At(uri, (line, text.Split('\n')[line].IndexOf("part-a", StringComparison.Ordinal)));
        asked["newName"] = "calcium";
        var changes = client.Result("textDocument/rename", asked.DeepClone())!["documentChanges"]!.AsArray();
        var touched = changes.Select(c => c!["textDocument"]?["uri"]?.GetValue<string>()).OfType<string>().ToList();
        Assert.Contains(UriOf("one/recipes/lettuce.recipe.json"), touched);
        Assert.Contains(UriOf("two/recipes/lettuce.recipe.json"), touched);
        var references = client.Result("textDocument/references", asked.DeepClone())!.AsArray().Select(r => r!["uri"]!.GetValue<string>());
        Assert.Contains(UriOf("two/recipes/lettuce.recipe.json"), references);
        Assert.Contains(changes, c => c!["newUri"]?.GetValue<string>() == UriOf("one/stocks/calcium.stock.json"));
        Assert.Equal(0, client.End());
    }

    /// <summary>Half a line is half a line: what else is right in the file, and every other file, is not found fault with.</summary>
    [Theory]
    [InlineData("    { \"add\": \"potassium-nitrate\", \"amo")]
    [InlineData("    { \"add\": ")]
    [InlineData("    {")]
    [InlineData("    \"")]
    public void AnUnfinishedLineIsNoCascade(string typed)
    {
        using var client = Client.OfProcess(_folder);
        client.Initialize();
        var (stock, recipe) = (UriOf("one/stocks/part-a.stock.json"), UriOf("one/recipes/lettuce.recipe.json"));
        var text = Read("one/stocks/part-a.stock.json");
        client.Open(recipe, Read("one/recipes/lettuce.recipe.json"));
        client.Open(stock, text);
        Assert.Empty(client.Diagnostics(stock, 1));
        client.Replace(stock, 2, text.Replace("    { \"stir\": \"until clear\" },\n    { \"add\": \"fe", typed + "\n    { \"add\": \"fe", StringComparison.Ordinal));
        Assert.InRange(client.Diagnostics(stock, 2).Count, 1, 2);
        client.Edit(recipe, 2, (0, 0), (0, 0), "");
        Assert.Empty(client.Diagnostics(recipe, 2));
        client.Replace(stock, 3, text);
        Assert.Empty(client.Diagnostics(stock, 3));
        Assert.Equal(0, client.End());
    }

    /// <summary>Line ends of another system and a mark at the start are read; places stand where the editor has them.</summary>
    [Fact]
    public void OtherLineEndsMoveNothing()
    {
        using var client = Client.OfProcess(_folder);
        client.Initialize();
        var uri = UriOf("one/stocks/part-b.stock.json");
        var text = Read("one/stocks/part-b.stock.json").Replace("\"monopotassium-phosphate\"", "\"monopotasium-phosphate\"", StringComparison.Ordinal);
        client.Open(uri, text);
        var plain = Spots(client, uri, 1);
        Assert.NotEmpty(plain);
        client.Replace(uri, 2, text.Replace("\n", "\r\n", StringComparison.Ordinal));
        Assert.Equal(plain, Spots(client, uri, 2));
        client.Replace(uri, 3, "\uFEFF" + text);
        Assert.Subset(Spots(client, uri, 3).ToHashSet(StringComparer.Ordinal), plain.ToHashSet(StringComparer.Ordinal));
        Assert.Equal(0, client.End());
    }

    /// <summary>What lies in no shop, in no folder, or is no file at all.</summary>
    [Fact]
    public void DocumentsFromElsewhereAreAnswered()
    {
        using var client = Client.OfProcess(_folder);
        client.Initialize();
        foreach (var uri in new[]
        {
            "untitled:Untitled-1", "file:///nowhere/at/all/x.stock.json", "file:///x.recipe.json", "https://example.invalid/a.stock.json",
            "file:///tmp/%zz%00.stock.json", "",
        })
        {
            client.Open(uri, """{ "format": 1, "makes": "1 L", "steps": [ { "pour": "1 L" }, { "add": "KNO3", "amount": "5 g" } ] }""");
            foreach (var method in new[] { "hover", "completion", "definition", "references", "prepareRename" })
            {
                Answered(client, method, Client.At(uri, (0, 40)));
            }
        }

        var own = UriOf("one/stocks/trace.stock.json");
        client.Open(own, Read("one/stocks/trace.stock.json"));
        Assert.Empty(client.Diagnostics(own, 1));
        Assert.Equal(0, client.End());
    }

    [Fact]
    public void AWildSessionLeavesNothingBehind()
    {
        using var client = Client.OfProcess(_folder);
        client.Initialize();
        var random = new Random(Seed);
        string[] files =
        [
            "one/stocks/part-a.stock.json", "one/recipes/lettuce.recipe.json", "two/recipes/lettuce.recipe.json", "one/recipelint.json",
            "garden/recipes/tomato.recipe.json", "garden/batches/b-2026-03-02.batch.json", "garden/products/own.substances.json", "garden/profiles/tomato.profile.json",
        ];
        var versions = files.ToDictionary(f => f, _ => 1, StringComparer.Ordinal);
        foreach (var file in files)
        {
            client.Open(UriOf(file), Read(file));
        }

        for (var step = 0; step < 120; step++)
        {
            var file = files[random.Next(files.Length)];
            var uri = UriOf(file);
            var at = (random.Next(30), random.Next(70));
            switch (random.Next(9))
            {
                case 0:
                    client.Edit(uri, ++versions[file], at, at, ((string[])["\"", "{", "}", ",", "\r\n", "\uFEFF", "🌱", "KNO3", " 5 g"])[random.Next(9)]);
                    break;
                case 1:
                    client.Replace(uri, ++versions[file], Read(file)[..random.Next(Read(file).Length)]);
                    break;
                case 2:
                    client.Replace(uri, ++versions[file], Read(file).Replace("\n", "\r\n", StringComparison.Ordinal));
                    break;
                case 3:
                    client.Replace(uri, ++versions[file], "\uFEFF" + Read(file));
                    break;
                case 4:
                    client.Notify("textDocument/didSave", new JsonObject { ["textDocument"] = new JsonObject { ["uri"] = uri } });
                    break;
                case 5:
                    client.Notify("textDocument/didClose", new JsonObject { ["textDocument"] = new JsonObject { ["uri"] = uri } });
                    client.Open(uri, Read(file), ++versions[file]);
                    break;
                case 6:
                    var renamed = Client.At(uri, at);
                    renamed["newName"] = "other";
                    Answered(client, "rename", renamed);
                    break;
                case 7:
                    var ranged = new JsonObject { ["textDocument"] = new JsonObject { ["uri"] = uri }, ["range"] = Client.Range(at, (at.Item1 + 2, 0)), ["context"] = new JsonObject { ["diagnostics"] = new JsonArray() } };
                    Answered(client, ((string[])["codeAction", "inlayHint", "documentSymbol", "codeLens"])[random.Next(4)], ranged);
                    break;
                default:
                    Answered(client, ((string[])["hover", "completion", "definition", "references", "prepareRename"])[random.Next(5)], Client.At(uri, at));
                    break;
            }
        }

        foreach (var file in files)
        {
            client.Replace(UriOf(file), ++versions[file], Read(file));
        }

        foreach (var file in files)
        {
            client.Edit(UriOf(file), ++versions[file], (0, 0), (0, 0), "");
            Assert.True(client.Diagnostics(UriOf(file), versions[file]).Count == 0, $"{file}, seed {Seed}");
        }

        Assert.Equal(0, client.End());
    }

    private static void Answered(Client client, string method, JsonObject asked)
    {
        var answer = client.Wait(client.Begin("textDocument/" + method, asked));
        Assert.True(answer["error"]?["code"]?.GetValue<int>() is not -32603, $"{method}: {answer.ToJsonString()}");
    }

    /// <summary>Rule and range of each finding.</summary>
    private static List<string> Spots(Client client, string uri, int version) =>
        [.. client.Diagnostics(uri, version).Select(d => d["code"]!.ToJsonString() + d["range"]!.ToJsonString()).Order(StringComparer.Ordinal)];

    private string UriOf(string file) => new Uri(Path.Combine(_folder, file)).AbsoluteUri;

    private string Read(string file) => File.ReadAllText(Path.Combine(_folder, file), Encoding.UTF8);

    private void Write(string file, string text)
    {
        var full = Path.Combine(_folder, file);
        Directory.CreateDirectory(Path.GetDirectoryName(full)!);
        File.WriteAllText(full, text);
    }
}
