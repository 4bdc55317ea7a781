using RecipeLint.Advice.Diagnosis;
using RecipeLint.Analysis.Observations;

namespace RecipeLint.Advice.Tests.Diagnosis;

/// <summary>The colours that the liquid of a stock may have, by what is in it, and when a colour that was told is that of the liquid.</summary>
public sealed class LiquidColourTests
{
    [Theory]
    [InlineData("copper-sulfate-5h2o", "blue blue-green")]
    [InlineData("tartrazine", "yellow tan orange cream brown rust")]
    [InlineData("allura-red-ac", "red pink purple rust brown")]
    [InlineData("sunset-yellow-fcf", "orange rust yellow")]
    [InlineData("fe-dtpa-hna", "yellow tan orange cream brown rust")]
    [InlineData("fe-eddha-na", "red pink purple rust brown")]
    [InlineData("ferrous-sulfate-7h2o", "green blue-green yellow")]
    [InlineData("manganese-sulfate-h2o", "pink red salmon")]
    [InlineData("fe-dtpa-liquid-6", "red rust brown orange pink purple tan")]
    [InlineData("humic-acid", "black brown")]
    [InlineData("potassium-nitrate", "")]
    [InlineData("copper-sulfate-5h2o tartrazine", "blue blue-green yellow tan orange cream brown rust green")]
    [InlineData("copper-sulfate-5h2o allura-red-ac", "blue blue-green red pink purple rust brown")]
    public void LiquidMayHaveTheseColours(string substances, string colours)
    {
        var liquid = Of(substances);
        Assert.True(liquid.IsKnown);
        Assert.Equal(
            colours.Split(' ', StringSplitOptions.RemoveEmptyEntries).Order(StringComparer.Ordinal),
            Vocabulary.Signs.Where(s => s.Kind == SignKind.Colour && liquid.Fits(s)).Select(s => s.Id).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void ADyeOfUnknownColourDecides()
    {
        Assert.False(Of("food-colour").IsKnown);
        Assert.False(Of("copper-sulfate-5h2o food-colour").IsKnown);
    }

    /// <summary>Told of no deposit, all of them fitting: they are the liquid's. Else they stay what they are.</summary>
    [Theory]
    [InlineData("copper-sulfate-5h2o", "+blue", "", "blue")]
    [InlineData("copper-sulfate-5h2o", "+blue +weeks", "weeks", "blue")]
    [InlineData("copper-sulfate-5h2o", "+blue -sand", "sand", "blue")]
    [InlineData("copper-sulfate-5h2o", "+blue +sand", "blue sand", "")]
    [InlineData("copper-sulfate-5h2o", "+blue +hard", "blue hard", "")]
    [InlineData("copper-sulfate-5h2o", "+blue +bottom", "blue bottom", "")]
    [InlineData("copper-sulfate-5h2o", "+blue +vinegar-fizzes", "blue vinegar-fizzes", "")]
    [InlineData("copper-sulfate-5h2o", "+blue +deposit", "blue deposit", "")]
    [InlineData("copper-sulfate-5h2o", "+blue +red", "blue red", "")]
    [InlineData("copper-sulfate-5h2o", "-blue", "blue", "")]
    [InlineData("food-colour", "+blue", "blue", "")]
    [InlineData("potassium-nitrate", "+smell-musty", "smell-musty", "")]
    public void AColourThatFitsIsClaimedForTheLiquid(string substances, string told, string left, string claimed)
    {
        var observation = Of(substances).Claim(Invented.Told(told));
        Assert.Equal(left, string.Join(' ', observation.Signs.Select(s => s.Sign.Id)));
        Assert.Equal(claimed, string.Join(' ', observation.LiquidColours.Select(c => c.Id)));
    }

    private static LiquidColour Of(string substances) =>
        new(DiagnosisCase.StockOf(string.Join(", ", substances.Split(' ').Select(s => $"{s} 1 g")) + " in 1 L"));
}
