using System.Globalization;
using RecipeLint.Advice.Batches;
using RecipeLint.Analysis.Profiles;
using RecipeLint.Recipes.Files;
using RecipeLint.Reports;
using RecipeLint.Reports.BenchSheets;
using RecipeLint.Reports.ComputedFacts;
using RecipeLint.Reports.Tests.Support;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

/// <summary>What is done with a batch as it was really mixed. The shop is the invented one of the examples.</summary>
public sealed class BatchSheetTests
{
    private static readonly string Shop = Path.Combine(Repository.Root, "examples", "quillmere");

    private static MemoryFileTree Files(string rest, string stock)
    {
        var files = new MemoryFileTree("/shop").AddFolder("/shop/.git");
        foreach (var path in Directory.EnumerateFiles(Shop, "*.json", SearchOption.AllDirectories))
        {
            files.Add(Path.GetRelativePath(Shop, path), File.ReadAllText(path));
        }

        return files.Add("run.batch.json", $$"""{"format": 1, "stock": "stocks/{{stock}}.stock.json", "made": "2026-03-02"{{rest}}}""");
    }

    private static BatchJudgement Judge(string rest, string stock = "part-a", string? settings = null)
    {
        var files = Files(rest, stock);
        var workspace = WorkspaceLoader.Load(settings is null ? files : files.Add("recipelint.json", settings), ["."], new LoadOptions { Profiles = ProfileLibrary.AllNames });
        var batch = Assert.Single(workspace.Batches);
        Assert.True(batch.IsComplete);
        return BatchJudge.Of(workspace, workspace.FindStock(batch.StockFile!)!, batch, StandardEngine.On(null))!;
    }

    [Fact]
    public void WhatWasMixedAsPlannedIsUsed()
    {
        var judged = Judge("");
        Assert.Equal(BatchFate.Use, judged.Fate);
        Assert.Empty(judged.Brought);
        Assert.Empty(judged.Feeds);
        Assert.All(judged.Stock, s => Assert.Equal(0, s.Off));
    }

    [Fact]
    public void ASmallMissIsUsedAndSaid()
    {
        var judged = Judge(""", "steps": [{"step": "potassium-nitrate", "amount": "40.1 g"}]""");
        Assert.Equal(BatchFate.Use, judged.Fate);

        // 40.1 g for 40 g: a four-hundredth more potassium in the bottle, all of which is the nitrate's.
        Assert.Equal(0.0025, judged.Stock.Single(s => s.Key == "K").Off, 1e-6);
    }

    /// <summary>What a shop allows of a weight is what counts as made as planned here too.</summary>
    [Fact]
    public void WhatTheShopAllowsDecides()
    {
        const string steps = """, "steps": [{"step": "potassium-nitrate", "amount": "43 g"}]""";
        var shop = File.ReadAllText(Path.Combine(Shop, "recipelint.json"));
        var open = shop.IndexOf('{', StringComparison.Ordinal) + 1;
        var judged = Judge(steps, settings: shop.Insert(open, """ "rules": {"batch-weighed-off": {"allowed": 10}}, """));

        Assert.NotEqual(BatchFate.Use, Judge(steps).Fate);
        Assert.Equal(BatchFate.Use, judged.Fate);
        Assert.Contains("within 10 %", string.Join(' ', BatchSheet.Of(judged).Sections.SelectMany(x => x.Says)), StringComparison.Ordinal);
    }

    [Fact]
    public void ADoubleBatchIsHeldAgainstADoublePlan()
    {
        Assert.Equal(BatchFate.Use, Judge(
            """, "batch": "4 L", "steps": [{"step": "calcium-nitrate", "amount": "260 g"}, {"step": "potassium-nitrate", "amount": "80 g"}, {"step": "iron-dtpa", "amount": "6.8 g"}]""").Fate);
    }

    [Fact]
    public void WhatIsMissingIsPutIn()
    {
        var judged = Judge(""", "steps": [{"step": "potassium-nitrate", "amount": "20 g"}]""");
        Assert.Equal(BatchFate.Mend, judged.Fate);
        var part = Assert.Single(judged.Mend!.Parts);
        Assert.Equal(("potassium-nitrate", 20.0), (part.Substance.Id, part.Grams));
        Assert.False(judged.Mend.AddsWater);
        Assert.All(judged.Stock, s => Assert.Equal(s.Planned, s.Mended!.Value, 1e-9));
        Assert.All(judged.Feeds, f => Assert.Equal(f.Planned, f.Mended!.Value, 1e-6));
    }

