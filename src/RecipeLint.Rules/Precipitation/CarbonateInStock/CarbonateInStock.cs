using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Rules.Precipitation;

/// <summary>Carbonate, often from hard water, meets calcium or a metal in a stock.</summary>
internal sealed class CarbonateInStock : SolidRule
{
    public const string RuleName = "carbonate-in-stock";

    public override string Name => RuleName;

    private protected override string Why(Solid solid) =>
        "Scale and cloud form where the stock warms or stands open, and the metal in it is lost.";

    private protected override string Remedy(Solid solid, IReadOnlyList<Supplier> suppliers) =>
        suppliers.Any(s => s.IsWater)
            ? "Make this stock with rain or reverse-osmosis water, or acidify the water first"
            : suppliers.Count == 2 ? $"Keep {suppliers[0].Name} and {suppliers[1].Name} in different parts" : "Acidify the stock";
}
