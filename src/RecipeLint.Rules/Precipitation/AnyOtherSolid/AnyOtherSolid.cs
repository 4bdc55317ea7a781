using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Rules.Precipitation;

/// <summary>A solid that forms readily and that no other rule speaks of.</summary>
internal sealed class AnyOtherSolid : SolidRule
{
    public const string RuleName = "any-other-solid";

    public override string Name => RuleName;

    private protected override string Why(Solid solid) =>
        $"{char.ToUpperInvariant(solid.Called[0])}{solid.Called[1..]} takes its ions out of every dose and settles in vessels and "
            + "drippers.";
}
