using System.Globalization;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Profiles;
using RecipeLint.Analysis.Stocks;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Files;
using RecipeLint.Reports;
using RecipeLint.Reports.BenchSheets;
using RecipeLint.Reports.Tests.Support;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

public sealed class BenchSheetTests
{
    private const string PartB = "examples/quillmere/stocks/part-b.stock.json";

    private static readonly Lazy<Facts> Quillmere = new(() => Analyzer.Analyse(WorkspaceLoader.Load(
        new DiskFileTree(Repository.Root), ["examples/quillmere"], new LoadOptions { Profiles = ProfileLibrary.AllNames })));

    private static StockFacts Stock(string file) => Quillmere.Value.FindStock(file)!;

    private static BenchSheet Sheet(string file, double litres) => BenchSheet.Of(Quillmere.Value.Workspace, Stock(file), new Volume(litres));

    [Theory]
    [InlineData(2)]
    [InlineData(0.5)]
    [InlineData(7)]
    public void RoundingsGiveTheStatedError(double litres)
    {
        foreach (var stock in Quillmere.Value.Stocks)
        {
            var lines = BenchSheet.Of(Quillmere.Value.Workspace, stock, new Volume(litres)).Lines.Where(l => l.Shown is not null).ToList();
            Assert.NotEmpty(lines);
            foreach (var line in lines)
            {
                // A whole number of steps of the display, the nearest one, and the error that this makes.
                var steps = line.Shown!.Value / line.Step!.Value;
                Assert.Equal(Math.Round(steps), steps, 6);
                Assert.True(Math.Abs(line.Shown.Value - line.Exact!.Value) <= (0.5 * line.Step.Value) + 1e-12, line.Does);
                Assert.Equal((line.Shown.Value / line.Exact.Value) - 1, line.RoundingError!.Value, 12);
            }
        }
    }

    [Fact]
    public void AHalfBatchTakesHalfOfEverything()
    {
        var whole = Sheet(PartB, 2).Lines;
        var half = Sheet(PartB, 1).Lines;
        Assert.Equal(whole.Count, half.Count);
        foreach (var (one, other) in whole.Zip(half).Where(p => p.First.Exact is not null))
        {
            Assert.Equal(one.Exact!.Value / 2, other.Exact!.Value, 9);
        }

        // What is in the vessel has the same strength, so it looks and reads the same.
        Assert.Equal(whole.Select(l => l.Expect.Split("; pH ")[^1].Split(',')[0]), half.Select(l => l.Expect.Split("; pH ")[^1].Split(',')[0]));
        var scaled = ScaledBatch.Of(Stock(PartB), 0.5);
        Assert.Equal(Stock(PartB).Concentration("K+").MolesPerLitre, scaled.Concentration("K+").MolesPerLitre, 12);
    }

