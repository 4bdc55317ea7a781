using RecipeLint.Advice.Splitting;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Analysis.Tests.Support;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Advice.Tests.Splitting;

/// <summary>Small invented recipes, each for one thing a split must do.</summary>
public sealed class SplitterTests
{
    private static readonly DoseEntry[] _simple =
    [
        Bench.Direct("calcium-nitrate-4h2o", "1 g/L"),
        Bench.Direct("potassium-nitrate", "0.5 g/L"),
        Bench.Direct("magnesium-sulfate-7h2o", "0.5 g/L"),
        Bench.Direct("monopotassium-phosphate", "0.25 g/L"),
    ];

    [Fact]
    public void SaltsThatStayClearTogetherAreOnePart()
    {
        var proposal = SplitBench.Split("100 L", Bench.Direct("calcium-nitrate-4h2o", "0.8 g/L"), Bench.Direct("potassium-nitrate", "0.4 g/L"));

        var part = Assert.Single(proposal.Plan!.Parts);
        SplitBench.AssertClear(part.Stock);
        Assert.Empty(proposal.Fewer);
    }

    [Fact]
    public void AWeakerStrengthCanDoWithOnePart()
    {
        var request = new SplitRequest { Strength = Dose.OneIn(2) };

        Assert.Single(SplitBench.Split(Bench.RecipeOf("100 L", _simple), request).Plan!.Parts);
        Assert.Equal(2, SplitBench.Split("100 L", _simple).Plan!.Parts.Count);
    }

    [Fact]
    public void AnAcidMoreCanClearWhatWasCloudyWithoutIt()
    {
        var calcium = Bench.Direct("calcium-nitrate-4h2o", "0.2 g/L");
        var phosphate = Bench.Direct("monopotassium-phosphate", "0.2 g/L");
        var request = new SplitRequest { Parts = 1, Strength = Dose.OneIn(100) };

        var without = SplitBench.Split(Bench.RecipeOf("100 L", calcium, phosphate), request);
        var with = SplitBench.Split(Bench.RecipeOf("100 L", calcium, phosphate, Bench.Direct("nitric-38", "1 mL/L")), request);

        Assert.True(without.Plan is null || without.Plan.Dilution < 100);
        Assert.Equal(100, with.Plan!.Dilution, 9);
        SplitBench.AssertClear(with.Plan.Parts[0].Stock);
    }

    [Fact]
    public void TheNumberOfPartsCanBeAskedFor()
    {
        var proposal = SplitBench.Split(Bench.RecipeOf("100 L", _simple), new SplitRequest { Parts = 3 });

        Assert.Equal(3, proposal.Plan!.Parts.Count);
        Assert.All(proposal.Plan.Parts, p => SplitBench.AssertClear(p.Stock));
    }

    [Fact]
    public void AStrengthOutOfReachGivesTheStrongestUsualOneThatWorks()
    {
        var proposal = SplitBench.Split(Bench.RecipeOf("100 L", _simple), new SplitRequest { Strength = Dose.OneIn(1000) });

        Assert.Equal(1000, proposal.WantedDilution, 9);
        Assert.InRange(proposal.Plan!.Dilution, 100, 999);
        Assert.All(proposal.Plan.Parts, p => SplitBench.AssertClear(p.Stock));
    }

    [Fact]
    public void AWeightIsTakenOnAScaleThatCarriesTheVesselToo()
    {
        var place = Place.Whole("s");
        var shop = new ShopSettings
        {
            Scales = [new Scale("bench", place, new Mass(3000), new Mass(0.1), null, null), new Scale("pocket", place, new Mass(200), new Mass(0.01), null, null)],
            Vessels = [new Vessel("boat", place, null, new Mass(85))],
        };
        var recipe = Bench.Analyse([], Bench.Recipe("100 L", FinalVolumeMeaning.MadeUp, Bench.Direct("calcium-nitrate-4h2o", "150 mg/L")), shop).Recipes.Single();

        string Scale(double dilution)
        {
            var proposal = SplitBench.Split(recipe, new SplitRequest { Strength = Dose.OneIn(dilution), Batch = new Volume(1) }, shop);
            return proposal.Plan!.Parts[0].Stock.Stock.Steps.OfType<AddStep>().Single().With!.Value;
        }

        Assert.Equal("bench", Scale(1000));
        Assert.Equal("pocket", Scale(100));
    }

    [Fact]
    public void ColderStorageMakesThePartsWeaker()
    {
        var facts = Bench.RecipeOf("100 L", Bench.Direct("potassium-nitrate", "0.9 g/L"), Bench.Direct("calcium-nitrate-4h2o", "0.1 g/L"));

        double At(double low) => SplitBench.Split(facts, new SplitRequest { At = new Interval<Temperature>(new Temperature(low), new Temperature(30)) }).Plan!.Dilution;

        Assert.True(At(20) > At(2));
    }

