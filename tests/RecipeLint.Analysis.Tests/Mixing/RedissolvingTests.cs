using RecipeLint.Analysis.Mixing;
using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Analysis.Tests.Mixing;

public sealed class RedissolvingTests
{
    [Fact]
    public void EverySolidThatFormsReadilySaysWhenItStartsAndHowItRedissolves()
    {
        var readily = ConstantSet.Product.Solids.Where(s => s.Role is SolidRole.FormsReadily or SolidRole.SolubleSalt).ToList();
        Assert.All(readily, s => Assert.NotNull(s.StartsWhileMixing));
        Assert.All(readily, s => Assert.EndsWith(".", s.Redissolves!.Because, StringComparison.Ordinal));
        Assert.All(readily, s => Assert.NotEmpty(s.Redissolves!.Source));
    }

    /// <summary>Common practice, no source: rust, EDTA acid, gypsum and calcium phosphates outlast the mixing; boric acid and salts do not.</summary>
    [Theory]
    [InlineData("Ferrihydrite (amorphous)", true)]
    [InlineData("EDTA acid", true)]
    [InlineData("Gypsum", true)]
    [InlineData("Brushite", true)]
    [InlineData("Boric acid", false)]
    [InlineData("Niter", false)]
    public void SlowOnesCountAsPermanent(string solid, bool slowly) =>
        Assert.Equal(slowly, Redissolving.Of(ConstantSet.Product.FindSolid(solid)!).Slowly);
}
