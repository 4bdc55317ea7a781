using System.Text;
using System.Text.Json.Nodes;
using RecipeLint.Editor.Tests.Support;

namespace RecipeLint.Editor.Tests;

/// <summary>What is no message, no request or no document is answered, and the session goes on (JSON-RPC 2.0, section 5.1; LSP 3.17).</summary>
public sealed class ProtocolTests
{
    private static int CodeOf(JsonObject answer) => answer["error"]!["code"]!.GetValue<int>();

    private static JsonObject NextStray(Client client)
    {
        Assert.True(client.Stray.TryTake(out var answer, Client.Patience), "nothing was answered");
        return answer!;
    }

    [Theory]
    [InlineData("{\"jsonrpc\":\"2.0\",\"id\":3,\"method\":", -32700)]
    [InlineData("", -32700)]
    [InlineData("\u0000\u0001", -32700)]
    [InlineData("[]", -32600)]
    [InlineData("7", -32600)]
    [InlineData("{}", -32600)]
    [InlineData("{\"jsonrpc\":\"2.0\",\"id\":{},\"method\":\"shutdown\"}", -32600)]
    [InlineData("{\"jsonrpc\":\"2.0\",\"id\":1,\"method\":7}", -32600)]
    public void WhatIsNoMessageIsAnsweredAndTheSessionGoesOn(string body, int code)
    {
        using var client = Client.InProcess(Shop.InMemory());
        client.Initialize();
        client.Send(body);
        var answer = NextStray(client);
        Assert.Equal(code, CodeOf(answer));
        Assert.Null(answer["id"]);
        Assert.Equal(0, client.End());
    }

    /// <summary>Each ended the process: the library finds out about a text only when it is taken.</summary>
    [Theory]
    [InlineData("{\"jsonrpc\":\"2.0\",\"id\":1,\"method\":\"\u00ff\"}", -32700)]
    [InlineData("{\"jsonrpc\":\"2.0\",\"id\":\"\u00ff\",\"method\":\"x\"}", -32700)]
    [InlineData("{\"jsonrpc\":\"2.0\",\"\u00ff\":1,\"method\":\"x\"}", -32700)]
    [InlineData("{\"\\ud800\":1,\"\\udc00\":2}", -32600)]
    public void BytesThatAreNoTextAreAnsweredAndTheSessionGoesOn(string latin, int code)
    {
        using var client = Client.InProcess(Shop.InMemory());
        client.Initialize();
        client.SendRaw(Framed(latin));
        Assert.Equal(code, CodeOf(NextStray(client)));
        client.SendRaw(Framed("{\"\\ud800\":1,\"jsonrpc\":\"2.0\",\"method\":\"$/cancelRequest\",\"params\":{\"\\ud800\":1}}"));
        Assert.Equal(-32601, CodeOf(client.Wait(client.Begin("textDocument/moon", new JsonObject()))));
        Assert.Equal(0, client.End());

        static byte[] Framed(string body) => [.. Encoding.ASCII.GetBytes($"Content-Length: {body.Length}\r\n\r\n"), .. Encoding.Latin1.GetBytes(body)];
    }

    [Fact]
    public void AMessageNestedWithoutEndIsAnswered()
    {
        using var client = Client.InProcess(Shop.InMemory());
        client.Initialize();
        client.Send(new string('[', 100_000));
        Assert.Equal(-32700, CodeOf(NextStray(client)));
        client.Send("{\"jsonrpc\":\"2.0\",\"id\":1,\"method\":\"x\",\"params\":" + new string('[', 5000) + new string(']', 5000) + "}");
        Assert.Equal(-32700, CodeOf(NextStray(client)));
        Assert.Equal(0, client.End());
    }

    [Theory]
    [InlineData("Hello\r\n\r\n")]
    [InlineData("Content-Length: many\r\n\r\n")]
    [InlineData("Content-Length: -5\r\n\r\n")]
    [InlineData("Content-Type: x\r\n\r\n")]
    public void AHeaderThatSaysNoLengthIsAnswered(string header)
    {
        using var client = Client.InProcess(Shop.InMemory());
        client.Initialize();
        client.SendRaw(Encoding.ASCII.GetBytes(header));
        Assert.Equal(-32700, CodeOf(NextStray(client)));
        Assert.Equal(0, client.End());
    }

    [Fact]
    public void AMessageBeyondAllMeasureIsPassedOver()
    {
        using var client = Client.InProcess(Shop.InMemory());
        client.Initialize();
        client.SendRaw(Encoding.ASCII.GetBytes("Content-Length: 40000000\r\n\r\n"));
        var chunk = new byte[1_000_000];
        for (var i = 0; i < 40; i++)
        {
            client.SendRaw(chunk);
        }

        Assert.Equal(-32700, CodeOf(NextStray(client)));
        Assert.Equal(0, client.End());
    }

