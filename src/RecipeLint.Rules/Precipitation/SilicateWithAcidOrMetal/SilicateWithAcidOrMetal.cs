using RecipeLint.Analysis;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Precipitation;

/// <summary>Silicate beside acid or a metal sets to a gel.</summary>
internal sealed class SilicateWithAcidOrMetal : SolidRule
{
    public const string RuleName = "silicate-with-acid-or-metal";

    public override string Name => RuleName;

    protected override bool BlamesTheAnion => true;

    private protected override string Why(Solid solid) =>
        "A little of it clouds or scales over weeks, grams of it set to a gel within minutes to days; either plugs and does not dissolve "
            + "again.";

    private protected override IEnumerable<Way> Ways(StockFacts stock, Solid solid, IReadOnlyList<Supplier> suppliers) =>
    [
        new(suppliers.Count > 0
            ? $"keep {suppliers[0].Name} in a bottle of its own, alkaline as it came, and pour it into the tank first"
            : "keep silicate in a bottle of its own"),
    ];
}
