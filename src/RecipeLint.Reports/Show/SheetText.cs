using RecipeLint.Reports.Tables;

namespace RecipeLint.Reports.Show;

/// <summary>A sheet as text that fits the terminal.</summary>
public static class SheetText
{
    public static void Write(TextWriter writer, Sheet sheet, TextOptions options)
    {
        var lines = new StyledLines(writer, options.Color);
        var width = options.Width;
        foreach (var line in TextWrap.Wrap(Printable.Show($"{sheet.Name} ({sheet.Kind}, {sheet.File})"), width))
        {
            lines.Line((line, Style.Strong));
        }

        foreach (var section in sheet.Sections)
        {
            lines.Blank();
            lines.Line((section.Title, Style.Strong));
            Paragraphs(lines, section.Says, width);
            foreach (var line in section.Table is { } table ? TableText.Lines(table, width) : [])
            {
                lines.Line((line, Style.Plain));
            }

            Paragraphs(lines, section.Notes, width);
        }
    }

    private static void Paragraphs(StyledLines lines, IReadOnlyList<string> says, int width)
    {
        foreach (var line in says.SelectMany(s => TextWrap.Wrap(Printable.Show(s), width - 2)))
        {
            lines.Line(("  " + line, Style.Plain));
        }
    }
}
