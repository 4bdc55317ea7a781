using System.Globalization;
using System.Text;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Json;

/// <summary>The part of <see cref="MalformedJson"/> that looks inside one text, number, word or comment.</summary>
internal sealed class MalformedLexeme(SourceFile source)
{
    private ReadOnlySpan<byte> Bytes => source.Bytes;

    /// <summary>The character at an offset, all its bytes.</summary>
    public ByteSpan Character(int offset)
    {
        if (offset >= Bytes.Length)
        {
            return new ByteSpan(Bytes.Length, 0);
        }

        Rune.DecodeFromUtf8(Bytes[offset..], out _, out var length);
        return new ByteSpan(offset, Math.Max(1, length));
    }

    public bool IsWordStart(int offset) =>
        offset < Bytes.Length && RuneAt(offset) is var rune && (Rune.IsLetter(rune) || rune.Value is '_' or '$');

    /// <summary>Whether what follows a bare number looks like a unit.</summary>
    public bool IsUnitStart(int offset)
    {
        if (offset >= Bytes.Length || source.Excerpt(Word(offset)) is "true" or "false" or "null")
        {
            return false;
        }

        var rune = RuneAt(offset);
        return Rune.IsLetter(rune) || rune.Value is '%' or '°' or '‰' or '±';
    }

    /// <summary>Letters, digits and what people put in bare keys; at least one character.</summary>
    public ByteSpan Word(int offset)
    {
        var end = Character(offset).End;
        while (end < Bytes.Length)
        {
            var rune = RuneAt(end);
            if (!Rune.IsLetterOrDigit(rune) && rune.Value is not ('_' or '$' or '-'))
            {
                break;
            }

            end = Character(end).End;
        }

        return new ByteSpan(offset, end - offset);
    }

    /// <summary>Length of the JSON number that starts here; 0 when none does (RFC 8259 section 6).</summary>
    public int NumberLength(int offset)
    {
        var start = offset;
        offset += At(offset) == '-' ? 1 : 0;
        var digits = Digits(offset);
        if (digits == 0 || (digits > 1 && At(offset) == '0'))
        {
            return 0;
        }

        offset += digits;
        if (At(offset) == '.')
        {
            digits = Digits(offset + 1);
            if (digits == 0)
            {
                return 0;
            }

            offset += 1 + digits;
        }

        if (At(offset) is 'e' or 'E')
        {
            var sign = At(offset + 1) is '+' or '-' ? 1 : 0;
            digits = Digits(offset + 1 + sign);
            if (digits > 0)
            {
                offset += 1 + sign + digits;
            }
        }

        return At(offset) switch
        {
            '.' or '+' or '-' => 0,
            'e' or 'E' when !char.IsAsciiLetter(At(offset + 1)) => 0,
            _ => offset - start,
        };
    }

    /// <summary>A number and a unit without quotes around them.</summary>
    public MalformedCause BareQuantity(int start, int unit)
    {
        var end = unit;
        while (end < Bytes.Length && Bytes[end] is not ((byte)',' or (byte)'}' or (byte)']' or (byte)'\n' or (byte)'\r' or (byte)'"'))
        {
            end++;
        }

        while (end > unit && Bytes[end - 1] is (byte)' ' or (byte)'\t')
        {
            end--;
        }

        var span = new ByteSpan(start, end - start);
        if (At(start) == '0' && unit == start + 1 && At(unit) is 'x' or 'X')
        {
            return new MalformedCause(span, "Numbers are written in decimal digits.");
        }

        return new MalformedCause(
            span, $"A quantity with its unit is written in double quotes: \"{Wording.Shorten(source.Excerpt(span))}\".");
    }

    /// <summary>Steps over a text; the cause when it is not one.</summary>
    public MalformedCause? Text(ref int offset)
    {
        var start = offset++;
        while (offset < Bytes.Length)
        {
            var b = Bytes[offset];
            if (b == '"')
            {
                offset++;
                return null;
            }

            if (b is (byte)'\n' or (byte)'\r')
            {
                return new MalformedCause(
                    new ByteSpan(start, offset - start),
                    "The closing quote of this text is missing on its line. A line break inside text is written \\n.");
            }

            if (b < 0x20)
            {
                var code = b.ToString("X4", CultureInfo.InvariantCulture);
                return new MalformedCause(
                    new ByteSpan(offset, 1),
                    b == '\t'
                        ? "A tab stands inside this text: write \\t or a space."
                        : $"The control character U+{code} stands inside this text: remove it.");
            }

            if (b == '\\')
            {
                var length = EscapeLength(offset);
                if (length < 0)
                {
                    return WrongEscape(offset);
                }

                offset += length;
            }
            else
            {
                offset++;
            }
        }

        return new MalformedCause(
            new ByteSpan(start, Bytes.Length - start), "The text that starts here has no closing quote; the file ends inside it.");
    }

    /// <summary>Steps over a comment; the cause when it is not one.</summary>
    public MalformedCause? Comment(ref int offset)
    {
        var rest = Bytes[offset..];
        if (rest.StartsWith("//"u8))
        {
            var length = rest.IndexOfAny((byte)'\n', (byte)'\r');
            offset = length < 0 ? Bytes.Length : offset + length;
            return null;
        }

        if (rest.StartsWith("/*"u8))
        {
            var length = rest[2..].IndexOf("*/"u8);
            if (length < 0)
            {
                return new MalformedCause(
                    new ByteSpan(offset, rest.Length),
                    "A comment starts here and never ends. JSON has no comments: move the text into a \"note\".");
            }

            offset += length + 4;
            return null;
        }

        return Unexpected(offset);
    }

