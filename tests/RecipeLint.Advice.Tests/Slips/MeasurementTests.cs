using RecipeLint.Advice.Slips;
using RecipeLint.Advice.Tests.Told;
using RecipeLint.Analysis.Readings;
using RecipeLint.Analysis.Tests.Support;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Advice.Tests.Slips;

/// <summary>What is read of a measurement or said of one that cannot be used, and the tables slips are made from.</summary>
public sealed class MeasurementTests
{
    private static readonly string[] _texts =
    [
        "pH 6.9", "ph: 6.9", "pH=6.9", "pH 6.9 ± 0.1", "pH 0", "pH 14", "pH 14.01", "pH -0.1", "pH 5..6", "pH", "pHs 5", "phosphate 5",
        "EC 1.8", "EC 1.8 mS/cm", "EC 1.8 mS/cm at 1:100", "EC 1.8 mS/cm AT 1:100", "EC 1.8 mS/cm ± 2 % at 10 mL/L", "EC 0 mS/cm", "EC -1 mS/cm", "EC 0.1 mS/cm at 1:1",
        "conductivity 550 µS/cm at 1:1000", "conductivity", "1.8 mS/cm at 1:100", "1.8 mS/cm", "1.09 kg/L", "1.09 g/mL at 1:1", "at 1:100",
        "EC 1.8 mS/cm at noon", "EC 1.8 mS/cm at 0 mL/L", "EC 1.8 mS/cm at 1:0.5", "EC 1.8 mS/cm at 2 L/L", "density 1.12 g/mL", "density 0 g/mL", "density: 1.12 g/mL ± 0.01 g/mL",
        "weight 1.12 kg/L", "weight 1.12 kg", "weighs 2.2 kg", "weighs 2200 g", "weighs 2.25 kg", "1 L weighs 1.12 kg", "1 L weighs 1 kg", "1 L weighs 1120 g ± 2 g", "1 L weighs 1.12 kg ± 1 %",
        "100 mL weighs 109 g", "100 mL weigh 109 g", "100 mL weight: 109 g", "1 L weighsit 3 g", "1 L weighs", "a lot weighs 3 g", "0 L weighs 3 g", "1 L weighs 0 g", "1 L weighs 1..2 kg", "weighs 5 mL",
        "TDS 800", "800 ppm", "EC 1200 ppm", "tds 3 ppm", "pH 5 EC 2 mS/cm", "EC 2 mS/cm pH 5", "pH 5 weighs 3", "pH 6 conductivity 3", "warm", "", "  ", "5", "5 mL", " pH 6.9 ",
    ];

    [Fact]
    public void MeasurementsAreReadOrSaidToBeNone()
    {
        var text = new ToldText();
        foreach (var one in _texts)
        {
            var (read, error) = Measurement.Read(one, new Volume(2));
            text.Line($"'{one}': {(read is null ? error : FormattableString.Invariant($"{read.Reading.Kind} 1:{read.Reading.Dilution} {read.Value:G6} ± {read.HalfWidth:G6} of {read.Filled?.Litres:G4} L, '{read.Text}'"))}");
        }

        text.Hold("slips-measurements");
    }

    [Fact]
    public void NeighboursOnTheShelfAreThese()
    {
        var text = new ToldText();
        foreach (var substance in Chemistry.Substances.SubstanceCatalogue.BuiltIn.Substances.OrderBy(s => s.Id, StringComparer.Ordinal))
        {
            if (ShelfNeighbours.Of(substance.Id).ToList() is { Count: > 0 } near)
            {
                text.Line($"{substance.Id}: {string.Join(", ", near)}");
            }
        }

        text.Hold("slips-shelf-neighbours");
        Assert.Empty(ShelfNeighbours.Of("stardust"));
    }

    [Fact]
    public void PortionsGrowInTheirOwnDimension()
    {
        var addition = ToldShop.Stock("b").Additions[0];
        foreach (var (portion, twice, isFixed) in new (Portion, Portion, bool)[]
        {
            (new Portion.ByMass(new Mass(3)), new Portion.ByMass(new Mass(6)), false),
            (new Portion.ByVolume(new Volume(3)), new Portion.ByVolume(new Volume(6)), false),
            (new Portion.ByDrops(3), new Portion.ByDrops(6), false),
            (new Portion.ByAmount(new Amount(3)), new Portion.ByAmount(new Amount(6)), false),
            (new Portion.PerLitreMass(new MassConcentration(3)), new Portion.PerLitreMass(new MassConcentration(6)), true),
            (new Portion.PerLitreAmount(new AmountConcentration(3)), new Portion.PerLitreAmount(new AmountConcentration(6)), true),
            (new Portion.PerLitreVolume(new Dose(3)), new Portion.PerLitreVolume(new Dose(6)), true),
        })
        {
            Assert.Equal(twice, portion.Times(2));
            Assert.Equal(isFixed ? new Portion.ByMass(addition.Mass) : portion, portion.Fixed(addition));
        }
    }