    [Fact]
    public void RequestsOutOfTurnAreRefusedWithTheCodesOfTheStandard()
    {
        using var client = Client.InProcess(Shop.InMemory());
        Assert.Equal(-32002, CodeOf(client.Wait(client.Begin("textDocument/hover", new JsonObject()))));
        client.Initialize();
        Assert.Equal(-32600, CodeOf(client.Wait(client.Begin("initialize", new JsonObject()))));
        Assert.Equal(-32601, CodeOf(client.Wait(client.Begin("textDocument/moon", new JsonObject()))));
        client.Request("shutdown", null);
        Assert.Equal(-32600, CodeOf(client.Wait(client.Begin("textDocument/hover", new JsonObject()))));
        client.Notify("exit", new JsonObject());
        Assert.Equal(0, client.ExitCode());
    }

    [Fact]
    public void NotificationsThatMakeNoSenseChangeNothing()
    {
        using var client = Client.InProcess(Shop.InMemory());
        client.Initialize();
        client.Notify("textDocument/didOpen", new JsonObject { ["textDocument"] = 7 });
        client.Notify("textDocument/didChange", new JsonObject());
        client.Notify("textDocument/didClose", new JsonObject { ["textDocument"] = new JsonObject { ["uri"] = "file:///nowhere.stock.json" } });
        client.Notify("$/setTrace", new JsonObject { ["value"] = "off" });
        client.Notify("no/such/thing", new JsonArray());
        client.Open("untitled:Untitled-1", "{}");
        client.Open("http://example.invalid/a.stock.json", "{}");
        client.Open(Shop.PartA, Shop.Text(Shop.PartA));
        Assert.Empty(client.Diagnostics(Shop.PartA, 1));
        Assert.Equal(0, client.End());
    }

    [Fact]
    public void ARequestThatWaitsCanBeCancelled()
    {
        using var client = Client.InProcess(Shop.InMemory());
        client.Initialize();
        client.Open(Shop.PartA, Shop.Text(Shop.PartA).Replace("potassium-nitrate", "potasium-nitrate", StringComparison.Ordinal));

        // The first takes a while: it tries out repairs. The second waits behind it.
        var range = Client.Range((0, 0), (99, 0));
        JsonObject Ask() => new() { ["textDocument"] = new JsonObject { ["uri"] = Shop.PartA }, ["range"] = range.DeepClone(), ["context"] = new JsonObject { ["diagnostics"] = new JsonArray() } };
        var first = client.Begin("textDocument/codeAction", Ask());
        var second = client.Begin("textDocument/codeAction", Ask());
        client.Notify("$/cancelRequest", new JsonObject { ["id"] = int.Parse(second, System.Globalization.CultureInfo.InvariantCulture) });
        client.Notify("$/cancelRequest", new JsonObject { ["id"] = 4711 });
        Assert.Equal(-32800, CodeOf(client.Wait(second)));
        Assert.False(client.Wait(first).ContainsKey("error"));
        Assert.Equal(0, client.End());
    }

    /// <summary>Positions in UTF-16 whatever stands before: characters of two units, lines that end in CR LF, a mark at the front.</summary>
    [Theory]
    [InlineData("\n", "", 0)]
    [InlineData("\r\n", "", 0)]
    [InlineData("\r", "", 0)]
    [InlineData("\n", "\uFEFF", 0)]
    [InlineData("\r\n", "\uFEFF", 0)]
    public void PlacesAreCountedAsTheEditorCountsThem(string end, string mark, int shift)
    {
        using var client = Client.InProcess(Shop.InMemory());
        client.Initialize();
        const string Uri = "file:///quillmere/stocks/mountain.stock.json";
        string[] lines = ["{ \"format\": 1, \"name\": \"🥬 Blatt\", \"makess\": \"2 L\",", "  \"note\": \"é漢🧪\", \"steps\": [{ \"note\": \"🌱🌱\", \"add\": \"no-such-salt\", \"amount\": \"1 g\" }] }"];
        var text = mark + string.Join(end, lines);
        client.Open(Uri, text);
        var found = client.Diagnostics(Uri, 1);
        var key = Assert.Single(found, d => d["message"]!.GetValue<string>().Contains("makess", StringComparison.Ordinal))["range"]!;
        Assert.Equal(0, key["start"]!["line"]!.GetValue<int>());
        Assert.Equal(mark.Length + lines[0].IndexOf("\"makess\"", StringComparison.Ordinal), key["start"]!["character"]!.GetValue<int>());
        Assert.Equal(mark.Length + lines[0].IndexOf("\"makess\"", StringComparison.Ordinal) + 8, key["end"]!["character"]!.GetValue<int>());
        var salt = Assert.Single(found, d => d["message"]!.GetValue<string>().Contains("no-such-salt", StringComparison.Ordinal))["range"]!;
        Assert.Equal(1 + shift, salt["start"]!["line"]!.GetValue<int>());
        Assert.Equal(lines[1].IndexOf("\"no-such-salt\"", StringComparison.Ordinal), salt["start"]!["character"]!.GetValue<int>());

        // An edit behind all that lands where it was meant.
        var at = lines[1].IndexOf("no-such-salt", StringComparison.Ordinal);
        client.Edit(Uri, 2, (1, at), (1, at + "no-such-salt".Length), "KNO3");
        Assert.DoesNotContain(client.Diagnostics(Uri, 2), d => d["message"]!.GetValue<string>().Contains("substance known", StringComparison.Ordinal));
        Assert.Equal(0, client.End());
    }

