using RecipeLint.Analysis;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Precipitation;

/// <summary>Carbonate, often from hard water, meets calcium or a metal in a stock.</summary>
internal sealed class CarbonateInStock : SolidRule
{
    public const string RuleName = "carbonate-in-stock";

    /// <summary>Hardly any carbonate is left there, a pH unit and more below its first pK of 6.35 (handbooks, recalled).</summary>
    private const double GonePh = 5;

    public override string Name => RuleName;

    private protected override string Why(Solid solid) =>
        "Scale and cloud form where the stock warms or stands open, and the metal in it is lost.";

    private protected override IEnumerable<Way> Ways(StockFacts stock, Solid solid, IReadOnlyList<Supplier> suppliers) =>
        suppliers.Any(s => s.IsWater)
            ? [new("make this stock with rain or reverse-osmosis water"), new("acidify the water first", Puts.Acid, GonePh)]
            : suppliers.Count == 2 ? [Apart(suppliers)]
            : [new("acidify the stock", Puts.Acid, GonePh), new("leave the carbonate out")];
}
