using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

public sealed class DissolveTests
{
    [Fact]
    public void ATraineeSeesWhatAMixComesTo()
    {
        var answer = Cli.Run("dissolve", "2 g/L K2SO4 + 1.5 g/L MgSO4.7H2O", "--at", "5 °C", "--ph", "5.8");

        Assert.Equal(0, answer.Code);
        Assert.Empty(answer.Error);
        Assert.Contains("nothing falls out", answer.Out, StringComparison.Ordinal);
        Assert.Contains("5.80", answer.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("xyz 4 g/L", "20 °C", "6", "'xyz'")]
    [InlineData("KNO3 5 g", "20 °C", "6", "filled up to")]
    [InlineData("KNO3 5 g/L", "warm", "6", "'warm'")]
    [InlineData("KNO3 5 g/L", "4..30 °C", "6", "one temperature")]
    [InlineData("KNO3 5 g/L", "60 °C", "6", "0 to 45 °C")]
    [InlineData("KNO3 5 g/L", "20 °C", "15", "outside 0 to 14")]
    [InlineData("KNO3 9 kg/L", "20 °C", "6", "no room")]
    public void WhatCannotBeComputedIsOneLineAndWrongUsage(string mix, string at, string ph, string part)
    {
        var answer = Cli.Run("dissolve", mix, "--at", at, "--ph", ph);

        Assert.Equal(2, answer.Code);
        Assert.Empty(answer.Out);
        Assert.Contains(part, answer.Error, StringComparison.Ordinal);
        Assert.Equal(1, answer.Error.Count(c => c == '\n'));
    }
}
