using RecipeLint.Advice.Splitting;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Tests.Support;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Quantities;

namespace RecipeLint.Advice.Tests.Splitting;

/// <summary>Invented recipes of all sorts: whatever is proposed must hold, and whatever is rejected must really fail.</summary>
public sealed class RandomSplitTests
{
    private static readonly string[] _calcium = ["calcium-nitrate-4h2o", "calcium-nitrate-fertiliser", "calcium-chloride-2h2o", "calcium-nitrate-anhydrous"];

    private static readonly string[] _bulk =
    [
        "potassium-nitrate", "magnesium-sulfate-7h2o", "monopotassium-phosphate", "monoammonium-phosphate", "potassium-sulfate", "ammonium-nitrate",
        "magnesium-nitrate-6h2o", "potassium-chloride", "ammonium-sulfate", "phosphoric-75", "nitric-38",
    ];

    private static readonly string[] _iron = ["fe-edta-na-3h2o", "fe-dtpa-hna", "fe-eddha-na", ""];

    private static readonly string[] _trace =
        ["manganese-sulfate-h2o", "zinc-sulfate-7h2o", "copper-sulfate-5h2o", "boric-acid", "sodium-molybdate-2h2o", "manganese-chloride-4h2o", "borax-10h2o"];

    public static TheoryData<int> Seeds => [.. Enumerable.Range(1, 30)];

    [Theory]
    [MemberData(nameof(Seeds))]
    public void ProposalsHoldAndRejectionsAreTrue(int seed)
    {
        var (recipe, request, text) = Recipe(seed);

        var proposal = SplitBench.Split(recipe, request);

        Assert.Null(proposal.Failure);
        Assert.All(proposal.Fewer, SplitBench.AssertReallyFallsOut);
        Assert.All(proposal.Elsewhere, SplitBench.AssertReallyFallsOut);
        if (proposal.Plan is not { } plan)
        {
            Assert.True(proposal.Fewer.Count > 0, text);
            return;
        }

        foreach (var stock in plan.Parts.Concat(proposal.Alternatives.SelectMany(a => a.Parts)).Select(p => p.Stock))
        {
            SplitBench.AssertClear(stock);
        }

        Assert.True(SplitBench.Change(proposal) <= 0.005, text);
        Assert.True(plan.Parts.Count <= Splitter.MostParts, text);
        AssertEverythingIsThereOnce(proposal, text);
        AssertNoFewer(proposal, plan, request, text);
    }

    /// <summary>For small recipes every way to make fewer parts is looked at with the engine alone.</summary>
    private static void AssertNoFewer(SplitProposal proposal, SplitPlan plan, SplitRequest request, string text)
    {
        if (proposal.Units.Count > 6 || proposal.Storage is not { Low.Celsius: 5, High.Celsius: 30 })
        {
            return;
        }

        var dilution = Math.Min(request.Strength?.Dilution ?? 100, plan.Dilution);
        foreach (var groups in Enumerable.Range(1, plan.Parts.Count - 1).SelectMany(k => SplitBench.Partitions(proposal.Units.Count, k)))
        {
            Assert.True(groups.Distinct().Any(g => !SplitBench.IsClear(proposal.Units.Where((_, i) => groups[i] == g), dilution)), text);
        }
    }

    private static void AssertEverythingIsThereOnce(SplitProposal proposal, string text)
    {
        foreach (var ingredient in proposal.Units.SelectMany(u => u.Ingredients))
        {
            var dosed = proposal.Plan!.Parts.Sum(p =>
                p.Stock.Additions.Where(a => a.Substance.Id == ingredient.Substance.Id).Sum(a => a.Mass.Grams) / p.Stock.Volume.Litres / p.Dilution);
            Assert.True(Math.Abs((dosed / ingredient.Mass.GramsPerLitre) - 1) < 0.001, text);
        }
    }

    private static (RecipeFacts Recipe, SplitRequest Request, string Text) Recipe(int seed)
    {
        var random = new Random(seed);
        var doses = new List<(string Id, double Milligrams)> { (Of(_calcium), Between(200, 1100)) };
        foreach (var id in _bulk.OrderBy(_ => random.Next()).Take(random.Next(2, 6)))
        {
            doses.Add((id, Between(50, 700)));
        }

        if (Of(_iron) is { Length: > 0 } iron)
        {
            doses.Add((iron, Between(5, 40)));
        }

        foreach (var id in _trace.OrderBy(_ => random.Next()).Take(random.Next(0, 6)))
        {
            doses.Add((id, Between(0.05, 3)));
        }

        var request = random.Next(3) switch
        {
            0 => new SplitRequest(),
            1 => new SplitRequest { Strength = Dose.OneIn(random.Next(5) * 25 + 50) },
            _ => new SplitRequest { At = new Interval<Temperature>(new Temperature(random.Next(2, 15)), new Temperature(random.Next(20, 40))) },
        };
        var text = $"seed {seed}: " + string.Join(", ", doses.Select(d => FormattableString.Invariant($"{d.Id} {d.Milligrams} mg/L")));
        return (Bench.RecipeOf("1000 L", [.. doses.Select(d => Bench.Direct(d.Id, FormattableString.Invariant($"{d.Milligrams} mg/L")))]), request, text);

        string Of(string[] choices) => choices[random.Next(choices.Length)];

        double Between(double low, double high) => Math.Round(low + (random.NextDouble() * (high - low)), 3);
    }
}
