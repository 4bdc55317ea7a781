using System.Text;

namespace RecipeLint.Workbench;

/// <summary>The part of rules/CHANGELOG.md that follows from the ledger: which rules came, are on trial and went, by version.</summary>
public static class Changelog
{
    public const string Path = "rules/CHANGELOG.md";

    private const string Begin = "<!-- From rules/ledger.json, written by the workbench: begin -->\n";
    private const string End = "<!-- end -->\n";

    /// <summary>The file with its part written anew; everything around it stays.</summary>
    /// <exception cref="BenchException">The marks of the part are not there.</exception>
    public static string Write(string text, Ledger ledger)
    {
        var (begin, end) = (text.IndexOf(Begin, StringComparison.Ordinal), text.IndexOf(End, StringComparison.Ordinal));
        return begin >= 0 && end > begin
            ? text[..(begin + Begin.Length)] + Part(ledger) + text[end..]
            : throw new BenchException($"{Path}: the lines '{Begin.Trim()}' and '{End.Trim()}' are not there.");
    }

    private static string Part(Ledger ledger)
    {
        var text = new StringBuilder("\n");
        var versions = ledger.Rows.Select(r => r.Since).Concat(ledger.Rows.Select(r => r.Retired).OfType<string>()).Distinct()
            .OrderByDescending(Version.Parse);
        foreach (var version in versions)
        {
            text.Append(System.Globalization.CultureInfo.InvariantCulture, $"### Rules of {version}\n\n");
            Line(text, "New", ledger.Rows.Where(r => r.Since == version && !r.IsPreview));
            Line(text, "On trial", ledger.Rows.Where(r => r.Since == version && r.IsPreview));
            Line(text, "Retired", ledger.Rows.Where(r => r.Retired == version));
        }

        return text.ToString();
    }

    private static void Line(StringBuilder text, string what, IEnumerable<LedgerRow> rows)
    {
        var listed = rows.Select(r => $"{r.Id} {r.Name}").ToList();
        if (listed.Count > 0)
        {
            text.Append(System.Globalization.CultureInfo.InvariantCulture, $"- {what} ({listed.Count}): {string.Join(", ", listed)}.\n\n");
        }
    }
}
