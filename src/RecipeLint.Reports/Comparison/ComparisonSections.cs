using RecipeLint.Analysis.Equilibria;
using RecipeLint.Reports.Show;
using RecipeLint.Reports.Tables;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.Comparison;

/// <summary>A comparison as sentences and tables, what matters most first; text, Markdown and pages show the same.</summary>
public static class ComparisonSections
{
    /// <summary>"2 new findings (1 error), 1 gone; 3 files changed, 1 renamed; 2 recipes moved by a stock."</summary>
    public static string Summary(Comparison comparison)
    {
        if (comparison.IsEmpty)
        {
            return "Nothing differs.";
        }

        var errors = comparison.Brought.Count(f => f.Finding.Level == Level.Error);
        var parts = new List<string>
        {
            $"{Count(comparison.Brought.Count, "new finding")}{(errors > 0 ? $" ({Count(errors, "error")})" : "")}, "
                + $"{Say.Number(comparison.Gone.Count)} gone",
        };
        var files = Enum.GetValues<FileChangeKind>().Where(k => k != FileChangeKind.Same)
            .Select(k => (Kind: k, Count: comparison.Files.Count(f => f.Kind == k)))
            .Where(k => k.Count > 0)
            .Select(k => $"{Count(k.Count, "file")} {k.Kind.ToString().ToLowerInvariant()}");
        parts.AddRange(new[] { string.Join(", ", files) }.Where(f => f.Length > 0));
        parts.AddRange(new[] { comparison.Moved.Count }
            .Where(m => m > 0)
            .Select(m => $"{Count(m, "recipe")} moved by a changed stock or water"));
        return string.Join("; ", parts) + ".";
    }

    public static IReadOnlyList<SheetSection> Of(Comparison comparison) =>
    [
        .. new[]
        {
            Findings("brought", "New findings", comparison.Brought),
            Moved(comparison),
            Figures("plants", "What that changes for the plants", comparison, "recipe"),
            Amounts(comparison),
            Figures("bottles", "What that changes in the bottles", comparison, "stock"),
            Findings("gone", "Findings that are gone", comparison.Gone),
            Files(comparison),
        }.Where(s => !s.IsEmpty),
    ];

    private static SheetSection Findings(string key, string title, IReadOnlyList<FindingChange> findings) => new(
        key, title, [],
        new Table(
            [new("level"), new("file"), new("line", true), new("rule"), new("what", IsSentence: true)],
            [
                .. findings.Select(f => (IReadOnlyList<string>)
                [
                    Words.Of(f.Finding.Level), f.File, Say.Number(f.Placed.Spot.Lines.Start.Line),
                    $"{f.Finding.Rule.Id} {f.Finding.Rule.Name}",
                    Sentences.First(f.Finding.Message),
                ]),
            ]));

    private static SheetSection Moved(Comparison comparison) => new(
        "moved", "Recipes moved by a stock or water", comparison.Moved.Count == 0
            ? []
            : [$"The file itself is the same, what the plants get is not: {Say.List(comparison.Moved)}."]);

    private static SheetSection Amounts(Comparison comparison) => new(
        "amounts", "Amounts", [],
        new Table(
            [new("file"), new("what"), new("was", true), new("is", true), new("change", true)],
            [
                .. comparison.Amounts.Select(a => (IReadOnlyList<string>)
                [
                    a.File, a.What, a.OldGrams is { } old ? Say.Grams(old) : "nothing", a.NewGrams is { } now ? Say.Grams(now) : "nothing",
                    Change(a.OldGrams is > 0 and var was && a.NewGrams is { } becomes ? (becomes - was) / was : null),
                ]),
            ])
        { IsGroupedByFirst = true });

    private static SheetSection Figures(string key, string title, Comparison comparison, string kind) => new(
        key, title, [],
        new Table(
            [new("file"), new("figure"), new("was", true), new("is", true), new("change", true)],
            [
                // A figure that reads the same before and after tells nobody anything.
                .. comparison.Figures.Where(f => f.Kind == kind && Cells.Number(f.Old) != Cells.Number(f.New))
                    .GroupBy(f => f.File, StringComparer.Ordinal)
                    .OrderByDescending(g => g.Max(f => Math.Abs(f.Share ?? 0)))
                    .ThenBy(g => g.Key, StringComparer.Ordinal)
                    .SelectMany(g => g.OrderBy(f => f.Figure.StartsWith("uncertainty", StringComparison.Ordinal))
                        .ThenByDescending(f => Math.Abs(f.Share ?? double.MaxValue)))
                    .Select(
                        f => (IReadOnlyList<string>)
                        [
                            f.File, f.Unit.Length == 0 ? f.Figure : $"{f.Figure}, {f.Unit}", Cell(f, f.Old), Cell(f, f.New),
                            Change(f),
                        ]),
            ])
        { IsGroupedByFirst = true });

    private static SheetSection Files(Comparison comparison) => new(
        "files", "Files", [],
        new Table(
            [new("file"), new("is"), new("was")],
            [
                .. comparison.Files.Select(f => (IReadOnlyList<string>)
                    [f.Shown, f.Kind.ToString().ToLowerInvariant(), f.Kind == FileChangeKind.Renamed ? f.Old! : ""]),
            ]));

    private static string Cell(FigureChange figure, double? value) =>
        figure.IsPh && value is { } ph && PhDoubt.OffTheScale(ph) is { } beyond ? beyond : Cells.Number(value);

    /// <summary>
    /// A share of what was; of a pH, which is no amount, the difference, where both are on the scale.
    /// </summary>
    private static string Change(FigureChange figure) => figure is { IsPh: true, Old: { } was, New: { } becomes }
        ? PhDoubt.OffTheScale(was) is null && PhDoubt.OffTheScale(becomes) is null
            ? (becomes > was ? "+" : "") + Say.Number(Math.Round(becomes - was, 2))
            : ""
        : Change(figure.Share);

    private static string Change(double? share) =>
        share is { } known && double.IsFinite(known) ? (known > 0 ? "+" : "") + Say.Percent(known) : "";

    private static string Count(int count, string what) => $"{Say.Number(count)} {what}{(count == 1 ? "" : "s")}";
}
