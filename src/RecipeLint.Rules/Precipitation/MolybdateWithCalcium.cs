namespace RecipeLint.Rules.Precipitation;

/// <summary>Calcium beside concentrated molybdate: calcium molybdate grows.</summary>
public sealed class MolybdateWithCalcium : SolidRule
{
    public override string Name => "molybdate-with-calcium";

    private protected override string Why(OwnedSolid owned) =>
        "Molybdenum is needed in traces, so a little crust takes all of it.";
}
