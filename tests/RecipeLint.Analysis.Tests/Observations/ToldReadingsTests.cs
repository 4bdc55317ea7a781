using RecipeLint.Analysis.Observations;

namespace RecipeLint.Analysis.Tests.Observations;

public sealed class ToldReadingsTests
{
    [Theory]
    [InlineData("looks fine but the pH is 8", "pH 8")]
    [InlineData("ph 6.4, milky", "pH 6.4")]
    [InlineData("PH went up to 7.9", "pH 7.9")]
    [InlineData("EC is 2.1 mS/cm and pH 5.2", "EC 2.1 mS/cm, pH 5.2")]
    [InlineData("milky after 5 mL of pH down", "")]
    [InlineData("pH down 5 mL went in", "")]
    [InlineData("pH 10 mL", "")]
    [InlineData("EC 2.1", "")]
    [InlineData("pH 155", "")]
    [InlineData("white needles", "")]
    public void ReadingsAreHeard(string text, string readings) => Assert.Equal(readings, string.Join(", ", ToldReadings.Of(text)));
}
