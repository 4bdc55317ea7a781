using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Chemistry.Tests.Quantities;

/// <summary>By hand: what is rounded so that nobody measures 643 mL, and six digits at the ends of the arithmetic.</summary>
public sealed class TwoDigitsTests
{
    [Theory]
    [InlineData(643, 650, 640)]
    [InlineData(640, 640, 640)]
    [InlineData(640.001, 650, 640)]
    [InlineData(640.0001, 640, 640)]
    [InlineData(639.9999, 640, 640)]
    [InlineData(639.99, 640, 630)]
    [InlineData(0.0643, 0.065, 0.064)]
    [InlineData(1, 1, 1)]
    [InlineData(1.01, 1.1, 1)]
    [InlineData(99.1, 100, 99)]
    [InlineData(999, 1000, 990)]
    [InlineData(100, 100, 100)]
    [InlineData(101, 110, 100)]
    [InlineData(10, 10, 10)]
    [InlineData(9.99, 10, 9.9)]
    [InlineData(0.1, 0.1, 0.1)]
    [InlineData(1e-9, 1e-9, 1e-9)]
    public void TwoDigitsUpAndDown(double value, double up, double down)
    {
        Assert.Equal(up, Rounding.TwoDigitsUp(value));
        Assert.Equal(down, Rounding.TwoDigitsDown(value));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-643)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    public void WhatIsNotAboveZeroAndFiniteComesBack(double value)
    {
        Assert.Equal(value, Rounding.TwoDigitsUp(value));
        Assert.Equal(value, Rounding.TwoDigitsDown(value));
    }

    /// <summary>The first rows by arithmetic, the last ones too far out for it or in the middle of two roundings.</summary>
    [Theory]
    [InlineData(1.2345649, 1.23456)]
    [InlineData(1.2345651, 1.23457)]
    [InlineData(-1.2345651, -1.23457)]
    [InlineData(999999.4, 999999)]
    [InlineData(999999.6, 1e6)]
    [InlineData(123456.4, 123456)]
    [InlineData(100000.4, 100000)]
    [InlineData(99999.94, 99999.9)]
    [InlineData(0.1 + 0.2, 0.3)]
    [InlineData(1234567, 1234570)]
    [InlineData(1.2345678e-14, 1.23457e-14)]
    [InlineData(1.2345678e19, 1.23457e19)]
    [InlineData(1.2345678e-16, 1.23457e-16)]
    [InlineData(1.2345678e21, 1.23457e21)]
    [InlineData(1.5, 1.5)]
    [InlineData(0.5, 0.5)]
    public void SixDigitsOnBothSides(double value, double rounded) => Assert.Equal(rounded, Rounding.SixDigits(value));
}
