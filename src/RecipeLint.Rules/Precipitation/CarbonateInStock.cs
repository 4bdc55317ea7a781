namespace RecipeLint.Rules.Precipitation;

/// <summary>Carbonate, often from hard water, meets calcium or a metal in a stock.</summary>
public sealed class CarbonateInStock : SolidRule
{
    public override string Name => "carbonate-in-stock";

    private protected override string Why(OwnedSolid owned) =>
        "Scale and cloud form where the stock warms or stands open, and the metal in it is lost.";

    private protected override string Remedy(OwnedSolid owned, IReadOnlyList<Supplier> suppliers) =>
        suppliers.Any(s => s.IsWater)
            ? "Make this stock with rain or reverse-osmosis water, or acidify the water first"
            : suppliers.Count == 2 ? $"Keep {suppliers[0].Name} and {suppliers[1].Name} in different parts" : "Acidify the stock";
}
