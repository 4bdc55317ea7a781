using System.Text.Json;
using System.Text.Json.Nodes;
using RecipeLint.Editor.Documents;
using RecipeLint.Editor.Features;
using RecipeLint.Editor.Protocol;
using RecipeLint.Editor.Sessions;
using RecipeLint.Recipes.Files;
using RecipeLint.Reports.ComputedFacts;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Editor;

/// <summary>
/// RecipeLint behind an editor: the Language Server Protocol 3.17 over two streams. Documents are judged while they are typed, by the
/// loader,
/// the analyser and the rules of every other command. Nothing a document or a message holds ends it.
/// </summary>
public static class LanguageServer
{
    /// <summary>Serves until the client says so or is gone.</summary>
    /// <param name="files">The disk.</param>
    /// <param name="today">The day suppressions are held against.</param>
    /// <param name="version">Of the program.</param>
    /// <returns>0 when the client has shut the server down before it ended it, else 1, as the protocol wants.</returns>
    public static int Run(Stream input, Stream output, IFileTree files, DateOnly today, string version)
    {
        var writer = new FrameWriter(output);
        var server = new Server(writer, files, StandardEngine.On(today), version);
        try
        {
            new RpcHost(input, writer, server).Run();
        }
        catch (IOException)
        {
            // The client has closed its end: there is nobody left to serve.
            return 1;
        }

        return server.EndedInOrder ? 0 : 1;
    }
}

/// <summary>One session with a client.</summary>
internal sealed class Server : IRpcTarget
{
    private enum Phase
    {
        New,
        Running,
        ShutDown,
    }

    private readonly FrameWriter _output;
    private readonly string _version;
    private readonly DocumentStore _documents;
    private readonly Desk _desk;
    private readonly Dictionary<string, string> _published = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Func<JsonElement, CancellationToken, JsonNode?>> _requests;
    private readonly List<string> _dirty = [];
    private Phase _phase = Phase.New;
    private bool _watches;

    public Server(FrameWriter output, IFileTree files, EngineOptions engine, string version)
    {
        _output = output;
        _version = version;
        _documents = new DocumentStore(files);
        _desk = new Desk(_documents, engine);
        _requests = new(StringComparer.Ordinal)
        {
            ["textDocument/hover"] = (p, _) => At(p, Hover.Of),
            ["textDocument/definition"] = (p, _) => At(p, Navigation.Definition),
            ["textDocument/references"] = (p, _) =>
                At(p, (v, o) => Navigation.References(v, _desk, o,
                    p.Maybe("context")?.Maybe("includeDeclaration") is { ValueKind: JsonValueKind.True })),
            ["textDocument/prepareRename"] = (p, _) => At(p, Navigation.PrepareRename),
            ["textDocument/rename"] = (p, _) => At(p, (v, o) => Navigation.Rename(v, _desk, o, p.NeedText("newName"))),
            ["textDocument/completion"] = (p, _) => In(p, (v, d) => Completion.Of(v, d.Text, TextLines.OffsetOf(d.Text, PositionOf(p)))),
            ["textDocument/codeAction"] = (p, c) => In(p, (v, _) => CodeActions.Of(v, _desk, OpenDocument.RangeOf(p.Need("range")), c)),
            ["textDocument/inlayHint"] = (p, _) => In(p, (v, _) => InlayHints.Of(v, OpenDocument.RangeOf(p.Need("range")))),
            ["textDocument/documentSymbol"] = (p, _) => In(p, (v, _) => Outline.Symbols(v)),
            ["textDocument/codeLens"] = (p, _) => In(p, (v, _) => Outline.Lenses(v)),
        };
    }

    public bool HasEnded { get; private set; }

    /// <summary>Shut down before it was ended.</summary>
    public bool EndedInOrder => HasEnded && _phase == Phase.ShutDown;

    public JsonNode? Answer(string method, JsonElement parameters, CancellationToken cancelled)
    {
        switch (_phase, method)
        {
            case (Phase.New, "initialize"):
                _phase = Phase.Running;
                return Initialize(parameters);
            case (Phase.New, _):
                throw new RpcException(RpcCodes.ServerNotInitialized, "The first request is 'initialize'.");
            case (Phase.ShutDown, _):
                throw new RpcException(RpcCodes.InvalidRequest, "The server was shut down; only 'exit' may follow.");
            case (_, "initialize"):
                throw new RpcException(RpcCodes.InvalidRequest, "The server is initialized already.");
            case (_, "shutdown"):
                _phase = Phase.ShutDown;
                return null;
        }

        return _requests.TryGetValue(method, out var answer)
            ? answer(parameters, cancelled)
            : throw new RpcException(RpcCodes.MethodNotFound, $"There is no method '{method}'.");
    }

