using System.Globalization;
using RecipeLint.Reports.Handbook;
using RecipeLint.Reports.Markup;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.Pages;

/// <summary>Findings with the lines they stand on.</summary>
internal static class FindingsHtml
{
    private const int Around = 1, WidestLine = 160;

    /// <summary>"2 errors, 1 warning", or that no rule objects.</summary>
    public static Html Verdict(IReadOnlyList<PlacedFinding> findings, int suppressed)
    {
        var counts = new[] { Level.Error, Level.Warning, Level.Note }
            .Select(l => (Level: l, Count: findings.Count(f => f.Finding.Level == l)))
            .Where(c => c.Count > 0)
            .ToList();
        var accepted = suppressed == 0 ? Html.Empty : Html.Of($" {suppressed} accepted by the shop and not shown.");
        return counts.Count == 0
            ? Html.Of($"<p class=\"verdict silent\">No rule objects.{accepted}</p>\n")
            : Html.Of($"<p class=\"verdict\">{Html.Join(Html.Of($" "), counts.Select(c => Html.Of($"{c.Count} {FindingCard.Stamp(c.Level)}")))} {Levels.Meaning(counts[0].Level)}{accepted}</p>\n");
    }

    public static Html Of(PlacedFinding placed)
    {
        var finding = placed.Finding;
        var certainty = finding.Certainty == Certainty.Computed
            ? Html.Empty
            : Html.Of($" <span class=\"certainty\">({Words.Of(finding.Certainty)})</span>");
        var related = placed.Related.Count == 0
            ? Html.Empty
            : Html.Of($"<ul class=\"related\">\n{Html.Join(placed.Related.Select(r => Html.Of($"<li>{r.Spot.File}, line {r.Spot.Lines.Start.Line}: {ChemicalText.Of(r.Label)}</li>\n")))}</ul>\n");
        return Html.Of(
            $"""
            <div class="finding {Words.Of(finding.Level)}">
            <p class="says">{FindingCard.Stamp(finding.Level)} {finding.Rule.Id} {finding.Rule.Name}{certainty}</p>
            <p class="place">{placed.Spot.File}, line {placed.Spot.Lines.Start.Line}</p>
            <p>{ChemicalText.Of(finding.Message)}</p>
            {Excerpt(placed.Spot)}{related}</div>

            """);
    }

    /// <summary>The marked line with one before and after it.</summary>
    private static Html Excerpt(Spot spot)
    {
        if (spot.Source is not { } source)
        {
            return Html.Empty;
        }

        var (start, end) = spot.Lines;
        var lines = Html.Empty;
        for (var number = Math.Max(1, start.Line - Around); number <= Math.Min(source.LineCount, start.Line + Around); number++)
        {
            var text = source.Line(number);
            var shown = number == start.Line
                ? Marked(text, start.Column - 1, end.Line > start.Line ? text.Length : end.Column - 1)
                : Html.Text(Cut(text));
            lines += Html.Of($"<span class=\"n\">{number.ToString(CultureInfo.InvariantCulture)}</span>{shown}\n");
        }

        return Html.Of($"<div class=\"excerpt\">\n{CodeBlock.Framed(lines)}</div>\n");
    }

    private static Html Marked(string text, int from, int to)
    {
        from = Math.Clamp(from, 0, text.Length);
        to = Math.Clamp(to, from, text.Length);
        var (before, marked, after) = (Spaced(text[..from]), Spaced(text[from..to]), Spaced(text[to..]));
        before = before.Length > WidestLine ? "…" + before[^(WidestLine / 2)..] : before;
        return Html.Of($"{before}<mark>{Cut(marked)}</mark>{Cut(after)}");
    }

    private static string Cut(string text) => Spaced(text) is { Length: > WidestLine } wide ? wide[..WidestLine] + "…" : Spaced(text);

    private static string Spaced(string text) => text.Replace("\t", "  ", StringComparison.Ordinal);
}
