using System.Globalization;
using System.Text;

namespace RecipeLint.Reports.Diagnosis;

/// <summary>
/// Text for the bench, at most 100 columns: running text, headings with a verdict at the right, and named paragraphs that hang.
/// </summary>
internal sealed class BenchPage
{
    public const int Width = 100;

    private const int NameWidth = 13;

    private readonly StringBuilder _text = new();

    public void Blank() => _text.Append('\n');

    public void Text(string text)
    {
        foreach (var line in Lines(text, Width))
        {
            Line(line);
        }
    }

    /// <summary>A numbered heading with a word at the right edge.</summary>
    public void Head(int number, string text, string right)
    {
        var lead = number.ToString(CultureInfo.InvariantCulture).PadRight(3);
        var lines = Lines(text, Width - lead.Length - DisplayWidth.Of(right) - 2);
        var pad = Width - lead.Length - DisplayWidth.Of(lines[0]) - DisplayWidth.Of(right);
        Line(lead + lines[0] + new string(' ', Math.Max(2, pad)) + right);
        foreach (var more in lines.Skip(1))
        {
            Line("   " + more);
        }
    }

    /// <summary>A paragraph under a name; nothing when the text is empty.</summary>
    public void Named(string name, string text)
    {
        if (text.Length == 0)
        {
            return;
        }

        var lead = ("   " + name).PadRight(NameWidth);
        foreach (var line in Lines(text, Width - NameWidth))
        {
            Line(lead + line);
            lead = new string(' ', NameWidth);
        }
    }

    /// <summary>One of a list, with a figure at the right edge.</summary>
    public void Item(string text, string right)
    {
        var lines = Lines(text, Width - 5 - DisplayWidth.Of(right) - 2);
        Line("   - " + lines[0] + new string(' ', Math.Max(2, Width - 5 - DisplayWidth.Of(lines[0]) - DisplayWidth.Of(right))) + right);
        foreach (var more in lines.Skip(1))
        {
            Line("     " + more);
        }
    }

    /// <summary>A row of a table: a name that may run on below itself, and figures that end at the edges of their columns.</summary>
    public void Columns(string name, int nameWidth, IReadOnlyList<string> figures, int figureWidth)
    {
        var indent = name.Length - name.TrimStart(' ').Length;
        var lines = Lines(name, nameWidth - indent);
        var row = new StringBuilder(new string(' ', indent) + lines[0]);
        row.Append(' ', Math.Max(0, nameWidth - indent - DisplayWidth.Of(lines[0])));
        foreach (var figure in figures)
        {
            row.Append(' ', Math.Max(1, figureWidth - DisplayWidth.Of(figure))).Append(figure);
        }

        Line(row.ToString());
        foreach (var more in lines.Skip(1))
        {
            Line(new string(' ', indent + 2) + more);
        }
    }

    public override string ToString() => _text.ToString();

    /// <summary>The one place where what comes out of files is made harmless before it is wrapped.</summary>
    private static IReadOnlyList<string> Lines(string text, int width) => TextWrap.Wrap(Printable.Show(text), width);

    private void Line(string line) => _text.Append(Printable.GuardLine(line.TrimEnd())).Append('\n');
}
