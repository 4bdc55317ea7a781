using RecipeLint.Advice.Order;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Tests.Support;
using RecipeLint.Recipes.Documents;

namespace RecipeLint.Advice.Tests.Order;

/// <summary>Orders that handbooks and growers agree on come out of the computation, and no order is better than the proposed one.</summary>
public sealed class MixingOrderTests
{
    private static MixingOrder Order(string makes, params Step[] steps) => MixingOrder.Of(Bench.Analyse([Bench.Stock("a.stock.json", makes, steps)]).Stocks.Single());

    private static int Place(MixingOrder order, string id) => order.Places.ToList().FindIndex(p => p.Unit.Step.Id == id);

    /// <summary>Common practice, no source: the chelating agent is dissolved before the ferrous sulfate it has to hold.</summary>
    [Fact]
    public void ChelateBeforeFerrousSulfate()
    {
        var order = Order("1 L", Bench.Pour("800 mL"), Bench.Add("ferrous-sulfate-7h2o", "5 g"), Bench.Add("disodium-edta-2h2o", "6.7 g"), Bench.TopUp("1 L"));
        Assert.True(Place(order, "disodium-edta-2h2o") < Place(order, "ferrous-sulfate-7h2o"));
        Assert.False(order.IsPresentOrder);
        Assert.True(order.Cost.SolidsOnly() < order.PresentCost.SolidsOnly());
        Assert.Contains(order.PresentSolids, s => s.Solid.Origin == SolidOrigin.Rust);
    }

    /// <summary>Common practice, no source: acid first, then the metals. Copper sulfate beside bicarbonate shows why.</summary>
    [Fact]
    public void AcidBeforeMetals()
    {
        var order = Order(
            "1 L",
            Bench.Pour("800 mL"),
            Bench.Add("potassium-bicarbonate", "1 g"),
            Bench.Add("copper-sulfate-5h2o", "1 g"),
            Bench.Add("citric-acid-h2o", "10 g"),
            Bench.TopUp("1 L"));
        Assert.True(Place(order, "citric-acid-h2o") < Place(order, "copper-sulfate-5h2o"));
        Assert.Equal(OrderReasonKind.NotBefore, order.Places[Place(order, "copper-sulfate-5h2o")].Reasons[0].Kind);
        Assert.Equal(0, order.Cost.PermanentMilligrams);
        Assert.True(order.PresentCost.PermanentMilligrams > 10);
    }

    /// <summary>
    /// Strong acid before an EDTA salt turns the agent to white sand; once the metal holds it, the acid does no harm (common practice, no
    /// source: EDTA never into strong acid).
    /// </summary>
    [Fact]
    public void AcidWaitsWhereTheChelateDoesNotBearIt()
    {
        var order = Order(
            "1 L",
            Bench.Pour("800 mL"),
            Bench.Add("nitric-38", "2 mL"),
            Bench.Add("disodium-edta-2h2o", "3 g"),
            Bench.Add("copper-sulfate-5h2o", "2.5 g"),
            Bench.TopUp("1 L"));
        Assert.True(Place(order, "nitric-38") > Place(order, "copper-sulfate-5h2o"));
        Assert.Contains(order.PresentSolids, s => s.Solid is { Permanent: true, Solid.Name: "EDTA acid" });
    }

    /// <summary>Common practice, no source: calcium never onto phosphate; the acid that keeps both dissolved is in before they meet.</summary>
    [Fact]
    public void CalciumNeverOntoPhosphate()
    {
        var order = Order(
            "1 L",
            Bench.Pour("800 mL"),
            Bench.Add("monopotassium-phosphate", "5 g"),
            Bench.Add("calcium-nitrate-4h2o", "20 g"),
            Bench.Add("nitric-38", "5 mL"),
            Bench.TopUp("1 L"));
        Assert.True(Place(order, "calcium-nitrate-4h2o") < Place(order, "monopotassium-phosphate"));
        Assert.True(Place(order, "nitric-38") < Place(order, "monopotassium-phosphate"));
        Assert.Equal(0, order.Cost.PermanentMilligrams);
    }

