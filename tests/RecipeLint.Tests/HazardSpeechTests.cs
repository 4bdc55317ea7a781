using RecipeLint.Advice.Diagnosis;
using RecipeLint.Advice.Order;
using RecipeLint.Advice.Stretching;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Observations;
using RecipeLint.Analysis.Tests.Hazards;
using RecipeLint.Analysis.Tests.Support;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;
using RecipeLint.Reports.BenchSheets;
using RecipeLint.Reports.Diagnosis;
using RecipeLint.Reports.Order;
using RecipeLint.Rules;
using RecipeLint.Rules.Engine;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

/// <summary>What the commands that advise refuse, the check says; and what one of them refuses, the others do not praise.</summary>
public sealed class HazardSpeechTests
{
    private const int Sampled = 120, EveryNth = 6;

    /// <summary>The rules that speak of what comes together in a vessel.</summary>
    private static readonly HashSet<string> Speaking =
    [
        "hypochlorite-with-acid", "hypochlorite-with-ammonium", "nitric-with-organic", "oxidiser-with-organic", "water-onto-acid", "gas-or-heat-in-stock",
    ];

    private static bool Long => Environment.GetEnvironmentVariable("RECIPELINT_LONG") == "1";

    /// <summary>
    /// Every pair that textbooks keep apart in turn and a seeded sample of the rest; RECIPELINT_LONG=1 takes all that are kept apart, and of the
    /// rest one pair for each two classes that do and bring the same.
    /// </summary>
    [Fact]
    public void WhatTheGateRefusesTheCheckSays()
    {
        var ids = SubstanceCatalogue.BuiltIn.Substances.Select(s => s.Id).ToList();
        var all = ids.SelectMany((a, i) => ids.Skip(i + 1).Select(b => (One: a, Other: b))).ToList();
        var dangerous = all.Where(p => TextbookPairs.Of(p.One, p.Other).Count > 0).ToList();
        var random = new Random(20261129);
        var others = all.Except(dangerous).ToList();
        List<(string One, string Other)> asked = Long ? [.. dangerous, .. CatalogueClasses.FirstOfEach(others)]
            : [.. dangerous.Where((_, i) => i % EveryNth == 0), .. Enumerable.Range(0, Sampled).Select(_ => others[random.Next(others.Count)])];
        string[][] amounts = [["50 g", "50 g"], ["5 g", "300 g"], ["300 g", "1 g"]];
        var judged = asked.AsParallel().AsOrdered()
            .Select((p, i) => Silent(p.One, amounts[i % amounts.Length][0], p.Other, amounts[i % amounts.Length][1])).ToList();

        Assert.True(judged.Count(j => j.Refused) > 20, "hardly any pair is refused: the test looks at nothing");
        var faults = judged.Where(j => j.Fault is not null).Select(j => j.Fault!).ToList();
        Assert.True(faults.Count == 0, $"{faults.Count} faults\n{string.Join('\n', faults.Take(60))}");
    }

    /// <summary>The mixtures of a hostile reading of the program, of which the check once said nothing.</summary>
    [Theory]
    [InlineData("sodium-hypochlorite-5", "100 mL", "amino-acid-extract", "50 g", Level.Error)]
    [InlineData("sodium-hypochlorite-12.5", "100 mL", "fish-hydrolysate", "50 g", Level.Error)]
    [InlineData("sodium-hypochlorite-12.5", "100 mL", "humic-acid", "50 g", Level.Error)]
    [InlineData("sodium-hypochlorite-12.5", "250 mL", "glucose", "50 g", Level.Error)]
    [InlineData("sodium-hypochlorite-5", "20 mL", "sucrose", "5 g", Level.Error, "700 mL")]
    [InlineData("nitric-38", "550 mL", "glucose", "100 g", Level.Error)]
    [InlineData("nitric-65", "300 mL", "sucrose", "50 g", Level.Error, "600 mL")]
    public void WhatWasSilentIsSaid(string one, string amount, string other, string much, Level level, string water = "100 mL")
    {
        var facts = Facts(Bench.Pour(water), Bench.Add(one, amount), Bench.Add(other, much), Bench.TopUp("1 L"));

        Assert.Contains(Findings(facts), f => Speaking.Contains(f.Rule.Name) && f.Level == level);
        AssertRefused(facts);
    }

    [Theory]
    [InlineData("potassium-hydroxide", "500 g")]
    [InlineData("sodium-hydroxide", "300 g")]
    public void LyeThatBoilsIsAnErrorAndNotOrdered(string lye, string grams)
    {
        var facts = Facts(Bench.Pour("500 mL"), Bench.Add(lye, grams), Bench.TopUp("1 L"));

        var finding = Assert.Single(Findings(facts), f => Speaking.Contains(f.Rule.Name));
        Assert.Equal((Level.Error, "gas-or-heat-in-stock"), (finding.Level, finding.Rule.Name));
        Assert.Contains("much more water first", finding.Message, StringComparison.Ordinal);
        Assert.Contains("goggles", finding.Message, StringComparison.Ordinal);
        AssertRefused(facts);
    }

