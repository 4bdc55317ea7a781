using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Rules.Precipitation;

/// <summary>A preservative crystallises as its acid in a cold, acid stock.</summary>
internal sealed class PreservativeDropsOut : SolidRule
{
    public const string RuleName = "preservative-drops-out";

    public override string Name => RuleName;

    private protected override string Why(Solid solid) =>
        "Crystals protect nothing: what stays dissolved may be too little to stop moulds, and flakes clog filters.";

    private protected override string Remedy(Solid solid, IReadOnlyList<Supplier> suppliers) =>
        suppliers.Count > 0 ? $"Use less {suppliers[0].Name} or less acid" : "Use less acid";
}
