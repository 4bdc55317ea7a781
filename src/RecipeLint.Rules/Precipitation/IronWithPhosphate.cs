using Component = RecipeLint.Chemistry.Equilibrium.Component;

namespace RecipeLint.Rules.Precipitation;

/// <summary>Iron that no chelate holds meets phosphate.</summary>
public sealed class IronWithPhosphate : SolidRule
{
    public override string Name => "iron-with-phosphate";

    protected override IReadOnlyList<string> Metals { get; } = [Component.FerrousIron, Component.FerricIron];

    private protected override string Why(OwnedSolid owned) =>
        "The pale sludge is iron the plants never see, and it does not dissolve again.";

    private protected override string Remedy(OwnedSolid owned, IReadOnlyList<Supplier> suppliers) =>
        suppliers.Count == 2
            ? $"Keep {suppliers[0].Name} and {suppliers[1].Name} in different parts, or buy the iron as a chelate"
            : "Buy the iron as a chelate";
}
