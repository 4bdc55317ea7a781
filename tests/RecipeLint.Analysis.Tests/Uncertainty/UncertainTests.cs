using CsCheck;
using RecipeLint.Analysis.Uncertainty;

namespace RecipeLint.Analysis.Tests.Uncertainty;

public sealed class UncertainTests
{
    private static readonly Gen<Uncertain> Some =
        Gen.Select(Gen.Double[-1e3, 1e3], Gen.Select(Gen.Int[0, 6], Gen.Double[-10, 10]).Array[0, 8])
            .Select((value, errors) => Uncertain.Measured(value, errors.Select(e => (new ErrorSource($"s{e.Item1}", "source"), e.Item2))));

    [Fact]
    public void ADifferenceOfAValueWithItselfIsCertain()
    {
        var x = Uncertain.Measured(5, (new("a", ""), 1), (new("b", ""), 0.5));
        Assert.Equal(0, (x - x).Standard);
        Assert.Equal(0, (x / x).Standard, 15);
        Assert.Empty((x - x).Shares);
    }

    [Fact]
    public void NothingIsRelativeToZeroAndNothingIsDividedByIt()
    {
        var zero = Uncertain.Measured(0, (new("a", ""), 1));
        Assert.Null(zero.RelativeStandard);
        Assert.Null(Uncertain.Exactly(3).Correlation(zero));
        Assert.Throws<DivideByZeroException>(() => Uncertain.Exactly(1) / zero);
    }

    [Fact]
    public void VerySmallUncertaintiesDoNotVanish()
    {
        var x = Uncertain.Measured(1e-190, (new("a", ""), 3e-200), (new("b", ""), 4e-200));
        Assert.InRange(x.Standard, 4.999999e-200, 5.000001e-200);
        Assert.Equal(0.64, x.Shares[0].Fraction, 12);
    }

    [Fact]
    public void SharesSumToOneAndNothingIsNaN() =>
        Gen.Select(Some, Some, Some).Sample((a, b, c) =>
        {
            foreach (var x in new[] { a + b, a - b, a * b, (a * b) - c, 2 * a, Uncertain.Sum([a, b, c]) })
            {
                Assert.True(double.IsFinite(x.Standard));
                Assert.True(x.Standard == 0 ? x.Shares.Count == 0 : Math.Abs(x.Shares.Sum(s => s.Fraction) - 1) < 1e-12);
                Assert.All(x.Shares, s => Assert.InRange(s.Fraction, 0, 1 + 1e-12));
            }
        });

    [Fact]
    public void ASumDoesNotDependOnTheOrderOfItsTerms() =>
        Some.Array[1, 12].Sample(terms =>
        {
            var forward = Uncertain.Sum(terms);
            var back = Uncertain.Sum(terms.Reverse());
            Assert.Equal(forward.Value, back.Value);
            Assert.Equal(forward.Standard, back.Standard);
            Assert.Equal(forward.Shares, back.Shares);
        });

    // The variance of a sum by its definition: var(a + b) = var a + var b + 2 cov(a, b) (JCGM 100:2008, equation 16).
    [Fact]
    public void SharedSourcesAreCovariance() =>
        Gen.Select(Some, Some).Sample((a, b) =>
        {
            var expected = (a.Standard * a.Standard) + (b.Standard * b.Standard) + (2 * a.Covariance(b));
            var sum = (a + b).Standard;
            Assert.True(Math.Abs((sum * sum) - expected) <= 1e-9 * (1 + (a.Standard * a.Standard) + (b.Standard * b.Standard)));
        });
}
