using System.Globalization;
using System.Text;

namespace RecipeLint.Reports;

/// <summary>
/// The boundary where text from files and file names meets a terminal or a build log. Whatever could move the cursor, hide or reorder text
/// or break a line is shown as an escape. Machine formats keep the true text.
/// </summary>
public static class Printable
{
    /// <summary>
    /// The text on one line with controls, bidirectional controls, invisible characters and lone surrogates as \u202E or \u{E0041}.
    /// </summary>
    public static string Show(string text)
    {
        if (!NeedsEscape(text))
        {
            return text;
        }

        var shown = new StringBuilder(text.Length + 16);
        var rest = text.AsSpan();
        while (!rest.IsEmpty)
        {
            if (Rune.DecodeFromUtf16(rest, out var rune, out var length) != System.Buffers.OperationStatus.Done)
            {
                AppendEscape(shown, rest[0]);
                rest = rest[1..];
                continue;
            }

            if (IsHazard(rune))
            {
                AppendEscape(shown, rune.Value);
            }
            else
            {
                shown.Append(rest[..length]);
            }

            rest = rest[length..];
        }

        return shown.ToString();
    }

    /// <summary>True for a code point that a terminal does not simply print.</summary>
    public static bool IsHazard(Rune rune)
    {
        if (rune.IsAscii)
        {
            return rune.Value is < 0x20 or 0x7F;
        }

        return Rune.GetUnicodeCategory(rune) switch
        {
            // Format holds the bidirectional controls, zero-width space and joiners, the byte order mark and the tag characters.
            UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator
                or UnicodeCategory.Surrogate => true,

            // Letters and marks that are blank: the Hangul fillers, the combining grapheme joiner, the Braille blank.
            _ => rune.Value is 0x115F or 0x1160 or 0x3164 or 0xFFA0 or 0x034F or 0x2800,
        };
    }

    /// <summary>
    /// Keeps a finished line from being a command to the build server that shows the log: GitHub reads "::name::" after leading blanks and
    /// "##[name]" anywhere, Azure Pipelines "##vso[".
    /// </summary>
    public static string GuardLine(string line)
    {
        var text = line.AsSpan().TrimStart();
        if (text.StartsWith("::", StringComparison.Ordinal))
        {
            line = string.Concat(line.AsSpan(0, line.Length - text.Length), "\\u003A", text[1..]);
        }

        return line.Replace("##[", "\\u0023#[", StringComparison.Ordinal).Replace("##vso[", "\\u0023#vso[", StringComparison.Ordinal);
    }

    /// <summary>The text with lone surrogates as U+FFFD: true text that every UTF-8 reader accepts.</summary>
    public static string WellFormed(string text)
    {
        for (var i = 0; i < text.Length; i++)
        {
            if (!char.IsSurrogate(text[i]))
            {
                continue;
            }

            if (i + 1 < text.Length && char.IsSurrogatePair(text[i], text[i + 1]))
            {
                i++;
                continue;
            }

            var whole = new StringBuilder(text.Length);
            foreach (var rune in text.EnumerateRunes())
            {
                whole.Append(rune.ToString());
            }

            return whole.ToString();
        }

        return text;
    }

    private static bool NeedsEscape(string text)
    {
        foreach (var unit in text)
        {
            if (unit is < ' ' or > '~')
            {
                return true;
            }
        }

        return false;
    }

    private static void AppendEscape(StringBuilder shown, int codePoint)
    {
        var format = codePoint > 0xFFFF ? "\\u{{{0:X}}}" : "\\u{0:X4}";
        shown.Append(string.Format(CultureInfo.InvariantCulture, format, codePoint));
    }
}
