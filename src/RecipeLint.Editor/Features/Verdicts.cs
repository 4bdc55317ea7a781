using System.Globalization;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Editor.Features;

/// <summary>How many findings of which level there are, in words.</summary>
internal static class Verdicts
{
    public static string Words(IEnumerable<Finding> findings)
    {
        var counts = findings.GroupBy(f => f.Level).OrderByDescending(g => g.Key)
            .Select(g => Many(g.Count(), RecipeLint.Rules.Engine.Words.Of(g.Key))).ToList();
        return counts.Count == 0 ? "no finding" : string.Join(", ", counts);
    }

    private static string Many(int count, string what) =>
        string.Create(CultureInfo.InvariantCulture, $"{count} {what}{(count == 1 ? "" : "s")}");
}
