using RecipeLint.Recipes.Json;

namespace RecipeLint.Recipes.Patching;

/// <summary>What stands between two values: blanks, commas and comments.</summary>
internal static class JsonGap
{
    /// <summary>
    /// The offset of the first byte from here on that is neither a blank nor part of a comment; the end of the file where there is none.
    /// </summary>
    public static int Skip(ReadOnlySpan<byte> bytes, int offset)
    {
        while (offset < bytes.Length)
        {
            var rest = bytes[offset..];
            if (rest[0] is (byte)' ' or (byte)'\t' or (byte)'\r' or (byte)'\n')
            {
                offset++;
            }
            else if (rest.StartsWith("//"u8))
            {
                var end = rest.IndexOfAny((byte)'\n', (byte)'\r');
                offset = end < 0 ? bytes.Length : offset + end;
            }
            else if (rest.StartsWith("/*"u8))
            {
                var end = rest[2..].IndexOf("*/"u8);
                offset = end < 0 ? bytes.Length : offset + 2 + end + 2;
            }
            else
            {
                return offset;
            }
        }

        return bytes.Length;
    }

    public static int SkipBlanks(ReadOnlySpan<byte> bytes, int offset)
    {
        while (offset < bytes.Length && bytes[offset] is (byte)' ' or (byte)'\t' or (byte)'\r' or (byte)'\n')
        {
            offset++;
        }

        return offset;
    }

    /// <summary>The comma before an offset; null when a bracket stands there.</summary>
    public static int? CommaBefore(SourceFile source, int offset)
    {
        // Comments are blank in there, so that nothing inside them looks like a comma.
        var bytes = source.DecodableBytes.Span;
        var at = JsonLayout.GapStart(bytes, offset) - 1;
        return at >= 0 && bytes[at] == (byte)',' ? at : null;
    }

    public static bool IsBlank(ReadOnlySpan<byte> bytes) => bytes.Trim(" \t\r\n"u8).IsEmpty;
}
