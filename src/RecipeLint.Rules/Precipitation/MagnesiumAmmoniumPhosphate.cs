namespace RecipeLint.Rules.Precipitation;

/// <summary>Magnesium and phosphate with ammonium or potassium past the solubility of struvite and its kin.</summary>
public sealed class MagnesiumAmmoniumPhosphate : SolidRule
{
    public override string Name => "magnesium-ammonium-phosphate";

    private protected override string Why(OwnedSolid owned) =>
        "The hard crystals line vessels, valves and drippers, and every dose after that lacks magnesium and phosphorus.";

    private protected override string Remedy(OwnedSolid owned, IReadOnlyList<Supplier> suppliers) =>
        suppliers.Count == 2
            ? $"Acidify the stock, or keep {suppliers[0].Name} and {suppliers[1].Name} in different parts"
            : "Acidify the stock";
}
