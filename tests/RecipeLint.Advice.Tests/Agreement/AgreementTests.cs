using RecipeLint.Advice.Diagnosis;
using RecipeLint.Advice.Stretching;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Analysis.Observations;
using RecipeLint.Analysis.Tests.Published;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Advice.Tests.Agreement;

/// <summary>
/// One bottle, one answer: no finding on solids ⇔ stretch calls the stock clear at its own dose ⇔ diagnose names no deposit ⇔ split takes it
/// as one part at this strength ⇔ repairs show none; and two figures for one deposit are equal to the digit.
/// </summary>
public sealed class AgreementTests
{
    /// <summary>Generated stocks in an ordinary run; all thousand with RECIPELINT_LONG=1.</summary>
    private static int Generated { get; } = Environment.GetEnvironmentVariable("RECIPELINT_LONG") == "1" ? 1000 : 120;

    [Fact]
    public void OfEveryExampleAndGoodRecipe()
    {
        var bottles = Bottle.Folders.AsParallel().AsOrdered().SelectMany(Bottle.In).ToList();
        Assert.True(bottles.Count > 300, $"{bottles.Count} stocks");
        Holds(bottles);
    }

    [Fact]
    public void OfGeneratedStocks()
    {
        var bottles = Enumerable.Range(1, Generated).Select(RandomStock.Of).ToList();
        Assert.InRange(bottles.Count(b => DepositJudgement.Of(b.Stock, DepositLimits.Default).IsClear), Generated / 5, Generated * 4 / 5);
        Holds(bottles);
    }

    /// <summary>Published solutions as one stock, at a tenth, fifty and a hundred times their strength.</summary>
    [Fact]
    public void OfPublishedRecipesMadeAsOneStock()
    {
        var bottles = PublishedRecipe.Ids.Select(PublishedRecipe.Read)
            .SelectMany(p => new[] { 10, 50, 100 }.Select(n => (Recipe: p, Dilution: n)))
            .Select(p => Bottle.Of(
                $"{p.Recipe.Id} 1:{p.Dilution}",
                p.Dilution,
                "5..30 °C",
                p.Recipe.Facts.Doses.Select(d => d.Direct).OfType<AdditionFacts>()
                    .Where(d => Chemistry.Substances.SubstanceCatalogue.BuiltIn.ById(d.Substance.Id) is not null)
                    .Select(d => (d.Substance.Id, d.Mass.Grams * p.Dilution / p.Recipe.Facts.FinalVolume.Litres))))
            .ToList();
        Assert.True(bottles.Count >= 45, $"{bottles.Count} stocks");
        Holds(bottles);
    }

    private static void Holds(List<Bottle> bottles)
    {
        var differences = bottles.AsParallel().AsOrdered().SelectMany(b => Answers.Differences(b)).ToList();
        Assert.True(differences.Count == 0, $"{differences.Count} differences over {bottles.Count} stocks:\n{string.Join("\n", differences.Take(40))}");
    }

    /// <summary>Silicate stands in its own alkali, as the trade sells and keeps it.</summary>
    [Fact]
    public void ASilicatePartStaysClearForEveryone()
    {
        var bottle = Bottle.Of("silicate", 200, "5..30 °C", ("potassium-silicate-29be", 60));

        Assert.True(DepositJudgement.Of(bottle.Stock, DepositLimits.Default).IsClear);
        Assert.All(StockStretch.Judged(bottle.Stock), r => Assert.True(r.Highest.Factor >= 1));
        var silica = BottleChemistry.Of(bottle.Stock, null).Of(DiagnosisData.Causes.First(c => c.Solids.Contains("Amorphous silica")));
        Assert.False(silica.Counts);
        Assert.Equal(0, silica.GramsPerLitre);
        Assert.Empty(Answers.Differences(bottle));
    }

    /// <summary>Vinegar, disodium EDTA and ferrous sulfate with the trace salts of a common 1:1000 stock: the acid of EDTA waits for the air.</summary>
    [Fact]
    public void AnEverydayTraceStockStaysClearForEveryone()
    {
        var bottle = Bottle.Of(
            "trace", 1000, "5..30 °C",
            ("vinegar-5", 90), ("disodium-edta-2h2o", 10), ("ferrous-sulfate-7h2o", 9), ("manganese-sulfate-h2o", 1.5), ("boric-acid", 2), ("zinc-sulfate-7h2o", 0.2), ("copper-sulfate-5h2o", 0.1));

        Assert.Empty(Answers.Differences(bottle));
        Assert.DoesNotContain(DepositJudgement.Of(bottle.Stock, DepositLimits.Default).Deposits, d => d.Solid.Name == "EDTA acid");
        Assert.All(StockStretch.Judged(bottle.Stock), r => Assert.True(r.Highest.Factor >= 1));
        var first = Diagnoser.Of(bottle.Stock, Observation.Nothing.With(ObservationReader.Read("white crystals")), null).Causes[0];
        Assert.NotEqual("gypsum", first.Cause.Id);
    }

    /// <summary>Sorbic acid of which some 400 mg/L are undissociated: the rule asks for 200, and the diagnosis calls it no weaker.</summary>
    [Fact]
    public void APreservativeThatPassesIsNotCalledWeak()
    {
        var bottle = Bottle.Of("preserved", 1000, "5..30 °C", ("citric-acid-h2o", 10), ("potassium-sorbate", 0.6), ("manganese-sulfate-h2o", 1));
        var state = bottle.Stock.Chemistry.Mixing;

        Assert.InRange(state.Preservatives.Single().Undissociated.GramsPerLitre, 0.2, 0.5);
        Assert.Equal("it holds preservative enough", new StockTraits(bottle.Stock, state, null, []).Of("feeds").Because);
    }

    /// <summary>A shop that looks closer, or less close, gets the same answer from all.</summary>
    [Theory]
    [InlineData(0.0001)]
    [InlineData(50)]
    public void TheLimitsOfAShopHoldForEveryone(double visible)
    {
        var bottle = Bottle.Of("gypsum", 100, "5..30 °C", ("calcium-nitrate-4h2o", 20), ("magnesium-sulfate-7h2o", 20));
        var limits = DepositLimits.Default.With("calcium-with-sulfate", new OwnerLimits(Visible: visible));
        var judged = DepositJudgement.Of(bottle.Stock, limits);

        Assert.Equal(visible < 1, judged.Deposits.Any(d => d.Owner.Name == "calcium-with-sulfate"));
        Assert.Equal(judged.IsClear, HighestConcentration.Of(bottle.Stock, limits).Factor >= 1);
    }

    [Fact]
    public void TheLimitsOfTheJudgementAreTheDefaultsOfTheRules()
    {
        var usual = new OwnerLimits();
        foreach (var option in DepositOwner.Listed.Select(o => RuleBook.Find(o.Name)!).SelectMany(r => r.Options))
        {
            var expected = option.Name switch { "visible" => usual.Visible, "nearLimit" => usual.NearLimit, "metalShare" => 100 * usual.MetalShare, _ => (double?)null };
            Assert.True(expected is null || Math.Abs(expected.Value - double.Parse(option.Default, System.Globalization.CultureInfo.InvariantCulture)) < 1e-12, option.Name);
        }
    }
}
