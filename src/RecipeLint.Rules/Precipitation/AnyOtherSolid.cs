namespace RecipeLint.Rules.Precipitation;

/// <summary>A solid that forms readily and that no other rule speaks of.</summary>
public sealed class AnyOtherSolid : SolidRule
{
    public override string Name => "any-other-solid";

    protected override bool EachSolidApart => true;

    private protected override string Why(OwnedSolid owned) =>
        $"{char.ToUpperInvariant(owned.Called[0])}{owned.Called[1..]} takes its ions out of every dose and settles in vessels and drippers.";
}
