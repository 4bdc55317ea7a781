using System.Text;
using System.Text.Json;
using RecipeLint.Editor.Protocol;

namespace RecipeLint.Editor.Documents;

/// <summary>A text as it stands in the editor.</summary>
/// <param name="uri">As the client spells it.</param>
/// <param name="path">Full, forward slashes.</param>
internal sealed class OpenDocument(string uri, string path, int version, string text)
{
    private byte[]? _bytes;

    public string Uri { get; } = uri;

    public string Path { get; } = path;

    public int Version { get; private set; } = version;

    public string Text { get; private set; } = text;

    /// <summary>As it would stand on the disk; the same array as long as the text is the same.</summary>
    public byte[] Bytes => _bytes ??= Encoding.UTF8.GetBytes(Text);

    /// <summary>A mark at the front of the text, which the files as read leave out.</summary>
    public bool StartsWithMark => Text.StartsWith('\uFEFF');

    /// <exception cref="RpcException">A change is none.</exception>
    public void Change(int version, IEnumerable<JsonElement> changes)
    {
        var text = Text;
        foreach (var change in changes)
        {
            var inserted = change.NeedText("text");
            text = change.Maybe("range") is { } range ? Replace(text, RangeOf(range), inserted) : inserted;
        }

        (Version, Text, _bytes) = (version, text, null);
    }

    /// <exception cref="RpcException">It is no range.</exception>
    public static TextRange RangeOf(JsonElement range) => new(PositionOf(range.Need("start")), PositionOf(range.Need("end")));

    /// <exception cref="RpcException">It is no position.</exception>
    public static TextPosition PositionOf(JsonElement position) => new(
        Math.Clamp(position.NeedInteger("line"), 0, FarthestPosition), Math.Clamp(position.NeedInteger("character"), 0, FarthestPosition));

    /// <summary>Past the end of any document that is read; sums of such positions do not overflow.</summary>
    private const int FarthestPosition = 1_000_000_000;

    private static string Replace(string text, TextRange range, string inserted)
    {
        var start = TextLines.OffsetOf(text, range.Start);
        var end = Math.Max(start, TextLines.OffsetOf(text, range.End));
        return string.Concat(text.AsSpan(0, start), inserted, text.AsSpan(end));
    }
}
