using Xunit.Abstractions;

namespace RecipeLint.Advice.Tests.Diagnosis;

public sealed class DiagnosisCaseTests(ITestOutputHelper output)
{
    [Fact]
    public void TextbookDescriptionsLeadToTheirDeposit() => Score(TextbookCases.All, leastFirst: 0.85, allWithin: 3);

    [Fact]
    public void HeldOutDescriptionsLeadToTheirDeposit() => Score(HoldOutCases.All, leastFirst: 0.85, allWithin: 3);

    [Fact]
    public void EverydayWordsLeadToTheirDeposit() => Score(EverydayCases.All, leastFirst: 0.85, allWithin: 3);

    /// <summary>Never tuned for: what the ranking is worth on words that nobody has seen.</summary>
    [Fact]
    public void WordsFromTheShedLeadToTheirDeposit() => Score(ShedCases.All, leastFirst: 0.85, allWithin: 3);

    [Fact]
    public void WhatGrowersTypeLeadsToTheirDeposit() => Score(GrowerCases.All, leastFirst: 0.85, allWithin: 3);

    [Fact]
    public void WhatFreshEyesToldLeadsToItsCause() => Score(FreshEyesCases.All, leastFirst: 0.9, allWithin: 2);

    private void Score(IReadOnlyList<DiagnosisCase> cases, double leastFirst, int allWithin)
    {
        var ranked = cases.Select(c => (Case: c, Rank: c.Rank())).ToList();
        foreach (var (missed, rank) in ranked.Where(r => r.Rank != 1))
        {
            var first = missed.Diagnose().Causes.Take(3).Select(c => $"{c.Cause.Id} {c.Share:0.00}");
            output.WriteLine($"{rank,3}  {missed}  ->  {string.Join(", ", first)} [{string.Join(", ", missed.Diagnose().Observation.Signs.Select(s => s.Say))}; unknown {string.Join(", ", missed.Diagnose().Observation.Unknown)}]");
        }

        var firsts = ranked.Count(r => r.Rank == 1);
        output.WriteLine($"{firsts} of {cases.Count} first ({100.0 * firsts / cases.Count:0} %); worst rank {ranked.Max(r => r.Rank)}.");
        Assert.All(ranked, r => Assert.True(r.Rank <= allWithin, $"rank {r.Rank}: {r.Case}"));
        Assert.True(firsts >= leastFirst * cases.Count, $"{firsts} of {cases.Count} first");
    }
}
