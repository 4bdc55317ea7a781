using RecipeLint.Advice.Slips;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Readings;
using RecipeLint.Analysis.Tests.Support;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes;
using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Advice.Tests.Slips;

public sealed class SlipTests
{
    private const string PartB = "monopotassium-phosphate 17.6 g, magnesium-sulfate-7h2o 35.5 g, potassium-nitrate 22 g in 1 L";
    private const string Trace = "citric-acid-h2o 2 g, manganese-sulfate-h2o 1.5 g, zinc-sulfate-7h2o 0.7 g, copper-sulfate-5h2o 0.2 g, boric-acid 1.7 g in 1 L";
    private const string Sour = "vinegar-5 40 mL, manganese-sulfate-h2o 2 g, zinc-sulfate-7h2o 1 g in 1 L";

    /// <summary>A shop with good instruments, so that most slips can show.</summary>
    private static readonly ShopSettings Shop = new()
    {
        Scales = [new Scale("bench", Place.Whole("recipelint.json"), new Mass(3000), new Mass(0.01), null, null)],
        Measures = [new Measure("flask-1000", Place.Whole("recipelint.json"), MeasureKind.Flask, new Volume(1), null, null), new Measure("pipette-10", Place.Whole("recipelint.json"), MeasureKind.Pipette, new Volume(0.01), null, null)],
    };

    public static TheoryData<string, string> Planted()
    {
        var data = new TheoryData<string, string>();
        foreach (var mix in new[] { PartB, Trace, Sour })
        {
            var (workspace, stock) = Bottle(mix);
            foreach (var slip in SlipList.Of(workspace, stock))
            {
                data.Add(mix, slip.Id);
            }
        }

        return data;
    }

    /// <summary>Plant each slip, compute what the meters would read, and look for it.</summary>
    [Theory]
    [MemberData(nameof(Planted))]
    public void APlantedSlipIsFoundFromItsReadingsOrTheBottleReadsAsItShould(string mix, string id)
    {
        var (workspace, stock) = Bottle(mix);
        var readings = StockReadings.Of(SlipList.Of(workspace, stock).Single(s => s.Id == id).Facts);
        var measured = SlipSearch.Cheap(stock)
            .Select(r => (Reading: r, Value: readings.Value(r)))
            .Where(m => m.Value is not null)
            .Select(m => new Measurement("planted", m.Reading, m.Value!.Value, null))
            .ToList();

        var search = SlipSearch.Of(workspace, stock, measured);

        Assert.NotEmpty(measured);
        Assert.True(search.IsAsItShouldBe || search.Explaining.Any(e => e.Slip.Id == id), id);
    }

    [Theory]
    [InlineData(PartB, "left-out/monopotassium-phosphate-0")]
    [InlineData(PartB, "twice/magnesium-sulfate-7h2o-1")]
    [InlineData(PartB, "left-out/potassium-nitrate-2")]
    [InlineData(PartB, "volume-over/1.25")]
    [InlineData(Sour, "left-out/vinegar-5-0")]
    [InlineData(Sour, "other-strength/vinegar-5-0/acetic-acid-25")]
    public void ALargeSlipIsNotTakenForARightBottle(string mix, string id)
    {
        var (workspace, stock) = Bottle(mix);
        var row = Proof.Of(workspace, stock).Rows.Single(r => r.Slip.Id == id);

        Assert.Equal(Showing.Yes, row.Shows);
    }

    /// <summary>"Reads pH -0.57" is no reading, and that of bleach stands by lye that its label does not tell.</summary>
    [Theory]
    [InlineData("sulfuric-96 300 mL in 1 L", true)]
    [InlineData("sodium-hypochlorite-12.5 50 mL in 1 L", false)]
    public void WhatNoMeterReadsIsNoCheck(string mix, bool thinned)
    {
        var (workspace, stock) = Bottle(mix);
        var read = Proof.Of(workspace, stock).Checks.Where(c => c.Reading.Kind == ReadingKind.Ph).ToList();

        Assert.DoesNotContain(read, c => c.Reading.Dilution == 1);
        Assert.Equal(thinned, read.Exists(c => c.Reading.Dilution > 1));
    }

    [Fact]
    public void ARightBottleReadsAsItShould()
    {
        var (workspace, stock) = Bottle(PartB);
        var readings = StockReadings.Of(stock);

        var search = SlipSearch.Of(workspace, stock, [.. SlipSearch.Cheap(stock).Select(r => new Measurement("right", r, readings.Value(r)!.Value, null))]);

        Assert.True(search.IsAsItShouldBe);
        Assert.Empty(search.Explaining);
    }

    [Fact]
    public void TapWaterRaisesThePhOfAWeaklyBufferedStock()
    {
        var (workspace, stock) = Bottle(PartB);
        var tap = SlipList.Of(workspace, stock).Single(s => s.Kind == SlipKind.OtherWater);

        Assert.True(StockReadings.Of(tap.Facts).Value(new Reading(ReadingKind.Ph, 1)) > StockReadings.Of(stock).Value(new Reading(ReadingKind.Ph, 1)) + 0.2);
    }

