namespace RecipeLint.Rules.Precipitation;

/// <summary>Calcium and phosphate in one stock past the solubility of the calcium phosphates.</summary>
public sealed class CalciumWithPhosphate : SolidRule
{
    public override string Name => "calcium-with-phosphate";

    private protected override string Why(OwnedSolid owned) =>
        "The white sludge takes calcium and phosphorus out of every dose and clogs drippers.";
}