    /// <summary>The hardest water from 1 mmol/L of hydrogen carbonate on that a file describes, by file where two are as hard; else an ordinary one.</summary>
    [Theory]
    [InlineData("a 0.0009999", null)]
    [InlineData("a 0.001", "a")]
    [InlineData("a 0.002;b 0.003", "b")]
    [InlineData("b 0.003;a 0.003", "a")]
    [InlineData("b 0.003;a 0.002", "b")]
    [InlineData("", null)]
    public void TapWaterIsTheHardestOfTheShop(string waters, string? expected)
    {
        var workspace = ToldShop.Workspace with
        {
            Waters = [Water("", 0.009), .. waters.Split(';', StringSplitOptions.RemoveEmptyEntries).Select(w => Water(w.Split(' ')[0], double.Parse(w.Split(' ')[1], System.Globalization.CultureInfo.InvariantCulture)))],
        };
        var (water, inside) = TapWater.Of(workspace);
        Assert.Equal((expected ?? "medium hard tap water", expected is null), (water.Name, water.Assumed));
        Assert.Equal((water.Name, expected), (water.Reference.Name, water.Reference.File));
        Assert.Equal(workspace.Waters.Count + (expected is null ? 1 : 0), inside.Waters.Count);
        if (expected is null)
        {
            Assert.Equal(
                ["Ca+2 0.002", "Mg+2 0.0005", "Na+ 0.001", "CO3-2 0.004", "SO4-2 0.0005", "Cl- 0.001"],
                inside.Waters[^1].Values.Select(v => FormattableString.Invariant($"{v.Component} {v.Concentration.Low.MolesPerLitre}")));
            Assert.All(inside.Waters[^1].Values, v => Assert.Equal(v.Concentration.Low, v.Concentration.High));
        }
    }

    private static WaterDocument Water(string name, double carbonate) => new()
    {
        File = name,
        Name = name,
        Values =
        [
            new WaterValue("Ca+2", new Located<string>("Ca", Place.Whole(name)), new(new(0.009), new(0.009))),
            new WaterValue("CO3-2", new Located<string>("HCO3", Place.Whole(name)), new(new(carbonate / 2), new(carbonate))),
        ],
    };

    /// <summary>Of what a shop has the weighing with the smallest relative error; of two alike the larger; a jug fills too badly to count.</summary>
    [Theory]
    [InlineData("desk", "flask-1000", "flask-1000 on desk")]
    [InlineData("desk", "pipette-10", "pipette-10 on desk")]
    [InlineData("desk", "jug-2", "batch on desk")]
    [InlineData("fine", "pipette-10", "pipette-10 on fine")]
    [InlineData("fine", "flask-1000", "nothing")]
    [InlineData("floor desk fine", "flask-1000 pipette-10", "flask-1000 on desk")]
    [InlineData("floor desk fine", "pipette-10", "pipette-10 on fine")]
    [InlineData("desk", "", "batch on desk")]
    public void BottlesAreWeighedWhereItTellsMost(string scales, string measures, string expected)
    {
        var all = ToldShop.Workspace.SettingsFor("b.stock.json");
        var shop = all with
        {
            Scales = [.. all.Scales.Where(s => scales.Split(' ').Contains(s.Name))],
            Measures = [.. all.Measures.Where(m => measures.Split(' ').Contains(m.Name))],
            Vessels = [],
        };
        var stock = Bench.Analyse([Bench.Stock("a.stock.json", "1.5 L", Bench.Add("potassium-nitrate", "20 g"), Bench.TopUp("1.5 L"))], null, shop).Stocks.Single();
        var best = BottleWeighing.Best(stock, new Instruments(shop), 1.01);
        Assert.Equal(expected, best is null ? "nothing" : $"{best.With?.Name ?? "batch"} on {best.Scale.Name}");
    }

    /// <summary>Thirty lines are looked at; one more is told of.</summary>
    [Theory]
    [InlineData(30, 0)]
    [InlineData(31, 1)]
    public void SlipsAreLookedForInThirtyLines(int lines, int told)
    {
        Step[] steps = [.. Enumerable.Range(1, lines).Select(i => Bench.Add("potassium-nitrate", $"{i} g", id: $"kn-{i}")), Bench.TopUp("10 L")];
        var workspace = ToldShop.Workspace with { Stocks = [Bench.Stock("a.stock.json", "10 L", steps)] };
        var stock = Analysis.Workspaces.Analyzer.AnalyseStock(workspace, "a.stock.json")!;
        Assert.Equal(told, SlipList.LeftOut(stock).Count);
        Assert.Equal(
            told == 0 ? [] : ["This stock has 31 lines to weigh; slips are looked for in the first 30 of them."], SlipList.LeftOut(stock));
        if (told > 0)
        {
            Assert.Equal(30, SlipList.Of(workspace, stock).Count(s => s.Kind == SlipKind.LeftOut));
            Assert.DoesNotContain(SlipList.Of(workspace, stock), s => s.Kind == SlipKind.Exchanged);
        }
    }
}
