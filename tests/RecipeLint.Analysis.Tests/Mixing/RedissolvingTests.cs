using RecipeLint.Analysis.Mixing;
using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Analysis.Tests.Mixing;

public sealed class RedissolvingTests
{
    [Fact]
    public void Every_solid_that_forms_readily_is_listed_once()
    {
        var readily = ConstantSet.Product.Solids.Where(s => s.Role == SolidRole.FormsReadily).Select(s => s.Name).Order(StringComparer.Ordinal);
        Assert.Equal(readily, Redissolving.All.Select(r => r.Solid).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Every_entry_has_its_reason_and_source()
    {
        Assert.All(Redissolving.All, r => Assert.EndsWith(".", r.Because, StringComparison.Ordinal));
        Assert.All(Redissolving.All, r => Assert.NotEmpty(r.Source));
    }

    /// <summary>Common practice, no source: rust, EDTA acid, gypsum and calcium phosphates outlast the mixing; boric acid and salts do not.</summary>
    [Theory]
    [InlineData("Ferrihydrite (amorphous)", true)]
    [InlineData("EDTA acid", true)]
    [InlineData("Gypsum", true)]
    [InlineData("Brushite", true)]
    [InlineData("Boric acid", false)]
    [InlineData("Niter", false)]
    public void Slow_ones_count_as_permanent(string solid, bool slowly) =>
        Assert.Equal(slowly, Redissolving.Of(ConstantSet.Product.FindSolid(solid)!).Slowly);
}
