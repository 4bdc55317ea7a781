using System.Globalization;
using System.Text;

namespace RecipeLint.Editor.Protocol;

/// <summary>One message as it came in; without a body it says what is wrong with it, or that nothing more will come.</summary>
internal readonly record struct Frame(byte[]? Body, string? Fault)
{
    public bool IsEnd => Body is null && Fault is null;
}

/// <summary>Takes messages from a stream: header lines, an empty line, then as many bytes as Content-Length says.</summary>
#pragma warning disable CA1001 // The stream is the process's own and is closed with it.
internal sealed class FrameReader(Stream input)
#pragma warning restore CA1001
{
    /// <summary>In bytes. The files that are read have a megabyte at most; an edit of one is far smaller.</summary>
    public const int LargestBody = 32 * 1024 * 1024;

    private const int LargestHeader = 8 * 1024;
    private readonly Stream _input = new BufferedStream(input, 64 * 1024);

    /// <summary>The next message. What cannot be understood is a fault, and the message after it is read again.</summary>
    public Frame Next()
    {
        long? length = null;
        while (true)
        {
            switch (Line())
            {
                case null:
                    return default;
                case { Length: > LargestHeader }:
                    return new Frame(null, "A header line is too long.");
                case "" when length is null:
                    return new Frame(null, "The header has no usable Content-Length.");
                case "":
                    return Body(length.Value);
                case var line when line.StartsWith("Content-Length:", StringComparison.OrdinalIgnoreCase):
                    length = Number(line["Content-Length:".Length..].Trim());
                    break;
            }
        }
    }

    private static long? Number(string text) =>
        long.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var stated) ? stated : null;

    private Frame Body(long length)
    {
        if (length > LargestBody)
        {
            return Skip(length) ? new Frame(null, $"A message has {length} bytes; {LargestBody} are taken.") : default;
        }

        var body = new byte[length];
        return _input.ReadAtLeast(body, body.Length, throwOnEndOfStream: false) == body.Length ? new Frame(body, null) : default;
    }

    private bool Skip(long length)
    {
        var chunk = new byte[64 * 1024];
        while (length > 0)
        {
            var count = _input.Read(chunk, 0, (int)Math.Min(chunk.Length, length));
            if (count == 0)
            {
                return false;
            }

            length -= count;
        }

        return true;
    }

    /// <summary>
    /// A header line without its end; null at the end of the stream. Of a line that is too long only the beginning is kept.
    /// </summary>
    private string? Line()
    {
        var line = new StringBuilder();
        while (true)
        {
            switch (_input.ReadByte())
            {
                case -1:
                    return null;
                case '\n':
                    return line.ToString();
                case '\r':
                    break;
                case var other when line.Length <= LargestHeader:
                    line.Append((char)other);
                    break;
            }
        }
    }
}
