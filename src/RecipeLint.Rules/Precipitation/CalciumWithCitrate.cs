namespace RecipeLint.Rules.Precipitation;

/// <summary>Calcium beside citrate, oxalate or gluconate past the solubility of the calcium salt.</summary>
public sealed class CalciumWithCitrate : SolidRule
{
    public override string Name => "calcium-with-citrate";

    private protected override string Why(OwnedSolid owned) =>
        "The powder often comes hours after mixing, when the bottle is already labelled as clear.";
}
