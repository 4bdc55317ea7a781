using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Rules.Precipitation;

namespace RecipeLint.Rules.Tests.Precipitation;

/// <summary>One deposit gives one finding: every solid a finding may rest on has one owner, and no other solid has any.</summary>
public sealed class SolidOwnersTests
{
    private static readonly IReadOnlyList<Solid> Solids = ConstantSet.Product.Solids;

    [Fact]
    public void EveryListedSolidIsInTheConstantsAndListedOnce()
    {
        Assert.Empty(SolidOwners.Listed.Select(o => o.Solid).Except(Solids.Select(s => s.Name)));
        Assert.Equal(SolidOwners.Listed.Count, SolidOwners.Listed.Select(o => o.Solid).Distinct().Count());
    }

    [Fact]
    public void EverySolidThatFormsReadilyOrIsASolubleSaltHasExactlyOneOwnerThatIsARule()
    {
        var rules = RuleList.All.OfType<SolidRule>().Select(r => r.Name).ToHashSet();
        var judged = Solids.Where(s => s.Role is SolidRole.FormsReadily or SolidRole.SolubleSalt).ToList();

        Assert.True(judged.Count >= 70, $"{judged.Count} solids");
        Assert.All(judged, s => Assert.Contains(SolidOwners.Of(s)!.Rule, rules));
        Assert.All(judged, s => Assert.True(SolidOwners.Listed.Count(o => o.Solid == s.Name) <= 1, s.Name));
        Assert.All(judged, s => Assert.NotEqual("", SolidOwners.Of(s)!.Called));
    }

    [Fact]
    public void ExcludedAndWeakSolidsHaveNoOwner()
    {
        var barred = Solids.Where(s => s.Role is SolidRole.Excluded or SolidRole.WeakConstant).ToList();

        Assert.NotEmpty(barred);
        Assert.All(barred, s => Assert.Null(SolidOwners.Of(s)));
        Assert.Empty(SolidOwners.Listed.Select(o => o.Solid).Intersect(barred.Select(s => s.Name)));
    }

    /// <summary>Those left out ripen from a solid that is judged, or announce deposits in stocks known to stay clear (molybdic acid).</summary>
    [Fact]
    public void OnlyTheNamedSlowSolidsGiveARemark()
    {
        var slow = Solids.Where(s => s.Role == SolidRole.FormsSlowly && SolidOwners.Of(s) is not null).Select(s => s.Name).Order(StringComparer.Ordinal);

        Assert.Equal(["Calcium gluconate", "Hydrozincite", "Malachite", "Monetite", "Octacalcium phosphate", "Powellite"], slow);
    }

    [Fact]
    public void EveryRuleOnSolidsOwnsAtLeastOne()
    {
        var owners = SolidOwners.Listed.Select(o => o.Rule).ToHashSet();
        Assert.All(RuleList.All.OfType<SolidRule>(), r => Assert.Contains(r.Name, owners));
    }
}
