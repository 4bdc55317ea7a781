using System.Text;

namespace RecipeLint.Recipes.Json;

/// <summary>Undoes JSON escapes in text that the reader has already found well formed.</summary>
internal static class JsonText
{
    /// <summary>Length of an escape such as <c>\u00b5</c>.</summary>
    public const int UnicodeEscapeLength = 6;

    /// <param name="raw">Between the quotes, valid UTF-8.</param>
    /// <param name="loneSurrogates">Offsets in <paramref name="raw"/> of escapes that are half of a pair; each reads as U+FFFD.</param>
    public static string Unescape(ReadOnlySpan<byte> raw, List<int> loneSurrogates)
    {
        var text = new StringBuilder(raw.Length);
        var offset = 0;
        while (offset < raw.Length)
        {
            var run = raw[offset..].IndexOf((byte)'\\');
            if (run < 0)
            {
                run = raw.Length - offset;
            }

            text.Append(Encoding.UTF8.GetString(raw.Slice(offset, run)));
            offset += run;
            if (offset < raw.Length)
            {
                offset += AppendEscape(raw[offset..], offset, text, loneSurrogates);
            }
        }

        return text.ToString();
    }

    private static int AppendEscape(ReadOnlySpan<byte> escape, int offset, StringBuilder text, List<int> loneSurrogates)
    {
        if (escape[1] != 'u')
        {
            text.Append((char)escape[1] switch
            {
                'b' => '\b',
                'f' => '\f',
                'n' => '\n',
                'r' => '\r',
                't' => '\t',
                var same => same,
            });
            return 2;
        }

        var unit = Hex(escape);
        if (!char.IsSurrogate(unit))
        {
            text.Append(unit);
            return UnicodeEscapeLength;
        }

        var next = escape[UnicodeEscapeLength..];
        if (char.IsHighSurrogate(unit) && next is [(byte)'\\', (byte)'u', _, _, _, _, ..] && char.IsLowSurrogate(Hex(next)))
        {
            text.Append(unit).Append(Hex(next));
            return 2 * UnicodeEscapeLength;
        }

        loneSurrogates.Add(offset);
        text.Append('\uFFFD');
        return UnicodeEscapeLength;
    }

    private static char Hex(ReadOnlySpan<byte> escape)
    {
        var value = 0;
        foreach (var digit in escape[2..UnicodeEscapeLength])
        {
            value = (value << 4) | (char.IsAsciiDigit((char)digit) ? digit - '0' : (digit | 0x20) - 'a' + 10);
        }

        return (char)value;
    }
}
