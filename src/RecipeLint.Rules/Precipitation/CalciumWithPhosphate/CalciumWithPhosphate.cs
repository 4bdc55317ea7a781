using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Rules.Precipitation;

/// <summary>Calcium and phosphate in one stock past the solubility of the calcium phosphates.</summary>
internal sealed class CalciumWithPhosphate : SolidRule
{
    public const string RuleName = "calcium-with-phosphate";

    public override string Name => RuleName;

    private protected override string Why(Solid solid) =>
        "The white sludge takes calcium and phosphorus out of every dose and clogs drippers.";
}
