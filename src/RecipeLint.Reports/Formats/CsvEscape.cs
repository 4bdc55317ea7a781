using System.Buffers;

namespace RecipeLint.Reports.Formats;

/// <summary>
/// Text on its way into a cell of a CSV file (RFC 4180). A spreadsheet takes a cell that begins with one of = + - @ for a formula and runs
/// it; an apostrophe before it keeps it text (OWASP, CSV Injection; recalled).
/// </summary>
public static class CsvEscape
{
    private static readonly SearchValues<char> _quoted = SearchValues.Create("\",;\r\n");

    public static string Text(string text)
    {
        var shown = Printable.Show(text);
        var start = shown.TrimStart();
        if (start.Length > 0 && start[0] is '=' or '+' or '-' or '@' or '＝' or '＋' or '－' or '＠')
        {
            shown = "'" + shown;
        }

        return shown.AsSpan().ContainsAny(_quoted) || shown != shown.Trim()
            ? $"\"{shown.Replace("\"", "\"\"", StringComparison.Ordinal)}\""
            : shown;
    }
}
