namespace RecipeLint.Rules.Precipitation;

/// <summary>A fertiliser salt past its solubility at the coldest storage temperature.</summary>
public sealed class SaltPastItsSolubility : SaltRule
{
    public override string Name => "salt-past-its-solubility";

    private protected override string Why(OwnedSolid owned) =>
        "Crystals at the bottom leave the first doses too weak and the last ones too strong, even if they dissolve again when it gets warm.";

    private protected override string Remedy(OwnedSolid owned, IReadOnlyList<Supplier> suppliers) =>
        "Make the stock weaker, or keep it warmer";
}
