using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using RecipeLint.Editor;

namespace RecipeLint.Fuzz;

/// <summary>
/// A session of an editor over files in memory: documents opened, edited at random and asked about, some messages broken. Every request is
/// answered once, no answer is an internal fault, and the server ends in order.
/// </summary>
internal static class EditorRun
{
    private static readonly string[] _asked =
    [
        "hover", "definition", "references", "prepareRename", "rename", "completion", "codeAction", "inlayHint", "documentSymbol", "codeLens",
    ];

    public static Execution Of(Random random, FuzzShop shop)
    {
        var files = ShopMutator.Mutate(random, shop);
        var messages = Session(random, [.. files]);
        return new Execution(() => ProgramRun.Shown(files, []) + string.Join('\n', messages), () => Run(files, messages));
    }

    private static List<string> Session(Random random, KeyValuePair<string, byte[]>[] files)
    {
        var file = files.Length == 0 ? new("gone.stock.json", "{}"u8.ToArray()) : Words.Pick(random, files);
        var uri = "file:///shop/" + Uri.EscapeDataString(file.Key).Replace("%2F", "/", StringComparison.Ordinal);
        var text = new StringBuilder(Encoding.UTF8.GetString(file.Value));
        var messages = new List<string>
        {
            Message("initialize", new JsonObject { ["rootUri"] = "file:///shop", ["capabilities"] = new JsonObject() }, 1),
            Message("initialized", []),
            Message("textDocument/didOpen", new JsonObject { ["textDocument"] = new JsonObject { ["uri"] = uri, ["languageId"] = "json", ["version"] = 1, ["text"] = text.ToString() } }),
        };
        var id = 1;
        for (var left = random.Next(2, 12); left > 0; left--)
        {
            messages.Add(random.Next(12) switch
            {
                0 => Words.Text(random, Words.Pieces, Words.Numbers),
                1 => Message(Words.Pick(random, "textDocument/hover", "textDocument/didChange", "nothing/atAll"), new JsonObject { ["textDocument"] = Words.Pick(random, Words.Numbers) }, ++id),
                < 6 => Edit(random, uri, messages.Count),
                _ => Request(random, uri, ++id),
            });
        }

        messages.Add(Message("shutdown", [], ++id));
        messages.Add(Message("exit", []));
        return messages;
    }

    private static string Edit(Random random, string uri, int version)
    {
        var change = new JsonObject { ["text"] = Words.Text(random, Words.Pieces, Words.Numbers, Words.Units) };
        if (random.Next(8) > 0)
        {
            change["range"] = new JsonObject { ["start"] = Position(random), ["end"] = Position(random) };
        }

        return Message("textDocument/didChange", new JsonObject { ["textDocument"] = new JsonObject { ["uri"] = uri, ["version"] = version }, ["contentChanges"] = new JsonArray(change) });
    }

    private static string Request(Random random, string uri, int id)
    {
        var method = Words.Pick(random, _asked);
        return Message(
            "textDocument/" + method,
            new JsonObject
            {
                ["textDocument"] = new JsonObject { ["uri"] = uri },
                ["position"] = Position(random),
                ["range"] = new JsonObject { ["start"] = Position(random), ["end"] = Position(random) },
                ["newName"] = Words.Text(random, Words.Pieces, Words.Units),
                ["context"] = new JsonObject { ["includeDeclaration"] = random.Next(2) == 0, ["diagnostics"] = new JsonArray() },
            },
            id);
    }

    private static JsonObject Position(Random random) => new()
    {
        ["line"] = random.Next(10) == 0 ? Words.Pick(random, -1, 100_000, int.MaxValue) : random.Next(0, 30),
        ["character"] = random.Next(10) == 0 ? Words.Pick(random, -1, 100_000, int.MaxValue) : random.Next(0, 60),
    };

    private static string Message(string method, JsonObject parameters, int? id = null)
    {
        var message = new JsonObject { ["jsonrpc"] = "2.0", ["method"] = method, ["params"] = parameters };
        if (id is { } number)
        {
            message["id"] = number;
        }

        return message.ToJsonString();
    }

    private static void Run(Dictionary<string, byte[]> files, List<string> messages)
    {
        using var input = new MemoryStream();
        foreach (var message in messages)
        {
            var bytes = Encoding.UTF8.GetBytes(message);
            input.Write(Encoding.ASCII.GetBytes(string.Create(CultureInfo.InvariantCulture, $"Content-Length: {bytes.Length}\r\n\r\n")));
            input.Write(bytes);
        }

        input.Position = 0;
        using var output = new MemoryStream();
        var code = LanguageServer.Run(input, output, ProgramRun.Tree(files), new DateOnly(2026, 3, 1), "0");
        var answers = Frames(output.ToArray());
        foreach (var said in answers)
        {
            if (said["error"]?["code"]?.GetValue<int>() == -32603 || (said["method"]?.GetValue<string>() == "window/logMessage" && said["params"]!["type"]!.GetValue<int>() == 1))
            {
                throw new BrokenPromiseException("the editor: " + said.ToJsonString());
            }
        }

        var asked = messages.Select(Id).OfType<int>().Order().ToList();
        var answered = answers.Where(a => a["method"] is null && a["id"] is JsonValue).Select(a => a["id"]!.GetValue<int>()).Order().ToList();
        if (code != 0 || !asked.SequenceEqual(answered))
        {
            throw new BrokenPromiseException($"the editor: exit code {code}, asked {string.Join(' ', asked)}, answered {string.Join(' ', answered)}");
        }
    }

    private static int? Id(string message)
    {
        try
        {
            return JsonNode.Parse(Encoding.UTF8.GetBytes(message)) is JsonObject asked && asked["method"] is not null ? asked["id"]?.GetValue<int>() : null;
        }
        catch (Exception e) when (e is JsonException or ArgumentException or InvalidOperationException)
        {
            return null;
        }
    }

    private static List<JsonNode> Frames(byte[] bytes)
    {
        var frames = new List<JsonNode>();
        var rest = bytes.AsSpan();
        while (rest.Length > 0)
        {
            var head = rest.IndexOf("\r\n\r\n"u8);
            var length = int.Parse(Encoding.ASCII.GetString(rest["Content-Length: ".Length..rest.IndexOf("\r\n"u8)]), CultureInfo.InvariantCulture);
            frames.Add(JsonNode.Parse(rest.Slice(head + 4, length))!);
            rest = rest[(head + 4 + length)..];
        }

        return frames;
    }
}
