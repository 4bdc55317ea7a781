using System.Text.Json.Nodes;

namespace RecipeLint.Editor.Features;

/// <summary>What the server says it can do.</summary>
internal static class Capabilities
{
    /// <summary>Files whose change on the disk may change a verdict.</summary>
    private static readonly string[] _watched = ["**/*.{stock,recipe,water,substances,profile,rule}.json", "**/recipelint.json"];

    public static JsonObject OfServer() => new()
    {
        ["positionEncoding"] = "utf-16",
        ["textDocumentSync"] = new JsonObject { ["openClose"] = true, ["change"] = 2, ["save"] = true },
        ["hoverProvider"] = true,
        ["completionProvider"] = new JsonObject { ["triggerCharacters"] = new JsonArray("\"", " ") },
        ["definitionProvider"] = true,
        ["referencesProvider"] = true,
        ["renameProvider"] = new JsonObject { ["prepareProvider"] = true },
        ["codeActionProvider"] = new JsonObject { ["codeActionKinds"] = new JsonArray("quickfix") },
        ["inlayHintProvider"] = true,
        ["documentSymbolProvider"] = true,
        ["codeLensProvider"] = new JsonObject { ["resolveProvider"] = false },
    };

    public static JsonObject Watching() => new()
    {
        ["registrations"] = new JsonArray(new JsonObject
        {
            ["id"] = "recipelint-files",
            ["method"] = "workspace/didChangeWatchedFiles",
            ["registerOptions"] = new JsonObject { ["watchers"] = Lsp.Array(_watched.Select(g => new JsonObject { ["globPattern"] = g })) },
        }),
    };
}
