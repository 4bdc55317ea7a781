using RecipeLint.Analysis;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Precipitation;

/// <summary>A fertiliser salt past its solubility at the coldest storage temperature.</summary>
internal sealed class SaltPastItsSolubility : SaltRule
{
    public const string RuleName = "salt-past-its-solubility";

    public override string Name => RuleName;

    private protected override string Why(Solid solid) =>
        "Crystals at the bottom leave the first doses too weak and the last ones too strong"
        + (solid.TemperatureKnown ? ", even if they dissolve again when it gets warm." : ".");

    private protected override IEnumerable<Way> Ways(StockFacts stock, Solid solid, IReadOnlyList<Supplier> suppliers) =>
    [
        new("make the stock weaker"),
        .. solid.TemperatureKnown ? [new("keep it warmer", Puts.Warmth)] : Array.Empty<Way>(),
    ];
}
