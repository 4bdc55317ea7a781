using RecipeLint.Advice.Diagnosis;
using RecipeLint.Analysis.Observations;

namespace RecipeLint.Advice.Tests.Diagnosis;

/// <summary>
/// How the colours that the liquid may have (<see cref="LiquidColourTests"/>) weigh in a diagnosis, and those of things beside the ones told there.
/// </summary>
public sealed class ColourSignsTests
{
    [Theory]
    [InlineData("fe-edta-na-3h2o 10 g in 1 L", "yellow tan orange cream brown rust")]
    [InlineData("seaweed-extract 10 g in 1 L", "brown tan rust orange")]
    [InlineData("copper-chloride-2h2o 10 g in 1 L", "blue blue-green green yellow")]
    [InlineData("nickel-sulfate-6h2o 10 g in 1 L", "green blue-green yellow")]
    [InlineData("copper-sulfate-5h2o 1 g, fe-edta-na-3h2o 1 g in 1 L", "blue blue-green yellow tan orange cream brown rust green")]
    [InlineData("potassium-nitrate 10 g, manganese-sulfate-h2o 10 g, tartrazine 0.1 g in 1 L", "pink red salmon yellow tan orange cream brown rust")]
    public void TheColoursOfAStockAreThoseOfWhatIsInIt(string mix, string colours)
    {
        var liquid = new LiquidColour(DiagnosisCase.StockOf(mix));

        Assert.True(liquid.IsKnown);
        Assert.Equal(
            colours.Split(' ', StringSplitOptions.RemoveEmptyEntries).Order(),
            Vocabulary.Signs.Where(s => s.Kind == SignKind.Colour && liquid.Fits(s)).Select(s => s.Id).Order());
    }

    /// <summary>A food colour has the colour of the bottle it was bought in, which no catalogue knows; green was called a wrong colour.</summary>
    [Theory]
    [InlineData("food-colour 1 g in 1 L", false)]
    [InlineData("food-colour 1 g, tartrazine 0.1 g in 1 L", false)]
    [InlineData("tartrazine 0.1 g, potassium-nitrate 10 g in 1 L", true)]
    public void ADyeOfAnyColourLeavesTheColourOpen(string mix, bool known)
    {
        Assert.Equal(known, new LiquidColour(DiagnosisCase.StockOf(mix)).IsKnown);
        Assert.Equal(known, Told(mix, "the liquid is blue").Evidence.Any(e => e.Text.Contains("the colour this stock should have")));
    }

    /// <summary>A colour told of no deposit, which the liquid should have, is the liquid's.</summary>
    [Theory]
    [InlineData("dark red", "red")]
    [InlineData("dark red, a white powder", "")]
    [InlineData("dark red, hard", "")]
    [InlineData("dark red at the bottom", "")]
    [InlineData("dark red, dissolves on warming", "")]
    [InlineData("dark red, a deposit", "")]
    [InlineData("dark red, no deposit", "red")]
    [InlineData("dark red, no powder", "red")]
    [InlineData("dark red after days", "red")]
    [InlineData("dark red and blue", "")]
    [InlineData("not red", "")]
    public void AColourToldOfNoDepositIsTheLiquids(string seen, string colours)
    {
        var told = ObservationReader.Read(seen);
        var claimed = new LiquidColour(DiagnosisCase.StockOf("fe-eddha-na 10 g in 1 L")).Claim(told);

        Assert.Equal(colours.Split(' ', StringSplitOptions.RemoveEmptyEntries), claimed.LiquidColours.Select(s => s.Id));
        Assert.Equal(
            told.Signs.Where(s => !(s.Present && claimed.LiquidColours.Contains(s.Sign))), claimed.Signs);
    }

    [Fact]
    public void AColourToldOfTheLiquidStaysBesideAnother()
    {
        var red = new Seen(Vocabulary.Sign("red"), true);
        var told = new Observation { Signs = [red], LiquidColours = [Vocabulary.Sign("brown"), red.Sign] };

        Assert.Equal(
            ["brown", "red"],
            new LiquidColour(DiagnosisCase.StockOf("fe-eddha-na 10 g in 1 L")).Claim(told).LiquidColours.Select(s => s.Id));
    }

    [Theory]
    [InlineData("the liquid is red", "red is the colour this stock should have", 2.6)]
    [InlineData("the liquid is red, since weeks", "red is the colour this stock should have", 2.6)]
    [InlineData("the liquid is red, smells musty", "red is the colour this stock should have", 1.2)]
    [InlineData("the liquid is blue", "blue is not the colour this stock should have", -1.0)]
    [InlineData("the liquid is red and blue", "red and blue is not the colour this stock should have", -1.0)]
    public void TheRightColourSpeaksForNothingWrong(string seen, string words, double weight) => Assert.Contains(
        Told("fe-eddha-na 10 g in 1 L", seen).Evidence, e => e.Text == words && e.FromStock && Math.Abs(e.Weight - weight) < 1e-9);

    private static RankedCause Told(string mix, string seen) =>
        Diagnoser.Of(DiagnosisCase.StockOf(mix), ObservationReader.Read(seen), null).Causes.Single(c => c.Cause.Id == "nothing-wrong");
}
