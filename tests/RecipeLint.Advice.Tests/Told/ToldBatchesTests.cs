using RecipeLint.Advice.Batches;
using RecipeLint.Advice.Scoring;
using RecipeLint.Analysis.Stocks;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Rules;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Advice.Tests.Told;

/// <summary>What was made, against what was planned: what becomes of each batch, how it is mended, and how often the rules were right.</summary>
public sealed class ToldBatchesTests
{
    private static readonly EngineOptions _engine = new() { Today = new(2026, 11, 30), Rules = RuleList.All };

    public static TheoryData<string> Batches() => [.. ToldShop.Workspace.Batches.Where(b => b.StockFile is not null).Select(b => b.File)];

    [Theory]
    [MemberData(nameof(Batches))]
    public void BatchesAreJudgedSo(string file)
    {
        var batch = ToldShop.Workspace.Batches.Single(b => b.File == file);
        var stock = ToldShop.Workspace.Stocks.Single(s => s.File == batch.StockFile);
        var judged = BatchJudge.Of(ToldShop.Around(stock.File), stock, batch, _engine)!;
        var text = new ToldText().Line($"{judged.Fate}, allowed {judged.Allowed:G3}, refused {judged.Refusal?.Hazard.Kind}, seen {string.Join(" | ", judged.Seen.Select(s => s.What.Value))}");
        foreach (var reading in judged.Readings)
        {
            text.Line($"read {reading.Value:G4} beside {reading.Expected?.Value:G4}, fits {reading.Fits}");
        }

        foreach (var shift in judged.Stock)
        {
            text.Line($"{shift.Key} {shift.Planned:G4} {shift.Actual:G4} {shift.Mended:G4} g/L, planned {shift.IsPlanned}, off {shift.Off:G3}");
        }

        foreach (var shift in judged.Feeds)
        {
            text.Line($"{shift.Recipe} {shift.Key} {shift.Planned:G4} {shift.Actual:G4} {shift.Mended:G4} mg/L");
        }

        foreach (var finding in judged.Brought)
        {
            text.Line($"brought {finding.Rule.Id} {finding.Level} {finding.Place.File}");
        }

        text.Line($"not mended {string.Join(" | ", judged.NotMended)}");
        if (judged.Mend is { } mend)
        {
            Write(text, "mended", mend);
            var steps = mend.PutInto(RecordedStock.Actual(stock, batch)).Steps;
            text.Line($"steps {string.Join(", ", steps.Select(s => s.Id))}");
        }

        if (BatchMend.Of(judged.Planned, judged.Actual) is { } tried)
        {
            Write(text, "tried", tried);
            foreach (var step in tried.PutInto(RecordedStock.Actual(stock, batch)).Steps)
            {
                text.Line($"  {step.Id} {Amount(step)}");
            }
        }

        text.Hold($"batches-{Path.GetFileName(file).Split('.')[0]}");
    }

    /// <summary>150 mL of lye do not go into a full litre: the batch becomes larger, and everything else is made up to it.</summary>
    [Theory]
    [InlineData("43", 1.19)]
    [InlineData("16", 1.077)]
    [InlineData("09", 1)]
    public void BatchesFindRoomForTheLiquidsThatMendThem(string number, double mark)
    {
        var batch = ToldShop.Workspace.Batches.Single(b => b.File == $"batches/{number}.batch.json");
        var stock = ToldShop.Workspace.Stocks.Single(s => s.File == batch.StockFile);
        var judged = BatchJudge.Of(ToldShop.Around(stock.File), stock, batch, _engine)!;
        var mend = BatchMend.Of(judged.Planned, judged.Actual)!;
        Assert.Equal(mark, mend.Mark.Litres, 3);
        var mended = mend.PutInto(RecordedStock.Actual(stock, batch));
        Assert.Equal(mended.Steps.Count, mended.Steps.Select(s => s.Place).Distinct().Count());
        Assert.True(mend.Parts.Sum(p => p.Litres ?? 0) <= mend.Mark.Litres - 1 + 0.01);
    }

    private static string Amount(Step step) => step switch
    {
        AddStep { Amount.Value: Portion.ByMass m } add => FormattableString.Invariant($"{m.Mass.Grams:G5} g {add.Assay?.Value.Value}"),
        AddStep { Amount.Value: Portion.ByVolume v } => FormattableString.Invariant($"{v.Volume.Millilitres:G5} mL"),
        PourStep pour => FormattableString.Invariant($"{pour.Volume?.Value.Litres:G5} L of {pour.Of?.Value.Name}"),
        TopUpStep top => FormattableString.Invariant($"to {top.To?.Value.Litres:G5} L"),
        _ => "",
    };

    private static void Write(ToldText text, string how, BatchMend mend)
    {
        text.Line($"{how} to {mend.Mark.Litres:G5} L, water {mend.AddsWater}, adjusts {mend.AdjustsAgain?.Id}");
        foreach (var part in mend.Parts)
        {
            text.Line($"  {part.Id} {part.Substance.Id} {part.Grams:G5} g {part.Litres:G5} L, assay {part.Assay?.Value.Value}");
        }
    }

    /// <summary>Counted over all of them, and over each alone: a hit and a miss never hide each other.</summary>
    [Fact]
    public void ScoringCountsThese()
    {
        var text = new ToldText();
        Write(text, "all", BatchScore.Of(ToldShop.Facts));
        foreach (var batch in ToldShop.Workspace.Batches)
        {
            var alone = new Analysis.Facts { Workspace = ToldShop.Workspace with { Batches = [batch] }, Stocks = ToldShop.Facts.Stocks, Recipes = ToldShop.Facts.Recipes };
            Write(text, Path.GetFileName(batch.File), BatchScore.Of(alone));
        }

        text.Hold("scoring-sallowfen");
        var gone = ToldShop.Workspace.Batches[0] with { StockFile = "gone.stock.json" };
        var without = BatchScore.Of(new Analysis.Facts { Workspace = ToldShop.Workspace with { Batches = [gone] }, Stocks = ToldShop.Facts.Stocks, Recipes = [] });
        Assert.Equal([gone.File], without.LeftOut);
        Assert.Equal((1, 0), (without.Batches, without.Looked));
    }

    private static void Write(ToldText text, string what, BatchScore score)
    {
        text.Line($"{what}: {score.Batches} batches, {score.Looked} looked, {score.RightlyQuiet} quiet, {score.MissedByAll} missed by all, weights {score.Weights.Hits} of {score.Weights.Of}, left out {string.Join(", ", score.LeftOut)}");
        foreach (var (kind, rules) in new[] { ("bottle", score.Rules), ("pH", score.PhRules), ("tank", score.TankRules), ("hazard", score.Hazards) })
        {
            foreach (var rule in rules.Where(r => r.IsTold))
            {
                text.Line($"  {kind} {rule.Rule} {rule.Hits} hits, {rule.Misses} misses, {rule.FalseAlarms} false; right {rule.RightWhenItSpeaks.Hits}/{rule.RightWhenItSpeaks.Of}, found {rule.Found.Hits}/{rule.Found.Of}");
            }
        }

        foreach (var (kind, readings) in new[] { ("bottle", score.Readings), ("tank", score.TankReadings) })
        {
            foreach (var reading in readings)
            {
                text.Line($"  {kind} {reading.Kind} {reading.Inside.Hits}/{reading.Inside.Of}");
            }
        }
    }
}
