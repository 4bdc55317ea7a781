namespace RecipeLint.Rules.Precipitation;

/// <summary>Calcium and sulfate in one stock past the solubility of gypsum or syngenite.</summary>
public sealed class CalciumWithSulfate : SolidRule
{
    public override string Name => "calcium-with-sulfate";

    private protected override string Why(OwnedSolid owned) =>
        "What settles is lost to the plants, blocks filters and drippers and hardly dissolves again.";
}
