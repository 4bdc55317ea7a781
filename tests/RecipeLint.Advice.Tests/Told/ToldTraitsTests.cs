using RecipeLint.Advice.Diagnosis;
using RecipeLint.Advice.Tanks;
using RecipeLint.Advice.Tests.Diagnosis;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Advice.Tests.Told;

/// <summary>What each trait says of bottles and tanks, whether it holds or not.</summary>
public sealed class ToldTraitsTests
{
    private static readonly string[] _ofBottles =
    [
        .. DiagnosisData.Causes.SelectMany(c => c.MadeLikelyBy.Concat(c.NeedsAnyOf)).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal),
    ];

    private static readonly string[] _ofTanks =
    [
        .. TankData.Causes.SelectMany(c => c.Cause.MadeLikelyBy.Concat(c.Cause.NeedsAnyOf)).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal),
    ];

    /// <summary>Bottles in one line, a trait or its bound in each.</summary>
    private static readonly string[] _mixes =
    [
        "humic-acid 5 g, potassium-hydroxide 1 g in 1 L",
        "tartrazine 3 g, food-colour 1 g in 1 L",
        "sodium-thiosulfate-5h2o 10 g in 1 L",
        "potassium-chloride 60 g in 1 L",
        "hydrogen-peroxide-35 5 mL in 1 L",
        "hydrogen-peroxide-35 200 mL in 1 L",
        "sodium-hypochlorite-5 50 mL in 1 L",
        "nitric-38 10 mL, calcium-nitrate-fertiliser 100 g in 1 L",
        "potassium-nitrite 5 g in 1 L",
        "citric-acid-h2o 8 g, potassium-bicarbonate 4 g in 1 L",
        "urea 50 g, potassium-nitrate 20 g in 1 L",
        "glycine 5 g in 1 L",
        "fe-dtpa-hna 4 g in 1 L",
        "disodium-edta-2h2o 4 g in 1 L",
        "sodium-molybdate-2h2o 1 g, sunset-yellow-fcf 1 g in 1 L",
        "vinegar-5 300 mL in 1 L",
        "vinegar-5 30 mL, potassium-sorbate 1 g in 1 L",
        "potassium-hydroxide 20 g in 1 L",
        "copper-sulfate-5h2o 12 g in 1 L",
        "potassium-silicate-29be 50 mL in 1 L",
        "monopotassium-phosphate 15 g in 1 L",
        "sucrose 20 g in 1 L",
        "sucrose 700 g in 1 L",
        "citric-acid-h2o 20 g, sodium-benzoate 0.2 g in 1 L",
        "ammonium-sulfate 40 g in 1 L",
        "potassium-chloride 250 g, sucrose 5 g in 1 L",
        "potassium-hydroxide 0.02 g, potassium-nitrate 1 g in 1 L",
    ];

    public static TheoryData<int> Mixes() => [.. Enumerable.Range(0, _mixes.Length)];

    [Theory]
    [MemberData(nameof(Mixes))]
    public void DiagnosisOfABottleKnowsTheseTraits(int mix) => Hold(new ToldText(), DiagnosisCase.StockOf(_mixes[mix]), $"diagnosis-traits-{mix}", _mixes[mix]);

    public static TheoryData<string> Bottles() => new("b", "trace", "wet", "set", "hard", "rain", "dry", "portions", "acid", "strange", "barrel");

    [Theory]
    [MemberData(nameof(Bottles))]
    public void DiagnosisOfABottleOfTheShopKnowsTheseTraits(string name) => Hold(new ToldText(), ToldShop.Stock(name), $"diagnosis-traits-of-{name}", name);

    private static void Hold(ToldText text, StockFacts stock, string file, string name)
    {
        text.Line($"{name}");
        var traits = new StockTraits(stock, stock.Chemistry.Mixing, null, []);
        foreach (var trait in _ofBottles)
        {
            Write(text, trait, traits.Of(trait));
        }

        text.Line($"pure water {traits.WaterIsPure}").Hold(file);
    }

    /// <summary>Half a degree above freezing is frost still.</summary>
    [Theory]
    [InlineData(null, false, false)]
    [InlineData(0.5, false, true)]
    [InlineData(0.51, false, false)]
    [InlineData(20.0, true, true)]
    public void DiagnosisSeesFrostFromHalfADegreeDown(double? seenAt, bool ice, bool frost)
    {
        var stock = ToldShop.Stock("b");
        var traits = new StockTraits(stock, stock.Chemistry.Mixing, seenAt is { } at ? new Temperature(at) : null, [], ice);
        Assert.Equal((frost, ice ? "there was ice in it" : frost ? "it stood at or below freezing" : "it did not stand in frost"), (traits.Of("frost").Holds == true, traits.Of("frost").Because));
    }

    [Theory]
    [InlineData("hunger")]
    [InlineData("feeds-yeast")]
    public void DiagnosisKnowsNoOtherTrait(string trait)
    {
        var stock = ToldShop.Stock("b");
        Assert.Equal($"There is no trait '{trait}'.", Assert.Throws<InvalidOperationException>(() => new StockTraits(stock, stock.Chemistry.Mixing, null, []).Of(trait)).Message);
        Assert.Equal($"There is no trait '{trait}' of a tank.", Assert.Throws<InvalidOperationException>(() => new TankTraits(ToldShop.Recipe("feed")).Of(trait)).Message);
    }

    /// <summary>Iron of a chelate is iron: what lacks is iron(II), and nobody is told that his recipe brings none.</summary>
    [Theory]
    [InlineData("fe-dtpa-hna 4 g in 1 L", "Fe+2", "iron(II)")]
    [InlineData("ferrous-sulfate-7h2o 4 g in 1 L", "Fe+3", "iron(III)")]
    [InlineData("potassium-nitrate 4 g in 1 L", "Fe+2", "iron")]
    [InlineData("potassium-nitrate 4 g in 1 L", "Fe+3", "iron")]
    [InlineData("fe-dtpa-hna 4 g in 1 L", "Cu+2", "copper")]
    public void DiagnosisNamesWhatLacks(string mix, string component, string name)
    {
        var stock = DiagnosisCase.StockOf(mix);
        var traits = new StockTraits(stock, stock.Chemistry.Mixing, null, []);
        Assert.Equal(name, traits.NameOfLacking(component));
        Assert.Equal(new Trait(false, $"the recipe brings no {name}"), traits.Of(component));
    }

    public static TheoryData<string> Recipes() => new("feed", "still", "plain", "direct", "rusty");

    [Theory]
    [MemberData(nameof(Recipes))]
    public void DiagnosisOfATankKnowsTheseTraits(string name)
    {
        var text = new ToldText();
        var traits = new TankTraits(ToldShop.Recipe(name));
        foreach (var trait in _ofTanks)
        {
            Write(text, trait, traits.Of(trait));
        }

        text.Line($"of every feed {string.Join(", ", _ofTanks.Where(TankTraits.IsOfEveryFeed))}").Hold($"tanks-traits-of-{name}");
    }

    private static void Write(ToldText text, string name, Trait trait) =>
        text.Line($"{name}: {trait.Holds} '{trait.Because}'{(trait.RulesOut ? " rules out" : "")}{(trait.IsSlight ? " slight" : "")}");
}
