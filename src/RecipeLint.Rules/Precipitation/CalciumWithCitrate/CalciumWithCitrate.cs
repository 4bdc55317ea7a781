using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Rules.Precipitation;

/// <summary>Calcium beside citrate, oxalate or gluconate past the solubility of the calcium salt.</summary>
internal sealed class CalciumWithCitrate : SolidRule
{
    public const string RuleName = "calcium-with-citrate";

    public override string Name => RuleName;

    private protected override string Why(Solid solid) =>
        "The powder often comes hours after mixing, when the bottle is already labelled as clear.";
}
