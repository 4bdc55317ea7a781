using RecipeLint.Analysis;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Precipitation;

/// <summary>Magnesium and phosphate with ammonium or potassium past the solubility of struvite and its kin.</summary>
internal sealed class MagnesiumAmmoniumPhosphate : SolidRule
{
    public const string RuleName = "magnesium-ammonium-phosphate";

    public override string Name => RuleName;

    private protected override string Why(Solid solid) =>
        "The hard crystals line vessels, valves and drippers, and every dose after that lacks magnesium and phosphorus.";

    private protected override IEnumerable<Way> Ways(StockFacts stock, Solid solid, IReadOnlyList<Supplier> suppliers) =>
    [
        new("acidify the stock", Puts.Acid),
        suppliers.Count == 2 ? Apart(suppliers) : new("make the stock weaker"),
    ];
}
