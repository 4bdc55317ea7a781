using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Analysis.Tests;

public sealed class RoundingTests
{
    [Theory]
    [InlineData(0, 0)]
    [InlineData(123456.49, 123456)]
    [InlineData(0.30000000000000004, 0.3)]
    [InlineData(-1.2345678e-9, -1.23457e-9)]
    [InlineData(9999999, 1e7)]
    public void SixDigitsAreKept(double value, double expected) => Assert.Equal(expected, Rounding.SixDigits(value));

    [Fact]
    public void WhatIsNoNumberComesBack() => Assert.True(double.IsNaN(Rounding.SixDigits(double.NaN)));
}
