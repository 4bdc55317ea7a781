namespace RecipeLint.Rules.Precipitation;

/// <summary>The pH is too high for a metal that no chelate holds.</summary>
public sealed class MetalHydroxide : SolidRule
{
    public override string Name => "metal-hydroxide";

    protected override IReadOnlyList<string> Metals { get; } = ["Fe+2", "Fe+3", "Mn+2", "Zn+2", "Cu+2", "Ni+2", "Co+2"];

    private protected override string Why(OwnedSolid owned) =>
        "The metal turns to a floc that no dose carries to the plants and that hardly dissolves again.";

    private protected override string Remedy(OwnedSolid owned, IReadOnlyList<Supplier> suppliers) =>
        suppliers is [_, { Brings: "alkali" } alkali]
            ? $"Use less {alkali.Name}, acidify the stock, or chelate the metal"
            : "Acidify the stock before the metals go in, or chelate them";
}