    public void Hear(string method, JsonElement parameters)
    {
        switch (method)
        {
            case "exit":
                HasEnded = true;
                break;
            case "initialized" when _watches:
                _output.Request("\"watch\"", "client/registerCapability", Capabilities.Watching());
                break;
            case "textDocument/didOpen":
                Open(parameters.Need("textDocument"));
                break;
            case "textDocument/didChange":
                Change(parameters);
                break;
            case "textDocument/didClose":
                Close(parameters.Need("textDocument").NeedText("uri"));
                break;
            case "textDocument/didSave" or "workspace/didChangeWatchedFiles":
                _desk.TouchDisk();
                Judge();
                break;
        }
    }

    public void Rest(CancellationToken interrupted)
    {
        while (_dirty.Count > 0)
        {
            interrupted.ThrowIfCancellationRequested();
            var path = _dirty[^1];
            if (_documents.At(path) is { } document)
            {
                Publish(document, _desk.ViewOf(path) is { } view ? Diagnostics.Of(view) : []);
            }

            _dirty.RemoveAt(_dirty.Count - 1);
        }
    }

    public void Report(Exception fault)
    {
        var what = fault is RpcException ? fault.Message : RpcException.Words(fault);
        var type = fault is RpcException ? 2 : 1;
        _output.Notification("window/logMessage", new JsonObject { ["type"] = type, ["message"] = "recipelint: " + what });
        if (fault is not RpcException)
        {
            // The document at whose judgement it happened waits for its next change.
            _dirty.Clear();
        }
    }

    /// <summary>Answers for a point of an open document; null for a document that is not open or is none of ours.</summary>
    private JsonNode? At(JsonElement parameters, Func<View, int, JsonNode?> answer) =>
        In(parameters, (view, _) => answer(view, view.OffsetOf(PositionOf(parameters))));

    private JsonNode? In(JsonElement parameters, Func<View, OpenDocument, JsonNode?> answer)
    {
        var uri = parameters.Need("textDocument").NeedText("uri");
        return _documents.Find(uri) is { } document && _desk.ViewOf(document.Path) is { } view ? answer(view, document) : null;
    }

    private static TextPosition PositionOf(JsonElement parameters) => OpenDocument.PositionOf(parameters.Need("position"));

    private JsonObject Initialize(JsonElement parameters)
    {
        var watched = parameters.Maybe("capabilities")?.Maybe("workspace")?.Maybe("didChangeWatchedFiles")?.Maybe("dynamicRegistration");
        _watches = watched is { ValueKind: JsonValueKind.True };
        return new JsonObject
        {
            ["capabilities"] = Capabilities.OfServer(),
            ["serverInfo"] = new JsonObject { ["name"] = Diagnostics.Source, ["version"] = _version },
        };
    }

    private void Open(JsonElement opened)
    {
        var (uri, version, text) = (opened.NeedText("uri"), opened.NeedInteger("version"), opened.NeedText("text"));
        if (_documents.Add(uri, version, text) is null)
        {
            return;
        }

        _desk.TouchDisk();
        Judge(uri);
    }

    private void Change(JsonElement parameters)
    {
        var changed = parameters.Need("textDocument");
        if (_documents.Find(changed.NeedText("uri")) is not { } document)
        {
            return;
        }

        document.Change(changed.NeedInteger("version"), parameters.Items("contentChanges"));
        _documents.Changed();
        _desk.Touch();
        Judge(document.Uri);
    }

    private void Close(string uri)
    {
        if (_documents.Find(uri) is not { } document)
        {
            return;
        }

        _documents.Remove(document);
        _desk.TouchDisk();
        Judge();
        if (_published.Remove(document.Path))
        {
            var nothing = new JsonObject { ["uri"] = document.Uri, ["diagnostics"] = new JsonArray() };
            _output.Notification("textDocument/publishDiagnostics", nothing);
        }
    }

    /// <summary>All open documents are due; the one that has just changed first.</summary>
    private void Judge(string? first = null)
    {
        _dirty.Clear();
        _dirty.AddRange(_documents.Open.Where(d => d.Uri != first).Select(d => d.Path).Reverse());
        if (first is not null && _documents.Find(first) is { } document)
        {
            _dirty.Add(document.Path);
        }
    }

    /// <summary>Says what was found, unless it is what was said before of the same version.</summary>
    private void Publish(OpenDocument document, JsonArray diagnostics)
    {
        var said = new JsonObject { ["uri"] = document.Uri, ["version"] = document.Version, ["diagnostics"] = diagnostics };
        var text = said.ToJsonString();
        if (_published.GetValueOrDefault(document.Path) != text)
        {
            _published[document.Path] = text;
            _output.Notification("textDocument/publishDiagnostics", said);
        }
    }
}