    /// <summary>A refusal that ends with "Pour acid into water" tells somebody how to mix what must not be mixed.</summary>
    [Fact]
    public void ARefusalEndsWithWhatToDoAndNotWithHowToPour()
    {
        using var folder = new Scratch();
        folder.Write("a.stock.json", """
            { "format": 1, "makes": "1 L", "steps": [ { "pour": "700 mL" }, { "add": "sodium-hypochlorite-5", "amount": "100 mL" },
              { "add": "nitric-38", "amount": "50 mL" }, { "topUp": "1 L" } ] }
            """);

        var answer = Cli.RunIn(folder.Path, null, "bench-sheet", "a.stock.json", "--width", "400");

        Assert.Equal(1, answer.Code);
        Assert.DoesNotContain("acid into water", answer.Out, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("as bought", answer.Out, StringComparison.Ordinal);
        Assert.EndsWith("call the emergency number first.", answer.Out.TrimEnd(), StringComparison.Ordinal);
    }

    /// <summary>What is refused says why once; the list of cautions below does not say the same again.</summary>
    [Fact]
    public void ARefusedStockSaysItsDangerOnce()
    {
        using var folder = new Scratch();
        folder.Write("bleach.stock.json", """
            { "format": 1, "makes": "2 L", "steps": [ { "pour": "1.5 L", "of": "distilled" }, { "add": "sodium-hypochlorite-5", "amount": "20 mL" },
              { "add": "nitric-38", "amount": "20 mL" }, { "topUp": "2 L" } ] }
            """);
        var answer = Cli.RunIn(folder.Path, null, "bench-sheet", "bleach.stock.json", "--batch", "2 L", "--width", "400");
        var lines = answer.Out.Split('\n').Where(l => l.StartsWith("  - ", StringComparison.Ordinal)).ToList();
        Assert.Contains("  - Do not mix this, in any order: somebody could be hurt.", lines);
        foreach (var line in lines)
        {
            Assert.Single(lines, l => l.StartsWith(line.Split(". ")[0].TrimEnd('.'), StringComparison.Ordinal));
        }
    }

    [Fact]
    public void WeightsStandWithTheDecimalsOfTheScale()
    {
        var answer = Cli.Run("bench-sheet", PartB, "--batch", "500 mL", "--width", "160");
        Assert.Equal(0, answer.Code);

        // 35.2 g for 2 L are 8.8 g for 500 mL; the bench scale reads to 0.1 g. 71 g are 17.75 g, shown as 17.8: 0.28 % too much.
        Assert.Contains(" 8.8 g  bench-scale", answer.Out, StringComparison.Ordinal);
        Assert.Contains("17.8 g  bench-scale", answer.Out, StringComparison.Ordinal);
        Assert.Contains("+0.282 %", answer.Out, StringComparison.Ordinal);
        Assert.Contains("pH ", answer.Out, StringComparison.Ordinal);
        Assert.Contains("Stop when", answer.Out, StringComparison.Ordinal);
        Assert.Contains("After mixing", answer.Out, StringComparison.Ordinal);
    }

    /// <summary>After each step how it looks, its pH and how warm it is; what the last water is read on; hazards in words.</summary>
    [Fact]
    public void EveryStepSaysWhatToExpectAndWithWhat()
    {
        foreach (var stock in Quillmere.Value.Stocks)
        {
            var sheet = BenchSheet.Of(Quillmere.Value.Workspace, stock, stock.Volume);
            Assert.All(sheet.Lines.Skip(1), l => Assert.Matches("; pH (-?[0-9.]+|not known); .*[0-9] °C", l.Expect));
            Assert.All(sheet.Lines.Where(l => l.Does.StartsWith("Top up", StringComparison.Ordinal)), l => Assert.NotNull(l.With));
            Assert.DoesNotContain(sheet.Cautions, c => System.Text.RegularExpressions.Regex.IsMatch(c, @"as bought: H[0-9]"));
        }

        // Potassium nitrate takes up 34.89 kJ/mol (CRC Handbook, enthalpy of solution, recalled): 40 g in 1.5 L of water cool by 2 °C.
        var step = Sheet("examples/quillmere/stocks/part-a.stock.json", 2).Lines.Single(l => l.Does.Contains("potassium nitrate", StringComparison.Ordinal));
        Assert.EndsWith("cools by about 2 °C, to 18 °C", step.Expect, StringComparison.Ordinal);
        Assert.Contains(Sheet("examples/quillmere/stocks/part-a.stock.json", 2).Cautions, c => c == "Potassium nitrate as bought: may intensify fire; oxidiser (H272).");
    }

    /// <summary>A metal before what holds it: the best order has the citric acid first, and every weight stays.</summary>
    [Fact]
    public void TheBestOrderMovesStepsAndNoWeights()
    {
        using var folder = new Scratch();
        folder.Write("a.stock.json", """
            { "format": 1, "makes": "1 L", "dose": "1 mL/L", "steps": [ { "pour": "700 mL", "of": "distilled" },
              { "add": "dipotassium-phosphate", "amount": "10 g" }, { "add": "ferrous-sulfate-7h2o", "amount": "2 g" },
              { "add": "citric-acid-h2o", "amount": "20 g" }, { "topUp": "1 L", "of": "distilled" } ] }
            """);
        var file = Cli.RunIn(folder.Path, null, "bench-sheet", "a.stock.json").Out;
        var best = Cli.RunIn(folder.Path, null, "bench-sheet", "a.stock.json", "--order", "best").Out;
        int At(string text, string what) => text.IndexOf(what, StringComparison.Ordinal);
        Assert.True(At(file, "of iron(II) sulfate") < At(file, "of citric acid") || At(file, "of ferrous") < At(file, "of citric acid"));
        Assert.True(At(best, "of citric acid") > 0);
        Assert.All(["10 g of", "2 g of", "20 g of"], w => Assert.Contains(w, best, StringComparison.Ordinal));
        Assert.Contains("Stir: until clear.", best, StringComparison.Ordinal);
        Assert.NotEqual(file, best);
        Assert.True(At(best, "of citric acid") < Math.Max(At(best, "of iron(II) sulfate"), At(best, "of ferrous")), best);
    }

    [Theory]
    [InlineData(60)]
    [InlineData(80)]
    public void TheTextFits(int width)
    {
        var answer = Cli.Run("bench-sheet", PartB, "--width", width.ToString(CultureInfo.InvariantCulture));
        Assert.All(answer.Out.Split('\n'), l => Assert.True(DisplayWidth.Of(l) <= width, l));
    }

    [Fact]
    public void WhatCanHurtIsNotMixed()
    {
        using var folder = new Scratch();
        folder.Write("a.stock.json", """
            { "format": 1, "makes": "1 L", "steps": [ { "pour": "0.5 L", "of": "distilled" },
              { "add": "sodium-hypochlorite-5", "amount": "100 g" }, { "add": "nitric-60", "amount": "50 g", "assay": "60 %" }, { "topUp": "1 L" } ] }
            """);
        var answer = Cli.RunIn(folder.Path, null, "bench-sheet", "a.stock.json");
        Assert.Equal(1, answer.Code);
        Assert.Contains("Do not mix this", answer.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("\nSteps", answer.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("2")]
    [InlineData("2 kg")]
    [InlineData("1..2 L")]
    [InlineData("0 L")]
    [InlineData("1 gal")]
    public void ABatchThatIsNoVolumeIsRefusedInOneLine(string batch)
    {
        var answer = Cli.Run("bench-sheet", PartB, "--batch", batch);
        Assert.Equal(2, answer.Code);
        Assert.Single(answer.Error.TrimEnd('\n').Split('\n'));
    }
}