    [Fact]
    public void TheSeparatingTestPartsWhatItSays()
    {
        var (workspace, stock) = Bottle(PartB);
        var ec = StockReadings.Of(SlipList.Of(workspace, stock).Single(s => s.Id == "twice/potassium-nitrate-2").Facts).Value(new Reading(ReadingKind.Conductivity, 100))!.Value;

        var search = SlipSearch.Of(workspace, stock, [new Measurement("EC", new Reading(ReadingKind.Conductivity, 100), ec, null)]);

        Assert.Contains(search.Explaining, e => e.Slip.Id == "twice/potassium-nitrate-2");
        Assert.NotNull(search.Separating);
        Assert.True(search.Separating.Groups.Count > 1);
        Assert.Equal(search.Explaining.Count, search.Separating.Groups.Sum(g => g.Slips.Count));
    }

    [Fact]
    public void SlipsAreTheSameEveryTimeAndHaveNamesOfTheirOwn()
    {
        var (workspace, stock) = Bottle(PartB);

        var ids = SlipList.Of(workspace, stock).Select(s => s.Id).ToList();

        Assert.Equal(ids, SlipList.Of(workspace, stock).Select(s => s.Id));
        Assert.Equal(ids.Count, ids.Distinct().Count());
    }

    /// <summary>
    /// Potassium chloride 0.01 mol/L (0.7455 g/kg; here 0.7440 g/L) reads 1.4083 mS/cm at 25 °C: OIML R 56, recalled. A stock of 74.4 g/L at 1:100
    /// must be expected to read that.
    /// </summary>
    [Fact]
    public void TheExpectedConductivityIsThatOfTheStandard()
    {
        var (_, stock) = Bottle("potassium-chloride 74.4 g in 1 L");

        var window = new ReadingWindows(stock, new Instruments(Shop)).Of(new Reading(ReadingKind.Conductivity, 100))!.Value;

        Assert.InRange(window.Value, 1.39, 1.43);
        Assert.True(window.Holds(1.408));
    }

    /// <summary>Potassium nitrate 10 % by weight has a density of 1.0627 g/mL at 20 °C (CRC Handbook of Chemistry and Physics, recalled): 106.3 g/L.</summary>
    [Fact]
    public void TheExpectedWeightIsThatOfTheHandbook()
    {
        var (_, stock) = Bottle("potassium-nitrate 106.3 g in 1 L");

        Assert.InRange(new ReadingWindows(stock, new Instruments(Shop)).Of(new Reading(ReadingKind.Density, 1))!.Value.Value, 1.058, 1.067);
    }

    [Theory]
    [InlineData("pH 6.9", ReadingKind.Ph, 1, 6.9)]
    [InlineData("pH 5.2 at 1:100", ReadingKind.Ph, 100, 5.2)]
    [InlineData("EC 1.8 mS/cm at 1:100", ReadingKind.Conductivity, 100, 1.8)]
    [InlineData("EC 550 µS/cm at 1:1000", ReadingKind.Conductivity, 1000, 0.55)]
    [InlineData("1 L weighs 1.12 kg", ReadingKind.Density, 1, 1.12)]
    [InlineData("100 mL weighs 109 g", ReadingKind.Density, 1, 1.09)]
    [InlineData("weighs 2.2 kg", ReadingKind.Density, 1, 1.1)]
    [InlineData("density 1.09 g/mL", ReadingKind.Density, 1, 1.09)]
    [InlineData("weight 1.09 kg/L", ReadingKind.Density, 1, 1.09)]
    [InlineData("weighs 1.09 kg/L", ReadingKind.Density, 1, 1.09)]
    [InlineData("1.09 g/mL", ReadingKind.Density, 1, 1.09)]
    [InlineData("1.8 mS/cm at 1:100", ReadingKind.Conductivity, 100, 1.8)]
    public void MeasurementsAreReadAsTheBenchWritesThem(string text, ReadingKind kind, double dilution, double value)
    {
        var (measurement, error) = Measurement.Read(text, new Volume(2));

        Assert.Null(error);
        Assert.Equal(new Reading(kind, dilution), measurement!.Reading);
        Assert.Equal(value, measurement.Value, 9);
    }

    [Theory]
    [InlineData("")]
    [InlineData("warm")]
    [InlineData("pH")]
    [InlineData("pH 17")]
    [InlineData("pH 5..6")]
    [InlineData("pH 6 at noon")]
    [InlineData("EC 1200 ppm")]
    [InlineData("EC -1 mS/cm")]
    [InlineData("1 L weighs")]
    [InlineData("a lot weighs 3 g")]
    [InlineData("weighs 0 g")]
    public void WhatIsNoMeasurementIsSaidInOneSentence(string text)
    {
        var (measurement, error) = Measurement.Read(text, new Volume(2));

        Assert.Null(measurement);
        Assert.NotNull(error);
        Assert.DoesNotContain('\n', error);
    }

    private static (Workspace Workspace, StockFacts Stock) Bottle(string mix)
    {
        var (line, fault) = Recipes.OneLine.OneLineMix.Read(mix, SubstanceCatalogue.BuiltIn);
        Assert.True(line is not null, fault);
        var steps = line.Items.Select((item, i) => Bench.Add(item.Substance.Id, item.AmountText, assay: null, id: $"{item.Substance.Id}-{i}"));
        var workspace = new Workspace
        {
            Stocks = [Bench.Stock("a.stock.json", line.VolumeText!, [.. steps, Bench.TopUp(line.VolumeText!)])],
            Catalogue = SubstanceCatalogue.BuiltIn,
            SettingsFor = _ => Shop,
        };
        return (workspace, Analyzer.AnalyseStock(workspace, "a.stock.json")!);
    }
}