    /// <summary>What starts like a number and is none.</summary>
    public MalformedCause Number(int offset)
    {
        var end = offset;
        while (end < Bytes.Length
            && (char.IsAsciiDigit((char)Bytes[end]) || Bytes[end] is (byte)'+' or (byte)'-' or (byte)'.' or (byte)'e' or (byte)'E'))
        {
            end++;
        }

        var span = new ByteSpan(offset, end - offset);
        var text = source.Excerpt(span);
        var digits = text.TrimStart('+', '-');
        if (digits.Length == 0
            && source.Excerpt(Word(end)) is var word
            && word.StartsWith("inf", StringComparison.OrdinalIgnoreCase) | word is "NaN")
        {
            return new MalformedCause(new ByteSpan(offset, Word(end).End - offset), $"JSON has no number {text}{Wording.Shorten(word)}.");
        }

        var why = text switch
        {
            ['+', ..] => "a number has no plus sign in front.",
            _ when digits.Length == 0 => "digits are missing after the minus sign.",
            _ when digits[0] == '.' => "a digit belongs before the decimal point, as in 0.5.",
            _ when digits.Length > 1 && digits[0] == '0' && char.IsAsciiDigit(digits[1]) => "a number has no zeros in front.",
            _ when digits.Count(c => c == '.') > 1 => "a number has one decimal point.",
            _ when digits[^1] == '.' || digits.Contains(".e", StringComparison.OrdinalIgnoreCase) =>
                "a digit belongs after the decimal point.",
            _ => "it is not a number JSON knows.",
        };
        return new MalformedCause(span, $"{Wording.Shorten(text)}: {why}");
    }

    /// <summary>A word where a value belongs.</summary>
    public MalformedCause Literal(int offset)
    {
        var span = Word(offset);
        var word = source.Excerpt(span);
        var message = word.ToUpperInvariant() switch
        {
            "TRU" or "FALS" or "FAL" or "NUL" => "Write true, false or null in full.",
            "TRUE" or "FALSE" or "NULL" => $"Write {word.ToLowerInvariant()}, in small letters.",
            "NAN" or "INF" or "INFINITY" => $"JSON has no number {word}.",
            "NONE" or "UNDEFINED" or "NIL" => $"JSON has no {word}: leave the key out where nothing is to be said.",
            _ => $"Text is written in double quotes: \"{Wording.Shorten(word)}\".",
        };
        return new MalformedCause(span, message);
    }

    /// <summary>Single and typographic quotation marks in the place of plain ones.</summary>
    public MalformedCause? WrongQuote(int offset)
    {
        Rune.DecodeFromUtf8(Bytes[offset..], out var rune, out var length);
        const string Typographic = "“”„‟‘’‚«»″＂";
        if (rune.Value is '\'' or '`')
        {
            return new MalformedCause(new ByteSpan(offset, 1), $"Text is written in double quotes (\"), not in {rune}.");
        }

        return rune.IsBmp && Typographic.Contains((char)rune.Value, StringComparison.Ordinal)
            ? new MalformedCause(
                new ByteSpan(offset, length),
                $"A typographic quotation mark ({rune}) stands here; JSON takes the plain one (\"). Word processors swap them.")
            : null;
    }

    public MalformedCause Unexpected(int offset)
    {
        var span = Character(offset);
        var rune = RuneAt(offset);
        var code = rune.Value.ToString("X4", CultureInfo.InvariantCulture);
        var isPlain = !Rune.IsControl(rune) && !Rune.IsWhiteSpace(rune)
            && Rune.GetUnicodeCategory(rune) is not (UnicodeCategory.Format or UnicodeCategory.NonSpacingMark);
        if (rune.Value == '#')
        {
            return new MalformedCause(span, "JSON has no comments: move the text after '#' into a \"note\".");
        }

        var what = isPlain ? $"'{rune}'" : $"The invisible character U+{code}";
        return new MalformedCause(span, $"{what} does not belong here; this is not JSON.");
    }

    private char At(int offset) => offset < Bytes.Length ? (char)Bytes[offset] : '\0';

    private int Digits(int offset)
    {
        var end = offset;
        while (char.IsAsciiDigit(At(end)))
        {
            end++;
        }

        return end - offset;
    }

    private Rune RuneAt(int offset)
    {
        Rune.DecodeFromUtf8(Bytes[Math.Min(offset, Bytes.Length)..], out var rune, out _);
        return rune;
    }

    private int EscapeLength(int offset)
    {
        if (offset + 1 >= Bytes.Length)
        {
            return 1;
        }

        if (Bytes[offset + 1] != 'u')
        {
            return "\"\\/bfnrt"u8.Contains(Bytes[offset + 1]) ? 2 : -1;
        }

        for (var i = offset + 2; i < offset + JsonText.UnicodeEscapeLength; i++)
        {
            if (i >= Bytes.Length)
            {
                return i - offset;
            }

            if (!char.IsAsciiHexDigit((char)Bytes[i]))
            {
                return -1;
            }
        }

        return JsonText.UnicodeEscapeLength;
    }

    private MalformedCause WrongEscape(int offset)
    {
        var span = new ByteSpan(offset, 1 + Character(offset + 1).Length);
        if (Bytes[offset + 1] == 'u')
        {
            return new MalformedCause(
                span, "\\u takes four hexadecimal digits, as in \\u00b5. The character itself can stand in the file as well.");
        }

        var what = Rune.IsControl(RuneAt(offset + 1)) ? "A backslash before a control character" : source.Excerpt(span);
        return new MalformedCause(span, $"{what} is no escape of JSON. A backslash itself is written \\\\.");
    }
}
