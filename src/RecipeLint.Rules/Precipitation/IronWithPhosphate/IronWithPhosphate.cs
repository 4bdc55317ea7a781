using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Rules.Precipitation;

/// <summary>Iron that no chelate holds meets phosphate.</summary>
internal sealed class IronWithPhosphate : SolidRule
{
    public const string RuleName = "iron-with-phosphate";

    public override string Name => RuleName;

    private protected override string Why(Solid solid) =>
        "The pale sludge is iron the plants never see, and it does not dissolve again.";

    private protected override string Remedy(Solid solid, IReadOnlyList<Supplier> suppliers) =>
        suppliers.Count == 2
            ? $"Keep {suppliers[0].Name} and {suppliers[1].Name} in different parts, or buy the iron as a chelate"
            : "Buy the iron as a chelate";
}
