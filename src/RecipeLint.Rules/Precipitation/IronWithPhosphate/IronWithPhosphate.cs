using RecipeLint.Analysis;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Precipitation;

/// <summary>Iron that no chelate holds meets phosphate.</summary>
internal sealed class IronWithPhosphate : SolidRule
{
    public const string RuleName = "iron-with-phosphate";

    public override string Name => RuleName;

    private protected override string Why(Solid solid) =>
        "The pale sludge is iron the plants never see, and it does not dissolve again.";

    private protected override IEnumerable<Way> Ways(StockFacts stock, Solid solid, IReadOnlyList<Supplier> suppliers) =>
    [
        .. suppliers.Count == 2 ? [Apart(suppliers)] : Array.Empty<Way>(),
        new("buy the iron as a chelate", Puts.Chelate),
    ];
}
