using RecipeLint.Analysis;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Precipitation;

/// <summary>Two salts that crystallise together at less than the solubility of either.</summary>
internal sealed class DoubleSalt : SaltRule
{
    public const string RuleName = "double-salt";

    public override string Name => RuleName;

    private protected override string Why(Solid solid) =>
        "A double salt is less soluble than either of its salts alone, so each of them looks safe in a table.";

    private protected override IEnumerable<Way> Ways(StockFacts stock, Solid solid, IReadOnlyList<Supplier> suppliers) =>
    [
        .. suppliers.Count == 2 ? [Apart(suppliers)] : Array.Empty<Way>(),
        new("make the stock weaker"),
    ];
}
