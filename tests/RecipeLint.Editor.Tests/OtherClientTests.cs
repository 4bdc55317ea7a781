using System.Collections.Concurrent;
using System.Diagnostics;
using System.Text.Json;
using RecipeLint.Reports.Tests.Support;
using StreamJsonRpc;

namespace RecipeLint.Editor.Tests;

/// <summary>
/// The same server driven by a client that nobody here wrote: StreamJsonRpc, the JSON-RPC library of the platform's own editors, with its
/// own framing, formatter and dispatch.
/// </summary>
public sealed class OtherClientTests
{
    private static readonly TimeSpan _patience = TimeSpan.FromSeconds(60);
    private static readonly string _shop = Path.Combine(Repository.Root, "examples", "quillmere");

    [Fact]
    public async Task AClientOfAnotherMakeIsServed()
    {
        var start = new ProcessStartInfo("dotnet") { WorkingDirectory = _shop, RedirectStandardInput = true, RedirectStandardOutput = true, UseShellExecute = false };
        start.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "recipelint.dll"));
        start.ArgumentList.Add("language-server");
        using var process = Process.Start(start)!;
        using var handler = new HeaderDelimitedMessageHandler(process.StandardInput.BaseStream, process.StandardOutput.BaseStream, new SystemTextJsonFormatter());
        using var rpc = new JsonRpc(handler);
        var published = new BlockingCollection<JsonElement>();
        rpc.AddLocalRpcMethod("textDocument/publishDiagnostics", (JsonElement uri, JsonElement version, JsonElement diagnostics) => published.Add(diagnostics.Clone()));
        rpc.StartListening();

        var started = await rpc.InvokeWithParameterObjectAsync<JsonElement>("initialize", new { processId = Environment.ProcessId, rootUri = (string?)null, capabilities = new { } }).WaitAsync(_patience);
        Assert.True(started.GetProperty("capabilities").GetProperty("hoverProvider").GetBoolean());
        await rpc.NotifyWithParameterObjectAsync("initialized", new { });

        var uri = new Uri(Path.Combine(_shop, "stocks", "part-a.stock.json")).AbsoluteUri;
        var text = await File.ReadAllTextAsync(Path.Combine(_shop, "stocks", "part-a.stock.json"));
        await rpc.NotifyWithParameterObjectAsync("textDocument/didOpen", new { textDocument = new { uri, languageId = "json", version = 1, text } });
        Assert.True(published.TryTake(out var clean, _patience));
        Assert.Equal(0, clean.GetArrayLength());

        await rpc.NotifyWithParameterObjectAsync(
            "textDocument/didChange",
            new { textDocument = new { uri, version = 2 }, contentChanges = new[] { new { text = text.Replace("potassium-nitrate", "potasium-nitrate", StringComparison.Ordinal) } } });
        Assert.True(published.TryTake(out var found, _patience));
        Assert.Contains("potasium-nitrate", Assert.Single(found.EnumerateArray()).GetProperty("message").GetString(), StringComparison.Ordinal);

        var before = text[..text.IndexOf("calcium-nitrate-fertiliser", StringComparison.Ordinal)].Split('\n');
        var position = new { line = before.Length - 1, character = before[^1].Length };
        var hover = await rpc.InvokeWithParameterObjectAsync<JsonElement>("textDocument/hover", new { textDocument = new { uri }, position }).WaitAsync(_patience);
        Assert.Equal("markdown", hover.GetProperty("contents").GetProperty("kind").GetString());
        var refused = await Assert.ThrowsAsync<RemoteMethodNotFoundException>(() => rpc.InvokeWithParameterObjectAsync<JsonElement>("textDocument/moon", new { }));
        Assert.NotNull(refused);
        await rpc.InvokeAsync<JsonElement?>("shutdown").WaitAsync(_patience);
        await rpc.NotifyAsync("exit");
        await process.WaitForExitAsync().WaitAsync(_patience);
        Assert.Equal(0, process.ExitCode);
    }
}
