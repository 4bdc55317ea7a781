using System.Globalization;
using System.Text;

namespace RecipeLint.Reports;

/// <summary>
/// Passes JSON on and writes what <see cref="Printable"/> calls a hazard as \uXXXX. Outside ASCII that can only stand inside a string, so
/// the document means the same; but shown on a terminal it moves no cursor and reorders no text.
/// </summary>
internal sealed class JsonSafeWriter(TextWriter inner) : TextWriter(CultureInfo.InvariantCulture)
{
    private char _high;

    public override Encoding Encoding => inner.Encoding;

    [System.Diagnostics.CodeAnalysis.AllowNull]
    public override string NewLine { get => "\n"; set => throw new NotSupportedException("The line end is LF."); }

    public override void Write(char value)
    {
        if (_high != 0)
        {
            var high = _high;
            _high = '\0';
            if (char.IsLowSurrogate(value))
            {
                var rune = new Rune(high, value);
                if (Printable.IsHazard(rune))
                {
                    Escape(high);
                    Escape(value);
                }
                else
                {
                    inner.Write(high);
                    inner.Write(value);
                }

                return;
            }

            inner.Write('\uFFFD');
        }

        if (value is >= ' ' and <= '~' or '\n')
        {
            inner.Write(value);
        }
        else if (char.IsHighSurrogate(value))
        {
            _high = value;
        }
        else if (char.IsLowSurrogate(value))
        {
            inner.Write('\uFFFD');
        }
        else if (Printable.IsHazard(new Rune(value)))
        {
            Escape(value);
        }
        else
        {
            inner.Write(value);
        }
    }

    public override void Write(char[] buffer, int index, int count) => Write(buffer.AsSpan(index, count));

    public override void Write(string? value) => Write(value.AsSpan());

    public override void Write(ReadOnlySpan<char> buffer)
    {
        foreach (var unit in buffer)
        {
            Write(unit);
        }
    }

    public override void Flush() => inner.Flush();

    private void Escape(char unit) => inner.Write(string.Create(CultureInfo.InvariantCulture, $"\\u{(int)unit:x4}"));
}
