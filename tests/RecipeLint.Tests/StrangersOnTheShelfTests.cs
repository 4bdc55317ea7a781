using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

/// <summary>What stands in a shed under a name that no catalogue has, beside what it must never meet.</summary>
public sealed class StrangersOnTheShelfTests
{
    /// <summary>
    /// Acetone and hexamine with peroxide settle as white crystals that go off at a touch; pool tablets are chlorine that ammonium turns to
    /// chloramines (Bretherick's Handbook of Reactive Chemical Hazards, recalled).
    /// </summary>
    [Theory]
    [InlineData("acetone", "hydrogen-peroxide-30", "goes off at a touch")]
    [InlineData("nail polish remover", "hydrogen-peroxide-12", "goes off at a touch")]
    [InlineData("hexamine tablets", "hydrogen-peroxide-35", "goes off at a touch")]
    [InlineData("pool tablets", "ammonium-sulfate", "chloramines")]
    [InlineData("pool granules", "urea", "chloramines")]
    [InlineData("hot tub chlorine", "phosphoric-75", "chlorine")]
    [InlineData("paint thinner", "nitric-68", "react")]
    public void EveryCommandRefusesThem(string stranger, string other, string danger)
    {
        var stock = Stock(Step(stranger, "100 mL"), Step(other, "100 mL"));
        foreach (var command in new[] { "check", "order", "stretch", "proof", "bench-sheet", "label" })
        {
            var answer = Run(stock, command);

            Assert.True(answer.Code == 1, $"{command} ends with {answer.Code}: {answer.Out}{answer.Error}");
            Assert.DoesNotContain("<svg", answer.Out, StringComparison.Ordinal);
        }

        Assert.Contains(danger, Flowing(Run(stock, "check").Out), StringComparison.OrdinalIgnoreCase);
        Assert.Contains("error RL07", Flowing(Run(stock, "check").Out), StringComparison.Ordinal);
    }

    /// <summary>Nobody takes a pinch of what an explosive may be, nor stirs, weighs or warms it.</summary>
    [Fact]
    public void WhiteCrystalsInAcetoneAndPeroxideAreNotTouched()
    {
        var answer = Run(
            Stock(Step("acetone", "200 mL"), Step("hydrogen-peroxide-30", "200 mL"), Step("sulfuric-37", "50 mL")),
            "diagnose", "--seen", "white crystals");

        Assert.Equal(1, answer.Code);
        Assert.Contains("Do not touch, shake, scrape", Flowing(answer.Out), StringComparison.Ordinal);
        Assert.DoesNotContain("Stir a pinch", Flowing(answer.Out), StringComparison.Ordinal);
        Assert.DoesNotContain("Weigh a full measure", Flowing(answer.Out), StringComparison.Ordinal);
    }

    /// <summary>A label on such a bottle would say that it may be corrosive to metals, and no word of the gas.</summary>
    [Fact]
    public void NoLabelIsDrawnForWhatMustNotBeMixed()
    {
        var answer = Run(Stock(Step("sodium-hypochlorite-12.5", "200 mL"), Step("phosphoric-75", "100 mL")), "label");

        Assert.Equal(1, answer.Code);
        Assert.Equal("", answer.Out);
        Assert.Contains("chlorine", answer.Error, StringComparison.Ordinal);
    }

    /// <summary>"Weigh of pool tablets and add it" is no line of a sheet that somebody works by.</summary>
    [Fact]
    public void ASheetForContentsNobodyCanNameIsNone()
    {
        var answer = Run(Stock(Step("blue stuff from the shed", "50 g"), Step("potassium-nitrate", "50 g")), "bench-sheet");

        Assert.Equal(1, answer.Code);
        Assert.Contains("nothing is advised of this stock", Flowing(answer.Out), StringComparison.Ordinal);
        Assert.DoesNotContain("and add it", Flowing(answer.Out), StringComparison.Ordinal);
    }

    [Fact]
    public void NothingIsSaidToMeetItself()
    {
        var answer = Run(Stock(Step("potassium chlorate", "100 g"), Step("sucrose", "100 g")), "bench-sheet");

        Assert.DoesNotContain("chlorate with potassium chlorate", Flowing(answer.Out), StringComparison.Ordinal);
    }

    /// <summary>Bubbles can be a sulfide in acid; that one is in it nobody knows.</summary>
    [Fact]
    public void WhatMayBeInItIsNotSaidToBeInIt()
    {
        var answer = Flowing(Run(
            Stock(Step("blue stuff from the shed", "50 g"), Step("nitric-38", "50 mL")), "diagnose", "--seen", "fizzing").Out);

        Assert.DoesNotContain("The sulfide sets", answer, StringComparison.Ordinal);
        Assert.Contains("sets hydrogen sulfide free", answer, StringComparison.Ordinal);
    }

    /// <summary>What to do otherwise next time is asked of the next bottle, which holds no black mud.</summary>
    [Fact]
    public void TheNextBottleOfAVinegarStockMayHoldVinegar()
    {
        var answer = Flowing(Run(
            Stock(Step("vinegar-5", "60 mL"), Step("manganese-sulfate-h2o", "1.5 g"), Step("zinc-sulfate-7h2o", "0.6 g")),
            "diagnose", "--seen", "stringy slime at the bottom", "--after", "5 weeks").Out);

        Assert.Contains("Bacterial slime", answer, StringComparison.Ordinal);
        Assert.DoesNotContain("vinegar 5 % must not go into it", answer, StringComparison.Ordinal);
    }

    private static string Step(string what, string much) => $$"""{"add": "{{what}}", "amount": "{{much}}"}""";

    private static string Stock(params string[] steps) => $$"""
        {"format": 1, "name": "s", "makes": "1 L", "dose": "1:100", "keep": {"at": "10..25 °C", "for": "2 months", "light": "dark"},
          "steps": [{"pour": "0.5 L", "of": "distilled"}, {{string.Join(", ", steps)}}, {"topUp": "1 L", "of": "distilled"}]}
        """;

    private static Answer Run(string stock, string command, params string[] more)
    {
        using var scratch = new Scratch();
        scratch.Write("s.stock.json", stock);
        return Cli.RunIn(scratch.Path, null, [command, "s.stock.json", .. more]);
    }

    /// <summary>A text without the line breaks of its page.</summary>
    private static string Flowing(string text) =>
        string.Join(' ', text.Split((char[])[' ', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries));
}
