using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Rules.Precipitation;

/// <summary>Magnesium and phosphate with ammonium or potassium past the solubility of struvite and its kin.</summary>
internal sealed class MagnesiumAmmoniumPhosphate : SolidRule
{
    public const string RuleName = "magnesium-ammonium-phosphate";

    public override string Name => RuleName;

    private protected override string Why(Solid solid) =>
        "The hard crystals line vessels, valves and drippers, and every dose after that lacks magnesium and phosphorus.";

    private protected override string Remedy(Solid solid, IReadOnlyList<Supplier> suppliers) =>
        suppliers.Count == 2
            ? $"Acidify the stock, or keep {suppliers[0].Name} and {suppliers[1].Name} in different parts"
            : "Acidify the stock";
}
