using System.Globalization;
using System.Text;

namespace RecipeLint.Chemistry.Tests.Equilibrium;

/// <summary>One published figure beside what the program gives.</summary>
/// <param name="Tolerance">As a share of the figure, or as it stands where the unit is pH or log10.</param>
internal sealed record FactRow(string Kind, string What, string Unit, double Published, double Given, double Tolerance, string Source)
{
    /// <summary>Units of what is only promised as a bound: more than the figure is as good as the figure.</summary>
    internal const string AtLeast = "K, at least", PhAtLeast = "pH, at least";

    public bool IsAbsolute => Unit is "pH" or "log10" or PhAtLeast;

    public double Off => Unit is AtLeast or PhAtLeast ? Math.Min(0, Difference) : Difference;

    private double Difference => IsAbsolute ? Given - Published : Given / Published - 1;

    /// <summary>What lies outside its tolerance is argued one by one, with how far it may be off.</summary>
    public double Allowed => Math.Max(
        Tolerance, OutsideFactsTests.Because.GetValueOrDefault($"{Kind}: {What}").Furthest / (IsAbsolute ? 1 : 100));
}

/// <summary>Published figures as a table of the repository, each held to its tolerance.</summary>
internal static class FactTable
{
    /// <param name="path">Of the table in the repository.</param>
    /// <param name="head">Title and what is to be known of the tolerances.</param>
    internal static void Hold(string path, string head, IReadOnlyList<FactRow> rows)
    {
        var text = new StringBuilder(head);
        text.Append("| kind | solution | unit | published | given | off | tolerance | source |\n|---|---|---|---|---|---|---|---|\n");
        foreach (var r in rows)
        {
            var scale = r.IsAbsolute ? 1 : 100;
            text.Append(CultureInfo.InvariantCulture,
                $"| {r.Kind} | {r.What} | {r.Unit} | {r.Published:0.####} | {r.Given:0.####} | {scale * r.Off:0.###} | {scale * r.Tolerance:0.###} | {r.Source} |\n");
        }

        Repository.Golden(path, text.ToString());
        var outside = rows.Where(r => !(Math.Abs(r.Off) <= r.Allowed)).Select(r => $"{r.What}: {r.Given:0.####} for {r.Published}").ToList();
        Assert.True(rows.Count >= 60, $"{rows.Count} rows");
        Assert.True(outside.Count == 0, string.Join("\n", outside));
    }
}
