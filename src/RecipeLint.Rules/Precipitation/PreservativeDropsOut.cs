namespace RecipeLint.Rules.Precipitation;

/// <summary>A preservative crystallises as its acid in a cold, acid stock.</summary>
public sealed class PreservativeDropsOut : SolidRule
{
    public override string Name => "preservative-drops-out";

    protected override bool EachSolidApart => true;

    private protected override string Why(OwnedSolid owned) =>
        "Crystals protect nothing: what stays dissolved may be too little to stop moulds, and flakes clog filters.";

    private protected override string Remedy(OwnedSolid owned, IReadOnlyList<Supplier> suppliers) =>
        suppliers.Count > 0 ? $"Use less {suppliers[0].Name} or less acid" : "Use less acid";
}