    [Fact]
    public void WhatFallsOutByItselfForbidsEverySplit()
    {
        var proposal = SplitBench.Split("100 L", Bench.Direct("calcium-sulfate-2h2o", "0.5 g/L"), Bench.Direct("potassium-nitrate", "0.5 g/L"));

        Assert.Null(proposal.Plan);
        var rejected = Assert.Single(proposal.Fewer);
        SplitBench.AssertReallyFallsOut(rejected);
        var deposit = Assert.IsType<Obstacle.Deposit>(rejected.Obstacles[0]);
        Assert.Equal("Gypsum", deposit.Solid.Name);
        Assert.Equal(["Ca+2", "SO4-2"], deposit.Ions.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void WaterThatCloudsThePartsIsNamedAndReplaced()
    {
        var hard = Waters.Tap();
        var recipe = Bench.Recipe("100 L", FinalVolumeMeaning.MadeUp, Bench.Direct("monopotassium-phosphate", "0.2 g/L"), Bench.Direct("dipotassium-phosphate", "0.3 g/L")) with
        {
            Water = new Located<WaterReference>(new WaterReference("tap", "tap.water.json"), Place.Whole("tank.recipe.json")),
        };
        var facts = Bench.Analyse([], recipe, null, hard).Recipes.Single();

        var proposal = Splitter.Of(facts, SplitBench.Workspace(null, hard), new SplitRequest());

        Assert.NotNull(proposal.Plan);
        Assert.True(proposal.WaterReplaced);
        Assert.Equal("distilled", proposal.Water);
        Assert.Contains(proposal.WithRecipeWater, f => f.Obstacles.OfType<Obstacle.Deposit>().Any(d => d.Ions.Contains("Ca+2")));
    }

    [Fact]
    public void TracesBelowWeighingGetAStockOfTheirOwn()
    {
        var shop = new ShopSettings { Scales = [new Scale("pocket", Place.Whole("s"), new Mass(500), new Mass(0.01), null, null)] };
        DoseEntry[] doses = [.. _simple, Bench.Direct("copper-sulfate-5h2o", "0.2 mg/L"), Bench.Direct("boric-acid", "2 mg/L")];

        var without = SplitBench.Split("1000 L", doses);
        var weighed = Bench.Analyse([], Bench.Recipe("100 L", FinalVolumeMeaning.MadeUp, doses), shop).Recipes.Single();
        var with = SplitBench.Split(weighed, new SplitRequest(), shop);

        Assert.Equal(2, without.Plan!.Parts.Count);
        Assert.Equal(3, with.Plan!.Parts.Count);
        var trace = with.Plan.Parts[^1];
        Assert.True(trace.IsTrace);
        Assert.True(trace.Dilution > with.Plan.Dilution);
        Assert.Contains(with.Elsewhere, e => e.Obstacles.Any(o => o is Obstacle.TooLittleToWeigh));
        Assert.All(with.Plan.Parts, p => Assert.All(p.Stock.Additions, a => Assert.Equal(0, Math.IEEERemainder(a.Mass.Grams, 0.01), 6)));
    }

    [Fact]
    public void OrganicMatterStaysWithAPreservativeThatWorks()
    {
        DoseEntry[] doses = [.. _simple, Bench.Direct("zinc-sulfate-7h2o", "0.5 mg/L"), Bench.Direct("citric-acid-h2o", "10 mg/L"), Bench.Direct("potassium-sorbate", "2 mg/L")];

        var proposal = SplitBench.Split("100 L", doses);

        var keeper = proposal.Plan!.Parts.Single(p => p.Stock.Additions.Any(a => a.Substance.IsPreservative)).Stock;
        Assert.Contains(keeper.Additions, a => a.Substance.FeedsMicrobes);
        var acid = Assert.Single(keeper.Chemistry.Mixing.Preservatives);
        Assert.True(acid.Undissociated.GramsPerLitre >= 0.2);
    }

    [Fact]
    public void TheSameRecipeGivesTheSamePartsEveryTimeAndInAnyOrder()
    {
        static string Text(SplitProposal proposal) => string.Join('|', proposal.Plan!.Parts.Select(p =>
            $"{p.Name} {p.Dilution} " + string.Join(',', p.Stock.Additions.Select(a => FormattableString.Invariant($"{a.Substance.Id} {a.Mass.Grams:R}")))));

        var first = Text(SplitBench.Split("100 L", _simple));

        Assert.Equal(first, Text(SplitBench.Split("100 L", _simple)));
        Assert.Equal(first, Text(SplitBench.Split("100 L", [.. _simple.Reverse()])));
    }

    [Fact]
    public void OneStockWithEverythingComesApartToo()
    {
        var stock = Bench.Stock(
            "all.stock.json",
            "2 L",
            Bench.Add("calcium-nitrate-4h2o", "200 g"),
            Bench.Add("magnesium-sulfate-7h2o", "100 g"),
            Bench.Add("monopotassium-phosphate", "50 g")) with
        {
            Dose = new Located<Dose>(Dose.OneIn(100), Place.Whole("all.stock.json")),
        };
        var workspace = SplitBench.Workspace() with { Stocks = [stock] };

        var proposal = Splitter.Of(Analyzer.AnalyseStock(workspace, "all.stock.json")!, workspace, new SplitRequest());

        Assert.Equal(2, proposal.Plan!.Parts.Count);
        Assert.InRange(SplitBench.Change(proposal), 0, 0.005);
        Assert.Equal(200, proposal.Final!.FinalVolume.Litres, 9);
    }

    [Fact]
    public void EveryRejectedPartOfTheSearchReallyFails()
    {
        var proposal = SplitBench.Split(Bench.RecipeOf("100 L", _simple), new SplitRequest { ListRejected = true });

        Assert.NotEmpty(proposal.Rejected);
        Assert.All(proposal.Rejected, SplitBench.AssertReallyFallsOut);
        Assert.Contains(proposal.Rejected, r => r.Together.Count == 4);
    }

    [Fact]
    public void ASaltStaysClearUpToTheDoseThatIsStated()
    {
        var part = SplitBench.Split("100 L", _simple).Plan!.Parts.First(p => p.ClearUpTo is not null);
        var celsius = part.StoppedAt!.Value.Celsius;
        var mix = part.Stock.Chemistry.Mix;

        Assert.True(At(0.99).IsClear);
        Assert.Contains(part.StoppedBy!, At(1.02).Against);

        DepositJudgement At(double strength) =>
            DepositJudgement.Of(StateSolver.Solve(mix.Times(strength * part.ClearUpTo!.Value / part.Dilution), celsius), DepositLimits.Default);
    }
}