    /// <summary>Half of a surrogate pair comes in while a character is put together.</summary>
    [Fact]
    public void HalfACharacterLosesNoDocument()
    {
        using var client = Client.InProcess(Shop.InMemory());
        client.Initialize();
        client.Open(Shop.PartA, Shop.Text(Shop.PartA));
        client.Diagnostics(Shop.PartA, 1);
        client.Send($$$"""{"jsonrpc":"2.0","method":"textDocument/didChange","params":{"textDocument":{"uri":"{{{Shop.PartA}}}","version":2},"contentChanges":[{"range":{"start":{"line":2,"character":11},"end":{"line":2,"character":11}},"text":"\ud83e"}]}}""");
        client.Diagnostics(Shop.PartA, 2);
        client.Edit(Shop.PartA, 3, (2, 11), (2, 12), "🥬");
        Assert.Empty(client.Diagnostics(Shop.PartA, 3));
        Assert.Equal(0, client.End());
    }

    [Theory]
    [InlineData("")]
    [InlineData("{")]
    [InlineData("{\"format\": 1, \"steps\": [{\"add\": \"")]
    [InlineData("null")]
    [InlineData("\u0000")]
    public void ADocumentOfAnyKindIsJudged(string text)
    {
        using var client = Client.InProcess(Shop.InMemory());
        client.Initialize();
        client.Open(Shop.PartA, text);
        Assert.NotEmpty(client.Diagnostics(Shop.PartA, 1));
        client.Replace(Shop.PartA, 2, new string('[', 200_000));
        Assert.NotEmpty(client.Diagnostics(Shop.PartA, 2));
        client.Replace(Shop.PartA, 3, new string(' ', 1_100_000));
        Assert.NotEmpty(client.Diagnostics(Shop.PartA, 3));
        Assert.Equal(0, client.End());
    }

    /// <summary>While a line is unfinished there is one finding, in that file; the recipe that doses the stock gets none.</summary>
    [Theory]
    [InlineData("\"amount\": \"130 g\"", "\"amount\": \"130")]
    [InlineData("\"amount\": \"130 g\"", "\"amount\": ")]
    [InlineData("\"amount\": \"130 g\"", "\"amou")]
    [InlineData("{ \"stir\": \"until clear\" },", "{ ")]
    [InlineData("{ \"stir\": \"until clear\" },", "{ \"add\": \"pota")]
    [InlineData("\"makes\": \"2 L\",", "\"makes\": ,")]
    public void AnUnfinishedLineIsOneFinding(string whole, string unfinished)
    {
        using var client = Client.InProcess(Shop.InMemory());
        client.Initialize();
        client.Open(Shop.Lettuce, Shop.Text(Shop.Lettuce));
        client.Open(Shop.PartA, Shop.Text(Shop.PartA));
        Assert.Empty(client.Diagnostics(Shop.Lettuce, 1));
        var text = Shop.Text(Shop.PartA);
        var at = text.IndexOf(whole, StringComparison.Ordinal);
        client.Replace(Shop.PartA, 2, text[..at] + unfinished + text[(at + whole.Length)..]);
        Assert.Single(client.Diagnostics(Shop.PartA, 2));
        client.Replace(Shop.Lettuce, 2, Shop.Text(Shop.Lettuce));
        Assert.Empty(client.Diagnostics(Shop.Lettuce, 2));
        Assert.Equal(0, client.End());
    }
}
