using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.IO.Pipelines;
using System.Text;
using System.Text.Json.Nodes;
using RecipeLint.Recipes.Files;

namespace RecipeLint.Editor.Tests.Support;

/// <summary>
/// A client of the protocol written for the tests alone: it knows framing and JSON and nothing of the server's code. Every wait has an end.
/// </summary>
internal sealed class Client : IDisposable
{
    public static readonly TimeSpan Patience = TimeSpan.FromSeconds(120);

    private readonly Stream _toServer;
    private readonly Stream _fromServer;
    private readonly Func<int> _exitCode;
    private readonly Action _end;
    private readonly ConcurrentDictionary<string, BlockingCollection<JsonObject>> _answers = new();
    private readonly ConcurrentDictionary<string, JsonObject> _diagnostics = new();
    private readonly BlockingCollection<JsonObject> _notifications = [];
    private int _nextId;

    private Client(Stream toServer, Stream fromServer, Func<int> exitCode, Action end)
    {
        (_toServer, _fromServer, _exitCode, _end) = (toServer, fromServer, exitCode, end);
        new Thread(Listen) { IsBackground = true }.Start();
    }

    /// <summary>Errors that answer no request of ours.</summary>
    public BlockingCollection<JsonObject> Stray { get; } = [];

    /// <summary>The program as an editor starts it.</summary>
    public static Client OfProcess(string folder)
    {
        var start = new ProcessStartInfo("dotnet")
        {
            WorkingDirectory = folder,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
        };
        start.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "recipelint.dll"));
        start.ArgumentList.Add("language-server");
        var process = Process.Start(start)!;
        process.ErrorDataReceived += (_, _) => { };
        process.BeginErrorReadLine();
        return new Client(process.StandardInput.BaseStream, process.StandardOutput.BaseStream, ExitCode, End);

        int ExitCode()
        {
            Assert.True(process.WaitForExit(Patience), "the server does not end");
            return process.ExitCode;
        }

        void End()
        {
            if (!process.HasExited)
            {
                process.Kill();
            }

            process.Dispose();
        }
    }

    /// <summary>The server in this process, over pipes.</summary>
    public static Client InProcess(IFileTree files)
    {
        var toServer = new Pipe(new PipeOptions(pauseWriterThreshold: 0));
        var toClient = new Pipe(new PipeOptions(pauseWriterThreshold: 0));
        var run = Task.Factory.StartNew(
            () => LanguageServer.Run(toServer.Reader.AsStream(), toClient.Writer.AsStream(), files, new DateOnly(2026, 3, 1), "test"), TaskCreationOptions.LongRunning);
        return new Client(toServer.Writer.AsStream(), toClient.Reader.AsStream(), ExitCode, () => { });

        int ExitCode()
        {
            Assert.True(run.Wait(Patience), "the server does not end");
            return run.Result;
        }
    }

    public JsonObject Initialize() => Request("initialize", new JsonObject { ["processId"] = null, ["rootUri"] = null, ["capabilities"] = new JsonObject() });

    public void Send(string body) => SendBytes(Encoding.UTF8.GetBytes(body));

    public void SendBytes(byte[] body)
    {
        SendRaw(Encoding.ASCII.GetBytes(string.Create(CultureInfo.InvariantCulture, $"Content-Length: {body.Length}\r\n\r\n")));
        SendRaw(body);
    }

    public void SendRaw(byte[] bytes)
    {
        _toServer.Write(bytes);
        _toServer.Flush();
    }

    public void Notify(string method, JsonNode parameters) =>
        Send(new JsonObject { ["jsonrpc"] = "2.0", ["method"] = method, ["params"] = parameters }.ToJsonString());

    /// <summary>Sends a request and returns its id without waiting.</summary>
    public string Begin(string method, JsonNode? parameters)
    {
        var id = Interlocked.Increment(ref _nextId).ToString(CultureInfo.InvariantCulture);
        _answers[id] = new BlockingCollection<JsonObject>();
        var message = new JsonObject { ["jsonrpc"] = "2.0", ["id"] = int.Parse(id, CultureInfo.InvariantCulture), ["method"] = method };
        if (parameters is not null)
        {
            message["params"] = parameters;
        }

        Send(message.ToJsonString());
        return id;
    }

    /// <summary>The whole answer, result or error.</summary>
    public JsonObject Wait(string id)
    {
        Assert.True(_answers[id].TryTake(out var answer, Patience), $"no answer to request {id}");
        return answer!;
    }

    public JsonObject Request(string method, JsonNode? parameters)
    {
        var answer = Wait(Begin(method, parameters));
        Assert.False(answer.ContainsKey("error"), answer.ToJsonString());
        return answer;
    }

    public JsonNode? Result(string method, JsonNode? parameters) => Request(method, parameters)["result"];

    public void Open(string uri, string text, int version = 1) => Notify("textDocument/didOpen", new JsonObject
    {
        ["textDocument"] = new JsonObject { ["uri"] = uri, ["languageId"] = "json", ["version"] = version, ["text"] = text },
    });

    public void Replace(string uri, int version, string text) => Notify("textDocument/didChange", new JsonObject
    {
        ["textDocument"] = new JsonObject { ["uri"] = uri, ["version"] = version },
        ["contentChanges"] = new JsonArray(new JsonObject { ["text"] = text }),
    });

    public void Edit(string uri, int version, (int Line, int Character) from, (int Line, int Character) to, string text) => Notify("textDocument/didChange", new JsonObject
    {
        ["textDocument"] = new JsonObject { ["uri"] = uri, ["version"] = version },
        ["contentChanges"] = new JsonArray(new JsonObject { ["range"] = Range(from, to), ["text"] = text }),
    });

    public static JsonObject Range((int Line, int Character) from, (int Line, int Character) to) => new() { ["start"] = Position(from), ["end"] = Position(to) };

    public static JsonObject Position((int Line, int Character) at) => new() { ["line"] = at.Line, ["character"] = at.Character };

    public static JsonObject At(string uri, (int Line, int Character) at) =>
        new() { ["textDocument"] = new JsonObject { ["uri"] = uri }, ["position"] = Position(at) };

    /// <summary>Diagnostics of a version of a document, as soon as they are there.</summary>
    public IReadOnlyList<JsonObject> Diagnostics(string uri, int version)
    {
        var watch = Stopwatch.StartNew();
        while (watch.Elapsed < Patience)
        {
            if (_diagnostics.TryGetValue(uri, out var said) && said["version"]?.GetValue<int>() == version)
            {
                return [.. said["diagnostics"]!.AsArray().Select(d => d!.AsObject())];
            }

            _notifications.TryTake(out _, 20);
        }

        throw new TimeoutException($"no diagnostics of version {version} of {uri}");
    }

    /// <summary>Shuts down, exits and gives the exit code.</summary>
    public int End()
    {
        Request("shutdown", null);
        Notify("exit", new JsonObject());
        return _exitCode();
    }

    public int ExitCode() => _exitCode();

    /// <summary>Closes the way to the server, as a client that dies does.</summary>
    public void HangUp() => _toServer.Dispose();

    public void Dispose()
    {
        _end();
        _toServer.Dispose();
        _fromServer.Dispose();
    }

    private void Listen()
    {
        try
        {
            while (Next() is { } message)
            {
                Take(JsonNode.Parse(message)!.AsObject());
            }
        }
        catch (Exception e) when (e is IOException or ObjectDisposedException)
        {
            _notifications.Add([]);
        }
    }

    private void Take(JsonObject message)
    {
        if (message["method"]?.GetValue<string>() is { } method)
        {
            if (method == "textDocument/publishDiagnostics")
            {
                _diagnostics[message["params"]!["uri"]!.GetValue<string>()] = message["params"]!.AsObject();
            }

            _notifications.Add(message);
        }
        else if (message["id"]?.ToJsonString() is { } id && _answers.TryGetValue(id, out var waiting))
        {
            waiting.Add(message);
        }
        else
        {
            Stray.Add(message);
        }
    }

    private byte[]? Next()
    {
        var length = 0;
        while (true)
        {
            var line = new StringBuilder();
            int read;
            while ((read = _fromServer.ReadByte()) is not (-1 or '\n'))
            {
                line.Append((char)read);
            }

            if (read == -1)
            {
                return null;
            }

            var text = line.ToString().TrimEnd('\r');
            if (text.Length == 0)
            {
                var body = new byte[length];
                _fromServer.ReadExactly(body);
                return body;
            }

            if (text.StartsWith("Content-Length: ", StringComparison.Ordinal))
            {
                length = int.Parse(text["Content-Length: ".Length..], CultureInfo.InvariantCulture);
            }
        }
    }
}
