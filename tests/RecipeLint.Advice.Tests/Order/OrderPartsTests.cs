using RecipeLint.Advice.Order;
using RecipeLint.Advice.Tests.Told;
using RecipeLint.Analysis.Tests.Support;
using RecipeLint.Recipes.Documents;

namespace RecipeLint.Advice.Tests.Order;

/// <summary>What an order is weighed by, what counts as what in it, and the water it begins with.</summary>
public sealed class OrderPartsTests
{
    /// <summary>Part by part: whatever comes behind, the first part that differs decides.</summary>
    [Fact]
    public void CostsAreComparedPartByPart()
    {
        OrderCost[] rising =
        [
            new(0, 0, 0, 0, 0, 0), new(0, 0, 0, 0, 0, 1), new(0, 0, 0, 0, 1, 0), new(0, 0, 0, 1, 0, 0), new(0, 0, 1, 0, 0, 0), new(0, 1, 0, 0, 0, 0), new(1, 0, 0, 0, 0, 0),
        ];
        for (var i = 0; i < rising.Length; i++)
        {
            for (var j = 0; j < rising.Length; j++)
            {
                var (a, b) = (rising[i], rising[j]);
                Assert.Equal(i.CompareTo(j), a.CompareTo(b));
                Assert.Equal(i < j, a < b);
                Assert.Equal(i > j, a > b);
                Assert.Equal(i <= j, a <= b);
                Assert.Equal(i >= j, a >= b);
            }
        }

        Assert.Equal(new OrderCost(11, 22, 33, 44, 55, 66), new OrderCost(1, 2, 3, 4, 5, 6) + new OrderCost(10, 20, 30, 40, 50, 60));
        Assert.Equal(new OrderCost(1, 2, 3, 4, 0, 0), new OrderCost(1, 2, 3, 4, 5, 6).SolidsOnly());
    }

    [Theory]
    [InlineData("ferrous-sulfate-7h2o", "metal partner salt")]
    [InlineData("copper-sulfate-5h2o", "metal partner salt")]
    [InlineData("disodium-edta-2h2o", "agent salt")]
    [InlineData("citric-acid-h2o", "agent partner acid salt")]
    [InlineData("fe-dtpa-hna", "salt")]
    [InlineData("fe-dtpa-liquid-6", "")]
    [InlineData("calcium-nitrate-4h2o", "calcium salt")]
    [InlineData("monopotassium-phosphate", "partner salt")]
    [InlineData("nitric-38", "acid")]
    [InlineData("potassium-nitrate", "salt")]
    [InlineData("monocalcium-phosphate-h2o", "calcium partner salt")]
    public void UnitsAreWhatTheyBring(string substance, string expected)
    {
        var unit = OrderUnit.Of(Bench.Analyse([Bench.Stock("a.stock.json", "1 L", Bench.Add(substance, "5 g"), Bench.TopUp("1 L"))]).Stocks.Single()).Single();
        var said = new[]
        {
            (unit.BringsMetal, "metal"), (unit.BringsAgent, "agent"), (unit.BringsCalcium, "calcium"), (unit.BringsCalciumsPartner, "partner"), (unit.IsAcid, "acid"), (unit.Salt is not null, "salt"),
        };
        Assert.Equal(expected, string.Join(' ', said.Where(s => s.Item1).Select(s => s.Item2)));
    }

    /// <summary>A part of another stock is no weighed salt, and what nothing is known of does not move.</summary>
    [Fact]
    public void UnitsAreAdditionsPartsAndAdjustmentsInStages()
    {
        var units = OrderUnit.Of(ToldShop.Stock("set"));
        Assert.Equal(
            ["0 dipotassium-phosphate 0", "1 potassium-nitrate 0", "2 kn-2 0", "3 mo 0", "4 adjust 1"], units.Select(u => $"{u.Index} {u.Step.Id} {u.Stage}"));
        Assert.Equal(["dipotassium hydrogen phosphate", "potassium nitrate", "potassium nitrate", "mo.stock.json", "phosphoric acid 75 %"], units.Select(u => u.Name));
        Assert.Null(units[3].Salt);
        Assert.NotNull(units[2].Salt);
        Assert.Empty(units[4].Additions);
        Assert.Equal(["0", "1", "2", "2", "2"], OrderUnit.Of(ToldShop.Stock("stage")).Select(u => $"{u.Stage}").Order(StringComparer.Ordinal));
    }

