using System.Globalization;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Chemistry.Tests.Quantities;

/// <summary>Six digits by arithmetic are the six digits that are written.</summary>
public sealed class RoundingTests
{
    [Fact]
    public void SixDigitsAreThoseThatAreWritten()
    {
        var random = new Random(20261129);
        for (var i = 0; i < 400_000; i++)
        {
            Same(random.NextDouble() * Math.Pow(10, random.Next(-24, 26)) * (random.Next(2) == 0 ? 1 : -1));
            // Six digits and a half, and one unit of the last place beside it: where rounding turns.
            var half = (random.Next(100_000, 1_000_000) + 0.5) * Math.Pow(10, random.Next(-20, 15));
            Same(half);
            Same(Math.BitIncrement(half));
            Same(Math.BitDecrement(half));
            // A value that has six digits already, and powers of ten from both sides.
            Same(random.Next(1, 1_000_000) / Math.Pow(10, random.Next(0, 15)));
            var ten = Math.Pow(10, random.Next(-18, 22));
            Same(ten);
            Same(Math.BitIncrement(ten));
            Same(Math.BitDecrement(ten));
        }
    }

    [Theory]
    [InlineData(0.0)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    public void WhatHasNoDigitsComesBack(double value) => Assert.Equal(value, Rounding.SixDigits(value));

    private static void Same(double value) => Assert.Equal(
        BitConverter.DoubleToInt64Bits(
            double.Parse(value.ToString("E5", CultureInfo.InvariantCulture), NumberStyles.Float, CultureInfo.InvariantCulture)),
        BitConverter.DoubleToInt64Bits(Rounding.SixDigits(value)));
}
