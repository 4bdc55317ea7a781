using System.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports;

/// <summary>What a stretch of text is, from which its colour follows.</summary>
internal enum Style
{
    Plain,
    Strong,
    Faint,
    Error,
    Warning,
    Note,
    Related,
}

/// <summary>Writes lines of a report: guarded against build-server commands, coloured when asked, always ended by LF.</summary>
internal sealed class StyledLines(TextWriter writer, bool color)
{
    private const string Reset = "\u001b[0m";

    public static Style StyleOf(Level level) => level switch
    {
        Level.Error => Style.Error,
        Level.Warning => Style.Warning,
        _ => Style.Note,
    };

    public void Blank() => writer.Write('\n');

    /// <summary>One line of parts; the parts hold printable text only.</summary>
    public void Line(params ReadOnlySpan<(string Text, Style Style)> parts)
    {
        var plain = new StringBuilder();
        foreach (var (text, _) in parts)
        {
            plain.Append(text);
        }

        var whole = plain.ToString();
        var guarded = Printable.GuardLine(whole);
        if (!color || guarded != whole)
        {
            // A line that had to be guarded loses its colours: nobody's file is called that by accident.
            writer.Write(guarded.TrimEnd(' '));
            writer.Write('\n');
            return;
        }

        foreach (var (text, style) in parts)
        {
            var code = Code(style);
            if (code.Length == 0 || string.IsNullOrWhiteSpace(text))
            {
                writer.Write(text);
                continue;
            }

            writer.Write(code);
            writer.Write(text);
            writer.Write(Reset);
        }

        writer.Write('\n');
    }

    // ECMA-48 "select graphic rendition"; the eight basic colours follow the theme of the terminal.
    private static string Code(Style style) => style switch
    {
        Style.Strong => "\u001b[1m",
        Style.Faint => "\u001b[2m",
        Style.Error => "\u001b[1;31m",
        Style.Warning => "\u001b[1;33m",
        Style.Note => "\u001b[1;36m",
        Style.Related => "\u001b[36m",
        _ => "",
    };
}
