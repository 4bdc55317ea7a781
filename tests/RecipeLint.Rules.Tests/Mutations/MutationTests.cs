using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Tests.Mutations;

/// <summary>
/// The mutation study: single mistakes made by rule in clean recipes, and how many of them the rules catch. Tables/mutations.md has the
/// score by kind of slip, every miss with its reason and every mutant left out as harmless.
/// </summary>
public sealed class MutationTests
{
    [Fact]
    public void TheCleanShopsAreSilent()
    {
        foreach (var shop in CleanShop.All)
        {
            foreach (var facts in new[] { shop.Facts, MutationStudy.WithoutTargets(shop.Facts) })
            {
                var result = CleanShop.Judge(facts);
                Assert.Empty(result.Faults);
                Assert.Empty(result.Findings.Where(f => f.Level >= Level.Warning).Select(f => $"{f.Place} {f.Rule.Name}: {f.Message}"));
            }
        }
    }

    [Fact]
    public void MutantsAreManyAndEachIsNamedOnce()
    {
        Assert.InRange(MutationStudy.Harmful.Count, 300, 2000);
        Assert.InRange(MutationStudy.Harmful.Select(o => o.Mutant.Operator).Distinct().Count(), 40, 200);
        Assert.Equal(MutationStudy.Outcomes.Count, MutationStudy.Outcomes.Select(o => o.Mutant.Key).Distinct().Count());
    }

    [Fact]
    public void NinetyFivePercentAreCaught() => AssertScore(MutationStudy.Harmful.Count(o => o.WithTargets is not null), MutationStudy.Harmful.Count, 0.95);

    [Fact]
    public void NinetyPercentAreStoppedByAPlainCheck() => AssertScore(MutationTable.Stopped, MutationStudy.Harmful.Count, 0.9);

    /// <summary>A recipe that states no targets can only be held against ranges and ratios, so a shift inside them escapes.</summary>
    [Fact]
    public void MostAreCaughtWithoutTargets() =>
        AssertScore(MutationStudy.HarmfulWithoutTargets.Count(o => o.WithoutTargets is not null), MutationStudy.HarmfulWithoutTargets.Count, 0.91);

    [Fact]
    public void EveryMissIsArgued()
    {
        foreach (var (part, missed) in new[] { ("missed", MutationTable.Missed), ("missedWithoutTargets", MutationTable.MissedWithoutTargets) })
        {
            var reasons = MutationTable.Reasons(part);
            var silent = missed.Where(o => MutationTable.KeyOf(o, reasons) is null).Select(o => $"{o.Mutant.Key} ({o.Harm})");
            Assert.True(!silent.Any(), $"No reason under '{part}' for:\n{string.Join('\n', silent)}");
            var used = missed.Select(o => MutationTable.KeyOf(o, reasons)!).ToHashSet();
            Assert.True(reasons.Keys.All(used.Contains), $"Caught by now, or gone: {string.Join(", ", reasons.Keys.Where(k => !used.Contains(k)))}");
            Assert.All(reasons.Values, r => Assert.True(r.Length > 20 && r.EndsWith('.'), r));
        }
    }

    [Fact]
    public void TheTableIsUpToDate()
    {
        var text = MutationTable.Write();
        if (Environment.GetEnvironmentVariable("RECIPELINT_UPDATE") == "1")
        {
            File.WriteAllText(MutationTable.File, text);
        }

        Assert.Equal(text, File.ReadAllText(MutationTable.File).ReplaceLineEndings("\n"));
    }

    private static void AssertScore(int caught, int of, double least) => Assert.True(caught >= least * of, MutationTable.Score(caught, of));
}
