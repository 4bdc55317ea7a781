using System.Globalization;
using RecipeLint.Rules.Tests.Folders;

namespace RecipeLint.Rules.Tests.Figures;

/// <summary>
/// Every figure that an explanation states is computed, has an owner that is asked, or a citation; none enters without.
/// </summary>
public sealed class StatedFigureTests
{
    public static TheoryData<int> Rows => [.. Enumerable.Range(0, StatedFigures.All.Count)];

    public static TheoryData<string> Rules => RuleFolder.Names();

    [Theory]
    [MemberData(nameof(Rows))]
    public void AFigureIsWhatStandsBehindIt(int row)
    {
        var stated = StatedFigures.All[row];
        var places = Explanation.All.Where(e => stated.IsOf(e.Folder.Name))
            .SelectMany(e => e.Find(stated.Words).Select(at => (Explanation: e, At: at)))
            .ToList();
        Assert.True(places.Count > 0, $"{stated.Rule} no longer says '{stated.Words}'");
        switch (stated.Behind)
        {
            case Behind.Computed:
                var figure = stated.Values[0]();
                Assert.True(
                    figure >= stated.Low && figure <= stated.High,
                    $"{stated.Rule}: '{stated.Words}', given {figure:0.####}, allowed {stated.Low} to {stated.High}");
                break;
            case Behind.Owned:
                HoldAgainstOwners(stated);
                break;
            case Behind.Source:
                Assert.All(places, p => Assert.Contains(stated.Citation, p.Explanation.Citations, StringComparison.Ordinal));
                break;
            default:
                Assert.All(places, p => Assert.True(IsGiven(stated, p.Explanation, p.At), $"{stated.Rule}: '{stated.Words}' gives to no sum"));
                break;
        }
    }

    [Theory]
    [MemberData(nameof(Rules))]
    public void NoFigureStandsAlone(string rule)
    {
        var explanation = Explanation.All.Single(e => e.Folder.Name == rule);
        var covered = StatedFigures.All.Where(s => s.IsOf(rule))
            .SelectMany(s => explanation.Find(s.Words).Select(at => (From: at, To: at + s.Words.Length)))
            .Concat(explanation.OptionDefaults.Select(d => (From: d.At, To: d.At + d.Stated.Length)))
            .ToList();
        Assert.Empty(explanation.Figures
            .Where(f => !covered.Any(c => c.From <= f.At && f.At + f.Text.Length <= c.To))
            .Select(f => $"{f.Text} in '{f.Line}'"));
    }

    [Theory]
    [MemberData(nameof(Rules))]
    public void AnOptionStatesItsDefault(string rule)
    {
        var explanation = Explanation.All.Single(e => e.Folder.Name == rule);
        foreach (var (name, stated, _) in explanation.OptionDefaults)
        {
            var (value, unit) = Owner.Options(rule)[name];
            var expected = string.Create(CultureInfo.InvariantCulture, $"{value} {unit}").TrimEnd();
            Assert.Equal(expected, stated.EndsWith(".0", StringComparison.Ordinal) ? stated[..^2] : stated);
        }

        Assert.All(Owner.Options(rule).Keys, k => Assert.Contains(explanation.OptionDefaults, d => d.Name == k));
    }

    private static void HoldAgainstOwners(StatedFigure stated)
    {
        var figures = Explanation.In(stated.Words);
        Assert.True(figures.Count == stated.Values.Count, $"{stated.Rule}: '{stated.Words}' has {figures.Count} figures");
        for (var k = 0; k < figures.Count; k++)
        {
            var owned = stated.Values[k]();
            Assert.True(
                Math.Abs(figures[k].Value - owned) <= Math.Min(figures[k].Rounding, 0.02 * Math.Abs(owned)) + 1e-9,
                $"{stated.Rule}: '{stated.Words}' says {figures[k].Text}, its owner {owned:0.####}");
        }
    }

    /// <summary>It stands in an example, or in the paragraph of something that is computed.</summary>
    private static bool IsGiven(StatedFigure stated, Explanation explanation, int at)
    {
        var mine = explanation.Figures.Where(f => f.At >= at && f.At < at + stated.Words.Length).ToList();
        return mine.Count > 0 && (mine.All(f => f.Section is "Failing" or "Passing" || explanation.Examples.Contains(f.Text, StringComparison.Ordinal))
            || StatedFigures.All.Where(s => s.Behind is Behind.Computed && s.IsOf(explanation.Folder.Name))
                .SelectMany(s => explanation.Find(s.Words))
                .Any(c => explanation.ParagraphAt(c) == explanation.ParagraphAt(at)));
    }
}
