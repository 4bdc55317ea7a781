using System.Text.Json;
using System.Text.Unicode;

namespace RecipeLint.Editor.Protocol;

/// <summary>A message of the other side: a request with an id, a notification without one, or an answer, which has no method.</summary>
/// <param name="Id">As it stands in the message; null for a notification.</param>
internal sealed record RpcMessage(string? Id, string? Method, JsonElement Params)
{
    private static readonly JsonDocumentOptions _options = new() { MaxDepth = 64 };

    /// <exception cref="RpcException">The bytes are no JSON, or no message.</exception>
    public static RpcMessage Read(byte[] body)
    {
        // Asked first: the library finds out only when a text is taken, with an exception that is none of its own.
        if (!Utf8.IsValid(body))
        {
            throw new RpcException(RpcCodes.ParseError, "This message is not written in UTF-8.");
        }

        JsonElement root;
        try
        {
            using var document = JsonDocument.Parse(body, _options);
            root = document.RootElement.Clone();
        }
        catch (JsonException e)
        {
            throw new RpcException(RpcCodes.ParseError, "This message is no JSON: " + e.Message);
        }

        if (root.ValueKind != JsonValueKind.Object)
        {
            throw new RpcException(RpcCodes.InvalidRequest, "A message is an object; lists of messages are not taken.");
        }

        var id = root.Member("id") ?? default;
        if (id.ValueKind is not (JsonValueKind.Undefined or JsonValueKind.Number or JsonValueKind.String or JsonValueKind.Null))
        {
            throw new RpcException(RpcCodes.InvalidRequest, "The id of a request is a number or a text.");
        }

        var method = root.Member("method") is { ValueKind: JsonValueKind.String } name ? name.AnyText() : null;
        if (method is null && root.Member("result") is null && root.Member("error") is null)
        {
            throw new RpcException(RpcCodes.InvalidRequest, "The message names no method.");
        }

        return new RpcMessage(
            id.ValueKind is JsonValueKind.Undefined or JsonValueKind.Null ? null : id.GetRawText(),
            method,
            root.Member("params") ?? default);
    }
}