    /// <summary>A tenth too much water: a tenth more of everything, the volume stays.</summary>
    [Fact]
    public void TooMuchWaterIsMadeUpForWithEverythingElse()
    {
        var judged = Judge(""", "steps": [{"step": "top-up", "amount": "2.2 L"}]""");
        Assert.Equal(BatchFate.Mend, judged.Fate);
        Assert.Equal(-1.0 / 11, (judged.Stock.Single(s => s.Key == "Ca").Actual / judged.Stock.Single(s => s.Key == "Ca").Planned) - 1, 1e-4);
        Assert.Equal([13.0, 4.0, 0.34], judged.Mend!.Parts.Select(p => p.Grams));
        Assert.False(judged.Mend.AddsWater);
        Assert.All(judged.Stock.Where(s => s.IsPlanned), s => Assert.Equal(s.Planned, s.Mended!.Value, 2e-3 * s.Planned));
    }

    /// <summary>A tenth too much of one salt: a tenth more of the others, and water up to 2.2 L.</summary>
    [Fact]
    public void TooMuchOfASaltIsMadeUpForWithTheOthersAndWater()
    {
        var judged = Judge(""", "steps": [{"step": "potassium-nitrate", "amount": "44 g"}]""");
        Assert.Equal(BatchFate.Mend, judged.Fate);
        Assert.Equal([13.0, 0.34], judged.Mend!.Parts.Select(p => p.Grams));
        Assert.True(judged.Mend.AddsWater);
        Assert.Equal(2.2, judged.Mend.Mark.Litres, 1e-9);
    }

    [Fact]
    public void TheWrongBagIsDiscardedWithTheReason()
    {
        var judged = Judge(""", "steps": [{"step": "potassium-nitrate", "add": "potassium-sulfate", "amount": "40 g"}]""");
        Assert.Equal(BatchFate.Discard, judged.Fate);
        Assert.Contains(judged.Brought, f => f.Rule.Id == "RL0101");
        Assert.NotEmpty(judged.NotMended);
    }

    [Fact]
    public void WhatWasLeftOutAndWhatCameInBesidesCounts()
    {
        var judged = Judge(""", "steps": [{"step": "iron-dtpa", "amount": "0 g"}, {"add": "potassium-chloride", "amount": "30 g"}]""");
        Assert.Equal(BatchFate.Discard, judged.Fate);
        Assert.Equal(1, judged.Stock.Single(s => s.Key == "Fe").Off);
        Assert.False(judged.Stock.Single(s => s.Key == "Cl").IsPlanned);
    }

    [Fact]
    public void AReadingThatDoesNotFitIsFollowedBeforeAnythingElse()
    {
        Assert.Equal(BatchFate.FindOut, Judge(""", "readings": [{"pH": 8}]""").Fate);
        Assert.Equal(BatchFate.Use, Judge(""", "readings": [{"pH": 3.1}, {"EC": "1.06 mS/cm", "dilution": "1:100"}, {"weight": "2.1 kg"}]""").Fate);
    }

    /// <summary>What was seen comes before what was weighed: nothing is put into a bottle that may give off gas or holds what nobody knows.</summary>
    [Theory]
    [InlineData("smells of chlorine, the bottle is swollen", BatchFate.Discard, true)]
    [InlineData("white needles at the bottom", BatchFate.FindOut, false)]
    [InlineData("clear", BatchFate.Mend, false)]
    public void WhatWasSeenIsFollowedBeforeMending(string seen, BatchFate fate, bool refused)
    {
        var judged = Judge($$""", "steps": [{"step": "potassium-nitrate", "amount": "60 g"}], "seen": [{"after": "1 day", "what": "{{seen}}"}]""");
        Assert.Equal(fate, judged.Fate);
        Assert.Equal(refused, judged.Refusal is not null);
        Assert.Equal(fate == BatchFate.Mend, judged.Mend is not null);
    }

