using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Analysis.Stocks;

/// <summary>How a declared assay of an acid, lye or bleach of stated strength is read.</summary>
public static class AssayReading
{
    /// <summary>
    /// How near a declared assay must be to the nominal strength of a dilute acid or lye to be read as its measured strength ("37.5 %" for
    /// a nitric acid sold as 38 %) instead of as a purity of the bottle.
    /// </summary>
    private const double NearTheStrength = 0.25;

    /// <summary>True for a substance that is a solution of stated strength where the assay is that strength, measured.</summary>
    public static bool IsStrength(Substance substance, MassFraction assay) =>
        substance.Strength.Value is > 0 and < 1 && Math.Abs((assay.Value / substance.Strength.Value) - 1) <= NearTheStrength;
}
