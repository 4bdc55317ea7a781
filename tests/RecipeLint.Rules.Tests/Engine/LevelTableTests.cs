using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Tests.Folders;

namespace RecipeLint.Rules.Tests.Engine;

/// <summary>The table of levels in DEVELOPERS.md is the one in code.</summary>
public sealed class LevelTableTests
{
    [Fact]
    public void TheTableForContributorsIsTheOneInCode()
    {
        var rows = File.ReadAllLines(Path.Combine(RuleFolder.Repository, "DEVELOPERS.md"));
        var head = Array.FindIndex(rows, r => r.StartsWith("| harm |", StringComparison.Ordinal));
        var odds = Cells(rows[head]).Skip(1).Select(Enum.Parse<Odds>).ToList();
        Assert.Equal(Enum.GetValues<Odds>(), odds);
        var seen = new List<Harm>();
        for (var row = head + 2; rows[row].StartsWith('|'); row++)
        {
            var cells = Cells(rows[row]);
            var harm = Enum.Parse<Harm>(cells[0].Split(':')[0]);
            seen.Add(harm);
            Assert.Equal(odds.Select(o => LevelTable.Of(harm, o).ToString().ToLowerInvariant()), cells.Skip(1));
        }

        Assert.Equal(Enum.GetValues<Harm>().Order(), seen.Order());
    }

    [Fact]
    public void MoreHarmAndMoreCertaintyNeverLowerALevel()
    {
        foreach (var harm in Enum.GetValues<Harm>())
        {
            foreach (var odds in Enum.GetValues<Odds>())
            {
                Assert.All(Enum.GetValues<Harm>().Where(h => h >= harm), h => Assert.True(LevelTable.Of(h, odds) >= LevelTable.Of(harm, odds)));
                Assert.All(Enum.GetValues<Odds>().Where(o => o <= odds), o => Assert.True(LevelTable.Of(harm, o) >= LevelTable.Of(harm, odds)));
            }
        }
    }

    private static List<string> Cells(string row) => [.. row.Trim('|').Split('|').Select(c => c.Trim())];
}