    [Fact]
    public void TheHazardGateSpeaksBeforeAnyMending()
    {
        var judged = Judge(""", "steps": [{"add": "sodium-hypochlorite-12.5", "amount": "200 mL"}, {"add": "nitric-60", "amount": "100 mL"}]""");
        Assert.Equal(BatchFate.Discard, judged.Fate);
        Assert.NotNull(judged.Refusal);
        Assert.Null(judged.Mend);
    }

    [Theory]
    [InlineData(60)]
    [InlineData(100)]
    public void TheSheetFitsAndItsCodeTellsTheFate(int width)
    {
        using var folder = Copied(""", "by": "<script>x\u001b[2J", "steps": [{"step": "potassium-nitrate", "amount": "20 g", "lot": "=cmd\u202e"}]""");
        var answer = Cli.RunIn(
            folder.Path, null, "bench-sheet", "stocks/part-a.stock.json", "--actual", "run.batch.json", "--width", width.ToString(CultureInfo.InvariantCulture));
        Assert.Equal((1, ""), (answer.Code, answer.Error));
        Assert.Contains("Mend it, then use it", answer.Out, StringComparison.Ordinal);
        Assert.Contains("Weigh 20 g of potassium nitrate with 'fine-scale'", string.Join(' ', answer.Out.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
        Assert.All(answer.Out.Split('\n'), l => Assert.True(DisplayWidth.Of(l) <= width, l));
        Assert.DoesNotContain(answer.Out, c => c is '\u001b' or '\u202e');
        Assert.Equal(0, Cli.RunIn(folder.Path, null, "check", "run.batch.json").Code);
    }

    [Fact]
    public void ThePageStaysText()
    {
        using var folder = Copied(""", "by": "<script>x</script>", "steps": [{"step": "potassium-nitrate", "amount": "20 g", "lot": "<img src=x>\u202e"}]""");
        Assert.Equal(1, Cli.RunIn(folder.Path, null, "bench-sheet", "stocks/part-a.stock.json", "--actual", "run.batch.json", "-o", "sheet.html").Code);
        var page = File.ReadAllText(Path.Combine(folder.Path, "sheet.html"));
        Assert.DoesNotContain("<script", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<img", page, StringComparison.Ordinal);
        Assert.DoesNotContain('\u202e', page);
    }

    [Theory]
    [InlineData("stocks/part-b.stock.json", "run.batch.json", "is the record of")]
    [InlineData("stocks/part-a.stock.json", "water/rain.water.json", "no batch record")]
    [InlineData("stocks/part-a.stock.json", "gone.batch.json", "does not exist")]
    [InlineData("recipes/lettuce.recipe.json", "run.batch.json", "one stock file")]
    public void WhatCannotBeJudgedIsOneLine(string stock, string record, string says)
    {
        using var folder = Copied("");
        var answer = Cli.RunIn(folder.Path, null, "bench-sheet", stock, "--actual", record);
        Assert.Equal(2, answer.Code);
        Assert.Contains(says, Assert.Single(answer.Error.TrimEnd('\n').Split('\n')), StringComparison.Ordinal);
    }

    [Fact]
    public void ARecordThatIsNotWholeIsSentToCheck()
    {
        using var folder = Copied(""", "steps": [{"step": "potasium-nitrate", "amount": "20 g"}]""");
        var answer = Cli.RunIn(folder.Path, null, "bench-sheet", "stocks/part-a.stock.json", "--actual", "run.batch.json");
        Assert.Equal(2, answer.Code);
        Assert.Contains("check", answer.Error, StringComparison.Ordinal);
        Assert.Contains(Cli.RunIn(folder.Path, null, "check", "run.batch.json").Findings, f => f.Contains("run.batch.json:", StringComparison.Ordinal));
    }

    private static Scratch Copied(string rest)
    {
        var folder = new Scratch();
        foreach (var path in Directory.EnumerateFiles(Shop, "*.json", SearchOption.AllDirectories))
        {
            folder.Write(Path.GetRelativePath(Shop, path), File.ReadAllText(path));
        }

        folder.Write("run.batch.json", $$"""{"format": 1, "stock": "stocks/part-a.stock.json", "made": "2026-03-02"{{rest}}}""");
        return folder;
    }
}