    /// <summary>Fertigation handbooks (recalled): benzoate and sorbate are dissolved in plenty of water before the acid.</summary>
    [Fact]
    public void PreservativeBeforeTheAcidThatWouldDropIt()
    {
        var order = Order("1 L", Bench.Pour("800 mL"), Bench.Add("citric-acid-h2o", "10 g"), Bench.Add("potassium-sorbate", "1 g"), Bench.TopUp("1 L"));
        Assert.True(Place(order, "potassium-sorbate") < Place(order, "citric-acid-h2o"));
    }

    /// <summary>Fertigation handbooks (recalled): least soluble first, while the water is empty.</summary>
    [Fact]
    public void SlowDissolversEarly()
    {
        var order = Order("1 L", Bench.Pour("800 mL"), Bench.Add("potassium-nitrate", "60 g"), Bench.Add("potassium-sulfate", "40 g"), Bench.TopUp("1 L"));
        Assert.Equal(0, Place(order, "potassium-sulfate"));
        Assert.Contains(order.Places[0].Reasons, r => r.Kind is OrderReasonKind.Slow or OrderReasonKind.NotAfter);
    }

    /// <summary>KNO3: 31.9 g in 100 g of water at 20 °C (CRC Handbook, 98th ed.): 150 g want 470 g of water.</summary>
    [Fact]
    public void TheSmallestStartIsWhatDissolvesEverything()
    {
        var order = Order("1 L", Bench.Pour("200 mL"), Bench.Add("potassium-nitrate", "150 g", "100 %"), Bench.Add("monopotassium-phosphate", "1 g"), Bench.TopUp("1 L"));
        Assert.InRange(order.SmallestStart!.Value.Litres, 0.44, 0.51);
        Assert.Equal(order.SmallestStart.Value.Litres, order.Start.Litres, 1e-9);
        Assert.Equal(0.2, order.StartInFile!.Value.Litres, 1e-9);
    }

    [Fact]
    public void AGoodOrderIsLeftAlone()
    {
        var order = Order("1 L", Bench.Pour("800 mL"), Bench.Add("citric-acid-h2o", "5 g"), Bench.Add("zinc-sulfate-7h2o", "1 g"), Bench.Add("copper-sulfate-5h2o", "1 g"), Bench.TopUp("1 L"));
        Assert.True(order.IsPresentOrder);
        Assert.True(order.IsExact);
        Assert.Equal(order.Cost, order.PresentCost);
    }

    [Fact]
    public void NothingIsMovedPastAPhAdjustment()
    {
        var order = Order(
            "1 L",
            Bench.Pour("800 mL"),
            Bench.Add("zinc-sulfate-7h2o", "1 g"),
            Bench.Adjust(3, "nitric-38"),
            Bench.Add("citric-acid-h2o", "5 g"),
            Bench.Add("copper-sulfate-5h2o", "1 g"),
            Bench.TopUp("1 L"));
        Assert.Equal(1, Place(order, "adjust"));
        Assert.Equal(OrderReasonKind.Fixed, order.Places[1].Reasons.Single().Kind);
    }

    [Fact]
    public void OneAdditionIsNothingToOrder()
    {
        Assert.Contains("potassium nitrate", Order("1 L", Bench.Pour("800 mL"), Bench.Add("potassium-nitrate", "20 g"), Bench.TopUp("1 L")).NothingToOrder!, StringComparison.Ordinal);
        Assert.NotNull(Order("1 L", Bench.Pour("800 mL"), Bench.TopUp("1 L")).NothingToOrder);
    }

