using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Chemistry.Tests.Quantities;

/// <summary>Every operation of every quantity, with figures that a power of two makes exact and that nothing else would give.</summary>
public sealed class QuantityTests
{
    [Fact]
    public void MassesAreCountedWith()
    {
        Assert.Equal(new Mass(8), new Mass(6) + new Mass(2));
        Assert.Equal(new Mass(4), new Mass(6) - new Mass(2));
        Assert.Equal(new Mass(24), new Mass(6) * 4.0);
        Assert.Equal(new Mass(24), 4.0 * new Mass(6));
        Assert.Equal(3, new Mass(6) / new Mass(2));
        Assert.Equal(new Mass(1.5), new Mass(6) / 4.0);
        Assert.Equal(6000, new Mass(6).Milligrams);
        Assert.Equal(new Mass(0.25), Mass.FromMilligrams(250));
        Assert.Equal(new MassConcentration(1.5), new Mass(6) / new Volume(4));
        Assert.Equal(new Amount(0.5), new Mass(6) / new MolarMass(12));
        Assert.Equal(new Volume(0.004), new Mass(6) / new Density(1.5));
        Assert.Equal(new Mass(1.5), new Mass(6) * new MassFraction(0.25));
        Assert.Equal(new Mass(0), Mass.Zero);
    }

    [Fact]
    public void VolumesAreCountedWith()
    {
        Assert.Equal(new Volume(8), new Volume(6) + new Volume(2));
        Assert.Equal(new Volume(4), new Volume(6) - new Volume(2));
        Assert.Equal(new Volume(24), new Volume(6) * 4);
        Assert.Equal(new Volume(24), 4 * new Volume(6));
        Assert.Equal(3, new Volume(6) / new Volume(2));
        Assert.Equal(new Volume(1.5), new Volume(6) / 4);
        Assert.Equal(6000, new Volume(6).Millilitres);
        Assert.Equal(new Volume(0.25), Volume.FromMillilitres(250));
        Assert.Equal(new Mass(9000), new Volume(6) * new Density(1.5));
        Assert.Equal(new Volume(0), Volume.Zero);
    }

    [Fact]
    public void AmountConcentrationsAreCountedWith()
    {
        AmountConcentration six = new(6), two = new(2);
        Assert.Equal(new AmountConcentration(8), six + two);
        Assert.Equal(new AmountConcentration(4), six - two);
        Assert.Equal(new AmountConcentration(24), six * 4);
        Assert.Equal(new AmountConcentration(24), 4 * six);
        Assert.Equal(3, six / two);
        Assert.Equal(new AmountConcentration(1.5), six / 4);
        Assert.Equal(6000, six.MillimolesPerLitre);
        Assert.Equal(new AmountConcentration(0.25), AmountConcentration.FromMillimolesPerLitre(250));
        Assert.Equal(new Amount(24), six * new Volume(4));
        Assert.Equal(new MassConcentration(72), six * new MolarMass(12));
        Assert.Equal(new AmountConcentration(0), AmountConcentration.Zero);
    }

    [Fact]
    public void MassConcentrationsAreCountedWith()
    {
        MassConcentration six = new(6), two = new(2);
        Assert.Equal(new MassConcentration(8), six + two);
        Assert.Equal(new MassConcentration(4), six - two);
        Assert.Equal(new MassConcentration(24), six * 4);
        Assert.Equal(new MassConcentration(24), 4 * six);
        Assert.Equal(3, six / two);
        Assert.Equal(new MassConcentration(1.5), six / 4);
        Assert.Equal(6000, six.MilligramsPerLitre);
        Assert.Equal(new Mass(24), six * new Volume(4));
        Assert.Equal(new AmountConcentration(0.5), six / new MolarMass(12));
        Assert.Equal(new MassConcentration(0), MassConcentration.Zero);
    }

    [Fact]
    public void ChargeConcentrationsAreCountedWith()
    {
        ChargeConcentration six = new(6), two = new(2);
        Assert.Equal(new ChargeConcentration(8), six + two);
        Assert.Equal(new ChargeConcentration(4), six - two);
        Assert.Equal(new ChargeConcentration(24), six * 4);
        Assert.Equal(new ChargeConcentration(24), 4 * six);
        Assert.Equal(3, six / two);
        Assert.Equal(new ChargeConcentration(1.5), six / 4);
        Assert.Equal(6000, six.MilliequivalentsPerLitre);
        Assert.Equal(new ChargeConcentration(0), ChargeConcentration.Zero);
    }

