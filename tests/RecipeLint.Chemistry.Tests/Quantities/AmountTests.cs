using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Chemistry.Tests.Quantities;

public sealed class AmountTests
{
    private static readonly Amount Two = new(2), Three = new(3);

    [Fact]
    public void AmountsAreCountedWith()
    {
        Assert.Equal(new Amount(5), Two + Three);
        Assert.Equal(new Amount(-1), Two - Three);
        Assert.Equal(new Amount(8), Two * 4);
        Assert.Equal(new Amount(12), 4 * Three);
        Assert.Equal(1.5, Three / Two);
        Assert.Equal(new Amount(0.75), Three / 4);
        Assert.Equal(new AmountConcentration(0.25), Two / new Volume(8));
        Assert.Equal(new Mass(202), Two * new MolarMass(101));
        Assert.Equal(new Amount(0), Amount.Zero);
    }

    [Fact]
    public void AmountsAreHeldAgainstEachOther()
    {
        var again = new Amount(2);
        Assert.Equal((true, false, false), (Two < Three, Three < Two, Two < again));
        Assert.Equal((false, true, false), (Two > Three, Three > Two, Two > again));
        Assert.Equal((true, false, true), (Two <= Three, Three <= Two, Two <= again));
        Assert.Equal((false, true, true), (Two >= Three, Three >= Two, Two >= again));
        Assert.Equal((-1, 0, 1), (Two.CompareTo(Three), Two.CompareTo(again), Three.CompareTo(Two)));
    }
}
