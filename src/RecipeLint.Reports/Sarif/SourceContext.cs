using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Reports;

/// <summary>The whole lines around a span.</summary>
internal static class SourceContext
{
    /// <summary>Longer contexts are cut, so that a file on one line is not repeated by each of its findings.</summary>
    public const int MaxBytes = 2000;

    private const int Margin = 200;

    /// <summary>
    /// The lines of the span with one more on either side, without the last line end; of very long lines the neighbourhood; null when there
    /// is nothing beside the span.
    /// </summary>
    public static ByteSpan? Around(SourceFile source, ByteSpan span)
    {
        var bytes = source.Bytes;
        var start = LineStart(bytes, span.Start);
        var end = LineEnd(bytes, span.End);
        if (end - start > MaxBytes)
        {
            start = Math.Max(start, OnBoundary(bytes, span.Start - Margin));
            end = Math.Min(end, OnBoundary(bytes, span.End + Margin));
            return end - start > span.Length && end - start <= MaxBytes ? new ByteSpan(start, end - start) : null;
        }

        var wideStart = start == 0 ? start : LineStart(bytes, BeforeBreak(bytes, start));
        var wideEnd = end == bytes.Length ? end : LineEnd(bytes, AfterBreak(bytes, end));
        if (wideEnd - wideStart <= MaxBytes)
        {
            (start, end) = (wideStart, wideEnd);
        }

        return end - start > span.Length ? new ByteSpan(start, end - start) : null;
    }

    /// <summary>The nearest start of a character at or before an offset.</summary>
    private static int OnBoundary(ReadOnlySpan<byte> bytes, int at)
    {
        at = Math.Clamp(at, 0, bytes.Length);
        while (at > 0 && at < bytes.Length && (bytes[at] & 0xC0) == 0x80)
        {
            at--;
        }

        return at;
    }

    private static int LineStart(ReadOnlySpan<byte> bytes, int at) => bytes[..at].LastIndexOfAny((byte)'\n', (byte)'\r') + 1;

    private static int LineEnd(ReadOnlySpan<byte> bytes, int at)
    {
        var length = bytes[at..].IndexOfAny((byte)'\n', (byte)'\r');
        return length < 0 ? bytes.Length : at + length;
    }

    private static int BeforeBreak(ReadOnlySpan<byte> bytes, int lineStart) =>
        lineStart > 1 && bytes[lineStart - 1] == '\n' && bytes[lineStart - 2] == '\r' ? lineStart - 2 : lineStart - 1;

    private static int AfterBreak(ReadOnlySpan<byte> bytes, int lineEnd) =>
        bytes[lineEnd] == '\r' && lineEnd + 1 < bytes.Length && bytes[lineEnd + 1] == '\n' ? lineEnd + 2 : lineEnd + 1;
}
