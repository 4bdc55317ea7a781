using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Rules.Precipitation;

namespace RecipeLint.Rules.Tests.Precipitation;

/// <summary>One deposit gives one finding: every solid a finding may rest on has one owner, and no other solid has any.</summary>
public sealed class SolidOwnersTests
{
    private static readonly IReadOnlyList<Solid> Solids = ConstantSet.Product.Solids;

    [Fact]
    public void EverySolidThatFormsReadilyOrIsASolubleSaltHasExactlyOneOwnerThatIsARule()
    {
        var rules = RuleList.All.OfType<SolidRule>().Select(r => r.Name).ToHashSet();
        var judged = Solids.Where(s => s.Role is SolidRole.FormsReadily or SolidRole.SolubleSalt).ToList();

        Assert.True(judged.Count >= 70, $"{judged.Count} solids");
        Assert.All(judged, s => Assert.Contains(s.Owner!, rules));
        Assert.All(judged, s => Assert.NotEqual("", s.Called));
    }

    [Fact]
    public void ExcludedAndWeakSolidsHaveNoOwner()
    {
        var barred = Solids.Where(s => s.Role is SolidRole.Excluded or SolidRole.WeakConstant).ToList();

        Assert.NotEmpty(barred);
        Assert.All(barred, s => Assert.Null(s.Owner));
    }

    /// <summary>Those left out ripen from a solid that is judged, or announce deposits in stocks known to stay clear (molybdic acid).</summary>
    [Fact]
    public void OnlyTheNamedSlowSolidsGiveARemark()
    {
        var slow = Solids.Where(s => s.Role == SolidRole.FormsSlowly && s.Owner is not null).Select(s => s.Name).Order(StringComparer.Ordinal);

        Assert.Equal(["Calcium gluconate", "Hydrozincite", "Magnesium borate", "Magnesium citrate", "Malachite", "Monetite", "Octacalcium phosphate"], slow);
    }

    [Fact]
    public void EveryRuleOnSolidsOwnsAtLeastOneAndEveryOwnerIsOne()
    {
        var owners = Solids.Select(s => s.Owner).OfType<string>().ToHashSet();
        Assert.Equal(owners.Order(StringComparer.Ordinal), RuleList.All.OfType<SolidRule>().Select(r => r.Name).Order(StringComparer.Ordinal));
    }
}