    public static TheoryData<string, string[]> Stocks { get; } = new()
    {
        { "ferrous", ["ferrous-sulfate-7h2o 5 g", "disodium-edta-2h2o 6.7 g", "citric-acid-h2o 2 g", "manganese-sulfate-h2o 2 g"] },
        { "calcium and phosphate", ["monopotassium-phosphate 6 g", "calcium-nitrate-4h2o 30 g", "nitric-38 6 mL", "magnesium-sulfate-7h2o 5 g", "potassium-nitrate 20 g"] },
        { "trace", ["copper-sulfate-5h2o 1 g", "borax-10h2o 4 g", "zinc-sulfate-7h2o 2 g", "potassium-sorbate 1 g", "citric-acid-h2o 8 g"] },
        { "what falls out in every order", ["potassium-bicarbonate 4 g", "ferric-chloride-6h2o 3 g", "zinc-sulfate-7h2o 2 g", "monopotassium-phosphate 3 g"] },
        { "past its solubility for a while", ["potassium-sulfate 60 g", "magnesium-sulfate-7h2o 60 g", "potassium-nitrate 80 g", "monopotassium-phosphate 30 g"] },
    };

    /// <summary>Every permutation, played through one by one without the search.</summary>
    [Theory]
    [MemberData(nameof(Stocks))]
    public void NoPermutationBringsAboutLess(string name, string[] additions) => AssertBest(name, additions);

    /// <summary>Eight additions have 40,320 orders; the search weighs them all without following each.</summary>
    [Fact]
    public void NoOrderOfEightAdditionsBringsAboutLess() => AssertBest(
        "eight",
        [
            "ferrous-sulfate-7h2o 3 g", "copper-sulfate-5h2o 0.3 g", "disodium-edta-2h2o 4.2 g", "borax-10h2o 3 g", "citric-acid-h2o 4 g",
            "potassium-sorbate 0.6 g", "zinc-sulfate-7h2o 1 g", "sodium-molybdate-2h2o 0.1 g",
        ]);

    [Fact]
    public void MoreThanEightAreSearchedWithoutAPromiseAndNeverComeOutWorseThanTheFile()
    {
        string[] ids =
        [
            "copper-sulfate-5h2o 0.3 g", "borax-10h2o 3 g", "zinc-sulfate-7h2o 1 g", "sodium-molybdate-2h2o 0.1 g", "manganese-sulfate-h2o 1 g",
            "potassium-nitrate 10 g", "magnesium-sulfate-7h2o 10 g", "monopotassium-phosphate 1 g", "citric-acid-h2o 6 g",
        ];
        var order = Order("1 L", Steps(ids));
        Assert.False(order.IsExact);
        Assert.True(order.Cost <= order.PresentCost);
        Assert.True(Place(order, "citric-acid-h2o") < Place(order, "copper-sulfate-5h2o"));
    }

    private static void AssertBest(string name, string[] additions)
    {
        var stock = Bench.Analyse([Bench.Stock("a.stock.json", "1 L", Steps(additions))]).Stocks.Single();
        var best = MixingOrder.Of(stock);
        Assert.True(best.IsExact, name);
        var units = OrderUnit.Of(stock);
        var problem = new OrderProblem(stock, units, VesselContentsOf(best, stock), best.At.Celsius);
        Assert.Equal(best.Cost, problem.Follow(best.Places.Select(p => units[p.Unit.Index])).Cost);
        foreach (var order in Permutations([.. units]))
        {
            var cost = problem.Follow(order).Cost;
            Assert.True(best.Cost <= cost, $"{name}: {string.Join(", ", order.Select(u => u.Step.Id))} costs {cost}, the proposed order {best.Cost}");
        }
    }

    private static RecipeLint.Analysis.Mixing.VesselContents VesselContentsOf(MixingOrder order, StockFacts stock) =>
        new StartWater(stock, OrderUnit.Of(stock)).Pour(order.Start.Litres);

    private static Step[] Steps(string[] additions) =>
    [
        Bench.Pour("800 mL"),
        .. additions.Select(a => a.Split(' ', 2)).Select(a => Bench.Add(a[0], a[1])),
        Bench.TopUp("1 L"),
    ];

    private static IEnumerable<OrderUnit[]> Permutations(OrderUnit[] units)
    {
        if (units.Length <= 1)
        {
            yield return units;
            yield break;
        }

        for (var i = 0; i < units.Length; i++)
        {
            foreach (var rest in Permutations([.. units.Where((_, k) => k != i)]))
            {
                yield return [units[i], .. rest];
            }
        }
    }
}
