using System.Globalization;
using System.Text;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Json;

/// <summary>
/// The bytes for the second reader, with the same length and offsets: what it could not decode or compute with is replaced in a
/// copy, which is made only when there is something to replace.
/// </summary>
internal sealed class DecodableCopy(byte[] bytes)
{
    // Between these an ordinary literal is left alone; exact arithmetic on an exponent of millions would take for ever.
    private const double Largest = 1e15;
    private const double Smallest = 1e-15;
    private const int LongestLiteral = 40;
    private const int LongestWithoutExponent = 15;
    private static readonly byte[] _large = "9999999999999"u8.ToArray();

    private byte[]? _copy;

    public ReadOnlyMemory<byte> Bytes => _copy ?? bytes;

    /// <summary>Puts U+FFFD in the place of half a surrogate pair.</summary>
    public void ReplaceSurrogate(int offset) => Overwrite(offset, "\\uFFFD"u8, JsonText.UnicodeEscapeLength);

    /// <summary>Puts spaces in the place of a comment or a comma too many.</summary>
    public void Blank(ByteSpan span) => Overwrite(span.Start, [], span.Length);

    /// <summary>Puts a number of ordinary size in the place of one that is not; the sign and being huge or next to nothing stay.</summary>
    /// <returns>False when the literal is beyond the largest double.</returns>
    public bool TameNumber(int offset, string literal)
    {
        if (literal.Length <= LongestWithoutExponent && !literal.AsSpan().ContainsAny('e', 'E'))
        {
            return true;
        }

        var value = double.Parse(literal, NumberStyles.Float, CultureInfo.InvariantCulture);
        var size = Math.Abs(value);
        if (size < Smallest)
        {
            Overwrite(offset, "0"u8, literal.Length);
        }
        else if (size > Largest)
        {
            var sign = literal[0] == '-' ? 1 : 0;
            var start = offset + sign;
            var length = literal.Length - sign;
            Overwrite(start, _large.AsSpan(0, Math.Min(length, _large.Length)), length);
        }
        else if (literal.Length > LongestLiteral)
        {
            Overwrite(offset, Encoding.ASCII.GetBytes(value.ToString("0.###############", CultureInfo.InvariantCulture)), literal.Length);
        }

        return double.IsFinite(value);
    }

    /// <summary>Writes a replacement that is no longer than what it replaces and pads it with spaces.</summary>
    private void Overwrite(int offset, ReadOnlySpan<byte> replacement, int length)
    {
        _copy ??= [.. bytes];
        var place = _copy.AsSpan(offset, length);
        place.Fill((byte)' ');
        replacement.CopyTo(place);
    }
}
