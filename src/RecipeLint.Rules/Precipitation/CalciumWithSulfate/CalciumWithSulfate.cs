using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Rules.Precipitation;

/// <summary>Calcium and sulfate in one stock past the solubility of gypsum or syngenite.</summary>
internal sealed class CalciumWithSulfate : SolidRule
{
    public const string RuleName = "calcium-with-sulfate";

    public override string Name => RuleName;

    private protected override string Why(Solid solid) =>
        "What settles is lost to the plants, blocks filters and drippers and hardly dissolves again.";
}
