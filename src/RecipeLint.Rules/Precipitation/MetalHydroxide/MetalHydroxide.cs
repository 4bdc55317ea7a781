using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Rules.Precipitation;

/// <summary>The pH is too high for a metal that no chelate holds.</summary>
internal sealed class MetalHydroxide : SolidRule
{
    public const string RuleName = "metal-hydroxide";

    public override string Name => RuleName;

    private protected override string Why(Solid solid) =>
        "The metal turns to a floc that no dose carries to the plants and that hardly dissolves again.";

    private protected override string Remedy(Solid solid, IReadOnlyList<Supplier> suppliers) =>
        suppliers is [_, { Brings: "alkali" } alkali]
            ? $"Use less {alkali.Name}, acidify the stock, or chelate the metal"
            : "Acidify the stock before the metals go in, or chelate them";
}
