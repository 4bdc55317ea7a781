using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Rules.Precipitation;

/// <summary>Calcium beside concentrated molybdate: calcium molybdate grows.</summary>
internal sealed class MolybdateWithCalcium : SolidRule
{
    public const string RuleName = "molybdate-with-calcium";

    public override string Name => RuleName;

    private protected override string Why(Solid solid) =>
        "Molybdenum is needed in traces, so a little crust takes all of it.";
}
