using System.Buffers;
using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace RecipeLint.Editor.Protocol;

/// <summary>Puts messages onto a stream, each whole.</summary>
internal sealed class FrameWriter(Stream output)
{
    private readonly Lock _gate = new();

    /// <param name="id">The id as it stood in the request; null where none could be read.</param>
    public void Result(string id, JsonNode? result) => Write(json =>
    {
        Id(json, id);
        json.WritePropertyName("result");
        Node(json, result);
    });

    public void Error(string? id, int code, string message) => Write(json =>
    {
        Id(json, id);
        json.WriteStartObject("error");
        json.WriteNumber("code", code);
        json.WriteString("message", message);
        json.WriteEndObject();
    });

    public void Notification(string method, JsonNode parameters) => Write(json =>
    {
        json.WriteString("method", method);
        json.WritePropertyName("params");
        Node(json, parameters);
    });

    /// <summary>A request of the server's own; what is answered to it changes nothing here.</summary>
    public void Request(string id, string method, JsonNode parameters) => Write(json =>
    {
        json.WriteString("id", id);
        json.WriteString("method", method);
        json.WritePropertyName("params");
        Node(json, parameters);
    });

    private static void Id(Utf8JsonWriter json, string? id)
    {
        json.WritePropertyName("id");
        json.WriteRawValue(id ?? "null");
    }

    private static void Node(Utf8JsonWriter json, JsonNode? node)
    {
        if (node is null)
        {
            json.WriteNullValue();
        }
        else
        {
            node.WriteTo(json);
        }
    }

    private void Write(Action<Utf8JsonWriter> content)
    {
        var body = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(body))
        {
            json.WriteStartObject();
            json.WriteString("jsonrpc", "2.0");
            content(json);
            json.WriteEndObject();
        }

        lock (_gate)
        {
            var length = body.WrittenCount.ToString(CultureInfo.InvariantCulture);
            output.Write(Encoding.ASCII.GetBytes($"Content-Length: {length}\r\n\r\n"));
            output.Write(body.WrittenSpan);
            output.Flush();
        }
    }
}