    [Theory]
    [InlineData("potassium-hydroxide", "100 g")]
    [InlineData("phosphoric-75", "100 mL")]
    public void OrdinaryLyeAndAcidStayUnsaid(string what, string amount) =>
        Assert.Empty(Said(Facts(Bench.Pour("600 mL"), Bench.Add(what, amount), Bench.TopUp("1 L"))));

    /// <summary>Bleach at the strength that vases and lines are treated with, beside sugar (common practice, no source: 50 mg/L).</summary>
    [Fact]
    public void ALittleBleachBesideSugarIsNone() =>
        Assert.Empty(Said(Facts(Bench.Pour("800 mL"), Bench.Add("sodium-hypochlorite-5", "1 g"), Bench.Add("sucrose", "20 g"), Bench.TopUp("1 L"))));

    [Fact]
    public void AnOxidisingSaltDryWithSugarIsAnError()
    {
        var facts = Facts(Bench.Add("potassium-nitrate", "500 g"), Bench.Add("glucose", "300 g"));

        Assert.Equal("oxidiser-with-organic", Assert.Single(Findings(facts), f => f.Level == Level.Error && Speaking.Contains(f.Rule.Name)).Rule.Name);
        AssertRefused(facts);
    }

    /// <summary>Dry on the way only: the water first takes it away, and the order says so.</summary>
    [Fact]
    public void AnOrderThatTakesADangerAwaySaysWhatItWas()
    {
        var facts = Facts(Bench.Add("potassium-nitrate", "50 g"), Bench.Add("glucose", "30 g"), Bench.Pour("800 mL"), Bench.TopUp("1 L"));
        var order = MixingOrder.Of(facts.Stocks.Single());

        Assert.Equal(Level.Warning, Said(facts).Max());
        Assert.Equal(HazardKind.Fire, order.Mended?.Kind);
        Assert.Contains("somebody could be hurt", OrderReport.Write(order), StringComparison.Ordinal);
        Assert.DoesNotContain("the best there is", OrderReport.Write(order), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("100 g", 8, 25, 90, null, Level.Error)]
    [InlineData("15 g", 8, 25, 90, null, Level.Error)]
    [InlineData("10 g", 8, 25, 90, null, Level.Warning)]
    [InlineData("100 g", 2, 8, 90, null, null)]
    [InlineData("100 g", 8, 25, 5, null, null)]
    [InlineData("100 g", 8, 25, 90, "sodium-hypochlorite-5", null)]
    public void SugarKeptWarmUnguardedBurstsItsBottle(string sugar, double low, double high, double days, string? with, Level? level)
    {
        var facts = Kept((low, high), days, with is null ? null : Bench.Add(with, "20 g"), Bench.Add("glucose", sugar));
        var burst = Findings(facts).Where(f => f.Message.Contains("ferments", StringComparison.Ordinal) && Speaking.Contains(f.Rule.Name)).ToList();

        Assert.Equal(level, burst.Select(f => (Level?)f.Level).SingleOrDefault());
    }

    /// <summary>Fish, taken as a tenth of sugar.</summary>
    [Fact]
    public void FishKeptWarmBurstsItsBottleAndIsNotTurnedOver()
    {
        var facts = Kept((8, 25), 90, null, Bench.Add("fish-hydrolysate", "200 g"));

        Assert.Equal(Level.Error, Said(facts).Max());
        var text = DiagnosisReport.Write(Diagnoser.Of(facts.Stocks.Single(), ObservationReader.Read("a bit of fuzz"), null), null);
        Assert.DoesNotContain("urn the bottle over", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("sodium-hypochlorite-12.5", "100 g")]
    [InlineData("nitric-65", "60 g")]
    [InlineData("potassium-hydroxide", "50 g")]
    [InlineData("hydrogen-peroxide-35", "200 g")]
    public void NothingFermentsWhereNoYeastLives(string killer, string amount)
    {
        var stock = Facts(Bench.Pour("600 mL"), Bench.Add(killer, amount), Bench.Add("glucose", "5 g"), Bench.TopUp("1 L")).Stocks.Single();
        var beaker = Holding.Of([.. stock.Additions.Select(Held.Of)], 1);

        Assert.Null(HazardGate.Of(stock).Find(HazardKind.FermentationPressure));
        Assert.Null(HazardGate.Of(beaker).Find(HazardKind.FermentationPressure));
        Assert.NotNull(HazardGate.Of(Holding.Of([Held.Of(Bench.Substance("glucose"), 5)], 1)).Find(HazardKind.FermentationPressure));
    }

    /// <summary>Bleach holds lye of which its label says nothing (common practice, no source: pH 11 to 13): no figure stands for it.</summary>
    [Fact]
    public void ThePhOfBleachIsNotKnown()
    {
        var facts = Facts(Bench.Pour("700 mL"), Bench.Add("sodium-hypochlorite-5", "50 mL"), Bench.Add("potassium-nitrate", "5 g"), Bench.TopUp("1 L"));
        var stock = facts.Stocks.Single();
        var plain = Facts(Bench.Pour("700 mL"), Bench.Add("potassium-nitrate", "5 g"), Bench.TopUp("1 L")).Stocks.Single();
        string Said(StockFacts of) => DiagnosisReport.Write(Diagnoser.Of(of, ObservationReader.Read("white powder at the bottom"), null), null);

        Assert.False(stock.Chemistry.Mixing.PhIsKnown);
        Assert.True(plain.Chemistry.Mixing.PhIsKnown);
        Assert.Contains("pH not known: bleach holds lye", string.Join(' ', Said(stock).Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
        Assert.Contains("pH 7", Said(plain), StringComparison.Ordinal);
        Assert.Contains("not known", OrderReport.Write(MixingOrder.Of(stock)), StringComparison.Ordinal);
        Assert.Contains(BenchSheet.Of(facts.Workspace, stock, stock.Volume).Lines, l => l.Expect.Contains("pH not known", StringComparison.Ordinal));
    }

    /// <summary>Who brings the other half of a deposit is named too, also where one bag brings both.</summary>
    [Theory]
    [InlineData("copper-sulfate-5h2o", "5 g", "potassium-carbonate", "20 g", "potassium carbonate")]
    [InlineData("calcium-carbonate", "50 g", "magnesium-nitrate-6h2o", "50 g", "brings the calcium and the carbonate")]
    public void ADepositNamesWhatBringsItsOtherHalf(string one, string amount, string other, string much, string named)
    {
        var facts = Facts(Bench.Pour("700 mL"), Bench.Add(one, amount), Bench.Add(other, much), Bench.TopUp("1 L"));
        var result = LintEngine.Judge(facts, new EngineOptions { Rules = [.. RuleList.All.Where(r => RuleBook.Of(r).Family == "precipitation")] });
        var found = result.Findings.Where(f => f.Level == Level.Error).ToList();

        Assert.NotEmpty(found);
        Assert.All(found, f => Assert.Contains(named, f.Message, StringComparison.Ordinal));
        Assert.All(found, f => Assert.DoesNotContain("thousand times", f.Message, StringComparison.Ordinal));
    }

    private static (bool Refused, string? Fault) Silent(string one, string amount, string other, string much)
    {
        var facts = Facts(Bench.Pour("600 mL"), Bench.Add(one, amount), Bench.Add(other, much), Bench.TopUp("1 L"));
        var stock = facts.Stocks.Single();
        var gate = HazardGate.Of(stock);
        var refusal = gate.Forbids(VesselAction.Order) ?? gate.Forbids(VesselAction.MakeStronger) ?? gate.Forbids(VesselAction.KeepTogether);
        if (refusal is null && gate.ForLeaving is null)
        {
            return (false, null);
        }

        var pair = $"{amount} of {one} with {much} of {other} ({refusal?.Hazard.Kind ?? gate.ForLeaving!.Kind})";
        if (!Said(facts).Any(l => l >= Level.Warning))
        {
            return (true, $"check is silent: {pair}");
        }

        var order = MixingOrder.Of(stock);
        return (true, order.Refused is null && order.Mended is null ? $"order is not refused: {pair}" : null);
    }

    private static void AssertRefused(Facts facts)
    {
        var stock = facts.Stocks.Single();
        Assert.NotNull(MixingOrder.Of(stock).Refused);
        Assert.NotEmpty(BenchSheet.Of(facts.Workspace, stock, stock.Volume).Refused);
        Assert.NotNull(StockStretch.Of(facts.Workspace, stock, new DateOnly(2026, 3, 1)).Refused);
    }

    /// <summary>Levels of what the rules on meetings say, the gravest the largest.</summary>
    private static IEnumerable<Level> Said(Facts facts) => Findings(facts).Where(f => Speaking.Contains(f.Rule.Name)).Select(f => f.Level);

    private static IReadOnlyList<Finding> Findings(Facts facts)
    {
        var result = LintEngine.Judge(facts, new EngineOptions { Rules = [.. RuleList.All.Where(r => RuleBook.Of(r).Family == "people")] });
        Assert.Empty(result.Faults);
        return result.Findings;
    }

    private static Facts Facts(params Step[] steps) => Facts(Bench.Stock("a.stock.json", "1 L", steps));

    private static Facts Kept((double Low, double High) at, double days, Step? first, Step then) => Facts(
        Bench.Stock("a.stock.json", "1 L", [Bench.Pour("700 mL"), .. first is null ? Array.Empty<Step>() : [first], then, Bench.TopUp("1 L")]) with
        {
            Keep = new Keeping(
                new Located<Interval<Temperature>>(new(new(at.Low), new(at.High)), Place.Whole("a.stock.json")),
                new Located<Duration>(new Duration(days), Place.Whole("a.stock.json")),
                null),
        });

    private static Facts Facts(StockDocument stock) => Analyzer.Analyse(new Workspace
    {
        Stocks = [stock],
        Catalogue = SubstanceCatalogue.BuiltIn,
        SettingsFor = _ => new ShopSettings(),
    });
}
