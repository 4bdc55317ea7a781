using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Rules.Precipitation;

/// <summary>A fertiliser salt past its solubility at the coldest storage temperature.</summary>
internal sealed class SaltPastItsSolubility : SaltRule
{
    public const string RuleName = "salt-past-its-solubility";

    public override string Name => RuleName;

    private protected override string Why(Solid solid) =>
        "Crystals at the bottom leave the first doses too weak and the last ones too strong"
        + (solid.TemperatureKnown ? ", even if they dissolve again when it gets warm." : ".");

    private protected override string Remedy(Solid solid, IReadOnlyList<Supplier> suppliers) =>
        solid.TemperatureKnown ? "Make the stock weaker, or keep it warmer" : "Make the stock weaker";
}
