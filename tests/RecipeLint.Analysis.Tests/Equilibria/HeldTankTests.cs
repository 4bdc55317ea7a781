using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Analysis.Tests.Equilibria;

/// <summary>What holding a pH takes, against figures worked out by hand.</summary>
public sealed class HeldTankTests
{
    private static SolutionMix Mix(params (string Component, double MillimolesPerLitre)[] amounts) =>
        SolutionMix.Of(ComponentMoles.Of(amounts.Select(a => KeyValuePair.Create(a.Component, a.MillimolesPerLitre / 1000))), new Volume(1));

    /// <summary>
    /// 3 meq/L of hydrogen carbonate. By hand with pK1 6.38 at 20 °C and 10^-7.79 mol/L·atm for K1·KH: poured together at pH 5.8 a share of
    /// 1 / (1 + 10^(6.38 - 5.8)) = 0.21 stays, so that 2.37 mmol/L of acid are taken; at rest with 4.2e-4 atm next to nothing stays, so that
    /// all 3.0 are; and what was left after the first dose brings the pH to about 7.98.
    /// </summary>
    [Fact]
    public void HardWaterTakesItsAlkalinityInAcid()
    {
        var held = HeldTank.Of(Mix(("Ca+2", 1.5), ("CO3-2", 3), ("H+", 3)), 5.8)!;

        Assert.InRange(held.DosedAtOnce, 2.3, 2.45);
        Assert.InRange(held.DosedInAll, 2.95, 3.02);
        Assert.InRange(held.DriftsTo!.Value, 7.8, 8.2);
        Assert.Equal(5.8, held.State.Ph, 1e-6);
        Assert.Null(held.AmmoniaShare);
    }

    /// <summary>pK of ammonium 9.40 at 20 °C (Bates &amp; Pinching): at pH 7.4 one part in 100 stands as ammonia.</summary>
    [Fact]
    public void AmmoniaFollowsThePhThatIsHeld()
    {
        var mix = Mix(("NH4+", 2), ("NO3-", 2));
        Assert.InRange(HeldTank.Of(mix, 7.4)!.AmmoniaShare!.Value, 0.008, 0.0115);
        Assert.InRange(HeldTank.Of(mix, 6.4)!.AmmoniaShare!.Value, 0.0008, 0.00115);
    }

    /// <summary>Without buffer the alkali that holds a pH above that of pure water is next to nothing, and it is negative.</summary>
    [Fact]
    public void AlkaliIsCountedNegative()
    {
        var held = HeldTank.Of(Mix(("K+", 1), ("NO3-", 2), ("H+", 1)), 6)!;
        Assert.InRange(held.DosedInAll, -1.02, -0.98);
    }
}
