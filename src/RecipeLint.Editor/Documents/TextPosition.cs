namespace RecipeLint.Editor.Documents;

/// <summary>A position as the protocol counts it: both from 0, the character in UTF-16 code units.</summary>
internal readonly record struct TextPosition(int Line, int Character) : IComparable<TextPosition>
{
    public int CompareTo(TextPosition other) => Line != other.Line ? Line.CompareTo(other.Line) : Character.CompareTo(other.Character);
}

/// <summary>From a position up to, and not with, another.</summary>
internal readonly record struct TextRange(TextPosition Start, TextPosition End)
{
    public bool Touches(TextRange other) => Start.CompareTo(other.End) <= 0 && other.Start.CompareTo(End) <= 0;
}

/// <summary>Finds positions in a text. Lines end in LF, CR LF or CR, as the protocol says.</summary>
internal static class TextLines
{
    /// <summary>The index in the text; past the end of a line is that end, past the last line the end of the text.</summary>
    public static int OffsetOf(string text, TextPosition position)
    {
        var at = 0;
        for (var line = 0; line < position.Line; line++)
        {
            var end = text.AsSpan(at).IndexOfAny('\n', '\r');
            if (end < 0)
            {
                return text.Length;
            }

            at += end + (text[at + end] == '\r' && at + end + 1 < text.Length && text[at + end + 1] == '\n' ? 2 : 1);
        }

        var rest = text.AsSpan(at).IndexOfAny('\n', '\r');
        return at + Math.Clamp(position.Character, 0, rest < 0 ? text.Length - at : rest);
    }

    public static TextPosition PositionOf(string text, int offset)
    {
        var (line, start) = (0, 0);
        for (var i = 0; i < offset; i++)
        {
            if (text[i] == '\n' || (text[i] == '\r' && (i + 1 == text.Length || text[i + 1] != '\n')))
            {
                line++;
                start = i + 1;
            }
        }

        return new TextPosition(line, offset - start);
    }
}
