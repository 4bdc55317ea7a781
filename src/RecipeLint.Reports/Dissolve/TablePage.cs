using System.Text;

namespace RecipeLint.Reports.Dissolve;

/// <summary>
/// Lines of a name, a few right-aligned figures and a note, none wider than the page; a long note runs on below itself. What a name out of
/// a file holds that could steer a terminal is shown and not sent.
/// </summary>
internal sealed class TablePage
{
    private const int NameWidth = 38, FigureWidth = 12, Gap = 2;

    private readonly StringBuilder _text = new();

    public void Blank() => _text.Append('\n');

    /// <summary>A heading over a table.</summary>
    public void Head(string name, string[] figures, string? note = null) => Columns(name, figures, note);

    public void Row(string name, string[] figures, string? note = null) => Columns("  " + name, figures, note);

    /// <summary>Running text.</summary>
    public void Text(string text)
    {
        foreach (var line in TextWrap.Wrap(Printable.Show(text), DissolveReport.Width))
        {
            _text.Append(line).Append('\n');
        }
    }

    /// <summary>Running text that stands in from the edge; its further lines a little more.</summary>
    public void Indented(string text, int indent)
    {
        var first = true;
        foreach (var line in TextWrap.Wrap(Printable.Show(text), DissolveReport.Width - indent - 2))
        {
            _text.Append(' ', first ? indent : indent + 2).Append(line).Append('\n');
            first = false;
        }
    }

    public override string ToString() => _text.ToString();

    private void Columns(string name, string[] figures, string? note)
    {
        name = Printable.Show(name);
        var line = new StringBuilder(name);
        var width = DisplayWidth.Of(name);
        var room = figures.Length == 0 ? NameWidth : NameWidth + FigureWidth - 1 - DisplayWidth.Of(figures[0]);
        if (width > room && (figures.Length > 0 || note is not null))
        {
            _text.Append(line).Append('\n');
            line.Clear();
            width = 0;
        }

        var at = NameWidth;
        foreach (var figure in figures)
        {
            at += FigureWidth;
            line.Append(' ', Math.Max(1, at - width - DisplayWidth.Of(figure))).Append(figure);
            width = at;
        }

        var notes = string.IsNullOrEmpty(note) ? [] : TextWrap.Wrap(Printable.Show(note), DissolveReport.Width - at - Gap);
        if (notes.Count > 0)
        {
            line.Append(' ', at + Gap - width).Append(notes[0]);
        }

        _text.Append(line).Append('\n');
        foreach (var more in notes.Skip(1))
        {
            _text.Append(' ', at + Gap).Append(more).Append('\n');
        }
    }
}
