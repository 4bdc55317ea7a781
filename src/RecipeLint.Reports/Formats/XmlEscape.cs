using System.Text;

namespace RecipeLint.Reports.Formats;

/// <summary>Text on its way into XML 1.0, as content or between double quotes. What XML cannot hold at all is shown as an escape.</summary>
public static class XmlEscape
{
    public static string Text(string text)
    {
        var shown = new StringBuilder(text.Length + 16);
        foreach (var unit in Printable.Show(text))
        {
            _ = unit switch
            {
                '&' => shown.Append("&amp;"),
                '<' => shown.Append("&lt;"),
                '>' => shown.Append("&gt;"),
                '"' => shown.Append("&quot;"),
                '\'' => shown.Append("&apos;"),
                '\uFFFE' or '\uFFFF' => shown.Append('\uFFFD'),
                _ => shown.Append(unit),
            };
        }

        return shown.ToString();
    }
}
