using Component = RecipeLint.Chemistry.Equilibrium.Component;

namespace RecipeLint.Rules.Precipitation;

/// <summary>The pH is too high for a metal that no chelate holds.</summary>
public sealed class MetalHydroxide : SolidRule
{
    public override string Name => "metal-hydroxide";

    protected override IReadOnlyList<string> Metals { get; } =
        [Component.FerrousIron, Component.FerricIron, Component.Manganese, Component.Zinc, Component.Copper, Component.Nickel, Component.Cobalt];

    private protected override string Why(OwnedSolid owned) =>
        "The metal turns to a floc that no dose carries to the plants and that hardly dissolves again.";

    private protected override string Remedy(OwnedSolid owned, IReadOnlyList<Supplier> suppliers) =>
        suppliers is [_, { Brings: "alkali" } alkali]
            ? $"Use less {alkali.Name}, acidify the stock, or chelate the metal"
            : "Acidify the stock before the metals go in, or chelate them";
}