    /// <summary>1:200 of 50 L are 250 mL.</summary>
    [Fact]
    public void ADoseIsAShareOfTheFinalSolution()
    {
        Assert.Equal(0.005, Dose.OneIn(200).LitresPerLitre);
        Assert.Equal(200, Dose.OneIn(200).Dilution);
        Assert.Equal(5, Dose.OneIn(200).MillilitresPerLitre);
        Assert.Equal(Dose.OneIn(200), Dose.FromMillilitresPerLitre(5));
        Assert.Equal(new Volume(0.25), Dose.OneIn(200) * new Volume(50));
    }

    [Fact]
    public void AFractionIsPerCentOverAHundred()
    {
        Assert.Equal(25, new MassFraction(0.25).Percent);
        Assert.Equal(new MassFraction(0.25), MassFraction.FromPercent(25));
        Assert.Equal(new MassFraction(1), MassFraction.One);
    }

    [Fact]
    public void EveryQuantityIsHeldAgainstItsKind()
    {
        Ordered(new Mass(2), new Mass(3), new Mass(2), (a, b) => a < b, (a, b) => a > b, (a, b) => a <= b, (a, b) => a >= b);
        Ordered(new Volume(2), new Volume(3), new Volume(2), (a, b) => a < b, (a, b) => a > b, (a, b) => a <= b, (a, b) => a >= b);
        Ordered(new Amount(2), new Amount(3), new Amount(2), (a, b) => a < b, (a, b) => a > b, (a, b) => a <= b, (a, b) => a >= b);
        Ordered(new AmountConcentration(2), new(3), new(2), (a, b) => a < b, (a, b) => a > b, (a, b) => a <= b, (a, b) => a >= b);
        Ordered(new MassConcentration(2), new(3), new(2), (a, b) => a < b, (a, b) => a > b, (a, b) => a <= b, (a, b) => a >= b);
        Ordered(new ChargeConcentration(2), new(3), new(2), (a, b) => a < b, (a, b) => a > b, (a, b) => a <= b, (a, b) => a >= b);
        Ordered(new Conductivity(2), new(3), new(2), (a, b) => a < b, (a, b) => a > b, (a, b) => a <= b, (a, b) => a >= b);
        Ordered(new Density(2), new(3), new(2), (a, b) => a < b, (a, b) => a > b, (a, b) => a <= b, (a, b) => a >= b);
        Ordered(new Dose(2), new(3), new(2), (a, b) => a < b, (a, b) => a > b, (a, b) => a <= b, (a, b) => a >= b);
        Ordered(new Duration(2), new(3), new(2), (a, b) => a < b, (a, b) => a > b, (a, b) => a <= b, (a, b) => a >= b);
        Ordered(new MassFraction(2), new(3), new(2), (a, b) => a < b, (a, b) => a > b, (a, b) => a <= b, (a, b) => a >= b);
        Ordered(new MolarMass(2), new(3), new(2), (a, b) => a < b, (a, b) => a > b, (a, b) => a <= b, (a, b) => a >= b);
        Ordered(new Temperature(2), new(3), new(2), (a, b) => a < b, (a, b) => a > b, (a, b) => a <= b, (a, b) => a >= b);
    }

    private static void Ordered<T>(
        T two, T three, T again, Func<T, T, bool> less, Func<T, T, bool> more, Func<T, T, bool> atMost, Func<T, T, bool> atLeast)
        where T : IComparable<T>
    {
        Assert.Equal((true, false, false), (less(two, three), less(three, two), less(two, again)));
        Assert.Equal((false, true, false), (more(two, three), more(three, two), more(two, again)));
        Assert.Equal((true, false, true), (atMost(two, three), atMost(three, two), atMost(two, again)));
        Assert.Equal((false, true, true), (atLeast(two, three), atLeast(three, two), atLeast(two, again)));
        Assert.Equal((-1, 0, 1), (two.CompareTo(three), two.CompareTo(again), three.CompareTo(two)));
    }
}