    /// <summary>0.3 L of one water and 0.1 L of another are poured in their proportion; what tops up counts only where nothing is poured.</summary>
    [Fact]
    public void WatersAreBegunWithAsTheFilePoursThem()
    {
        Step[] poured = [Bench.Pour("300 mL", "distilled"), Bench.Pour("100 mL", "hard.water.json"), Bench.Add("potassium-nitrate", "20 g"), Bench.TopUp("1 L", "distilled")];
        var water = Start([.. poured]);
        Assert.Equal(0.4, water.InFile!.Value, 9);
        Assert.Equal(1, water.Mark);
        Assert.Equal(0.2, water.Pour(0.2).Litres, 4);
        Assert.Equal(0.25, Start([Bench.Pour("100 mL", "hard.water.json"), Bench.Add("potassium-nitrate", "20 g"), Bench.TopUp("1 L")]).Pour(0.25).Litres, 4);
        var topped = Start([Bench.Add("potassium-nitrate", "20 g"), Bench.TopUp("2 L", "hard.water.json")]);
        Assert.Equal((null, 2.0), (topped.InFile, topped.Mark));
        Assert.Contains(topped.Pour(1).Moles, m => m.Key == "Ca+2" && m.Value > 0.002);
        Assert.Contains(water.Pour(1).Moles, m => m.Key == "Ca+2" && m.Value is > 0.0005 and < 0.0006);
        var dry = Start([Bench.Add("potassium-nitrate", "20 g")]);
        Assert.Equal((null, 1.0), (dry.InFile, dry.Mark));
        Assert.Empty(dry.Pour(0.5).Moles);
        Assert.Equal(0.5, dry.Pour(0.5).Litres, 4);
    }

    /// <summary>A thousandth: 1 L less what 20 g take up and the room of 3 %; a tenth at least.</summary>
    [Fact]
    public void RoomIsLeftForTheLastOfTheWater()
    {
        var water = Start([Bench.Add("potassium-nitrate", "20 g"), Bench.TopUp("1 L")]);
        Assert.Equal(0.03, water.Most(0) - water.Most(0.03), 9);
        Assert.InRange(water.Most(0), 0.985, 0.995);
        Assert.Equal(0.1, water.Most(5), 9);
    }

    /// <summary>Thirty additions are bits of a number; one more and no order is looked for.</summary>
    [Fact]
    public void MoreThanThirtyAdditionsAreNotOrdered()
    {
        Step[] steps = [.. Enumerable.Range(1, 31).Select(i => Bench.Add("potassium-nitrate", $"{i} g", id: $"kn-{i}")), Bench.TopUp("10 L")];
        var order = MixingOrder.Of(Bench.Analyse([Bench.Stock("a.stock.json", "10 L", steps)]).Stocks.Single());
        Assert.Equal("More than 30 things go in; no order is looked for.", order.NothingToOrder);
        Assert.Empty(order.Places);
        Assert.Null(OrderedStock.Of(order));
        Assert.Equal(
            "Nothing goes in that could be ordered.", MixingOrder.Of(Bench.Analyse([Bench.Stock("a.stock.json", "1 L", Bench.TopUp("1 L"))]).Stocks.Single()).NothingToOrder);
    }

    private static StartWater Start(Step[] steps)
    {
        var workspace = ToldShop.Workspace with { Stocks = [Bench.Stock("a.stock.json", "1 L", steps)] };
        var stock = Analysis.Workspaces.Analyzer.AnalyseStock(workspace, "a.stock.json")!;
        return new StartWater(stock, OrderUnit.Of(stock));
    }
}
