using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Rules.Precipitation;

/// <summary>Two salts that crystallise together at less than the solubility of either.</summary>
internal sealed class DoubleSalt : SaltRule
{
    public const string RuleName = "double-salt";

    public override string Name => RuleName;

    private protected override string Why(Solid solid) =>
        "A double salt is less soluble than either of its salts alone, so each of them looks safe in a table.";

    private protected override string Remedy(Solid solid, IReadOnlyList<Supplier> suppliers) =>
        suppliers.Count == 2
            ? $"Keep {suppliers[0].Name} and {suppliers[1].Name} in different parts, or make the stock weaker"
            : "Make the stock weaker";
}
