using RecipeLint.Chemistry.Composition;

namespace RecipeLint.Chemistry.Physical;

/// <summary>The heat that an aqueous acid still has to give when water comes to it, and how warm it gets where the two meet.</summary>
/// <remarks>
/// Hydrochloric, nitric and acetic acid: enthalpy of dilution to infinite dilution at 25 °C, CRC Handbook of Chemistry and Physics, section
/// 5 (after V. B. Parker, NSRDS-NBS 2, 1965; read). Nitric acid without water: its heat of solution in the same work. Sulfuric acid:
/// Thomsen's formula, 74.7 kJ/mol × n/(n + 1.798) set free by n moles of water (recalled). Phosphoric acid: 12 kJ/mol in all (recalled,
/// as in the heats of solution), given off along the same curve (an estimate).
/// </remarks>
public static class HeatOfDilution
{
    /// <summary>J per g and K of the mixture (common practice, no source: four fifths of water's).</summary>
    private const double HeatCapacity = 3.3;

    private const double SulfuricInAll = 74.7, PhosphoricInAll = 12, HalfWay = 1.798;

    /// <summary>Steps of a twentieth in the amount of water, up to where nothing is left to be gained.</summary>
    private const double Step = 1.05, MostWater = 200;

    private static readonly double[] MolesOfWater = [0, 1, 2.775, 3.700, 5.551, 6.938, 9.251, 11.10, 13.88, 18.50, 27.75, 37.00];

    private static readonly (Formula Acid, double[] Left)[] Read =
    [
        (FormulaParser.Parse("HCl"), [45.61, 45.61, 19.87, 15.40, 10.24, 8.201, 6.268, 5.318, 4.402, 3.506, 2.623, 2.167]),
        (FormulaParser.Parse("HNO3"), [33.28, 19.73, 9.498, 6.883, 3.933, 2.791, 1.749, 1.310, 0.958, 0.665, 0.527, 0.506]),
        (FormulaParser.Parse("C2H4O2"), [2.167, 2.167, 2.075, 1.962, 1.824, 1.724, 1.540, 1.393, 1.218, 1.025, 0.803, 0.678]),
    ];

    private static readonly (Formula Acid, double InAll)[] Computed =
        [(FormulaParser.Parse("H2SO4"), SulfuricInAll), (FormulaParser.Parse("H3PO4"), PhosphoricInAll)];

    /// <summary>kJ that one mole of acid in <paramref name="water"/> moles of water (0 and up) still gives; null for others.</summary>
    public static double? Left(Formula acid, double water)
    {
        ArgumentNullException.ThrowIfNull(acid);
        if (Array.Find(Computed, c => c.Acid.HasCompositionOf(acid)) is { Acid: not null } computed)
        {
            return computed.InAll * HalfWay / (water + HalfWay);
        }

        if (Array.Find(Read, r => r.Acid.HasCompositionOf(acid)).Left is not { } left)
        {
            return null;
        }

        var next = Array.FindIndex(MolesOfWater, m => m > water);
        if (next < 1)
        {
            return next < 0 ? left[^1] : left[0];
        }

        var share = (water - MolesOfWater[next - 1]) / (MolesOfWater[next] - MolesOfWater[next - 1]);
        return left[next - 1] + (share * (left[next] - left[next - 1]));
    }

    /// <summary>
    /// Kelvin by which the hottest mixture of the liquid with more water is warmer than the two, without loss; null for other acids.
    /// </summary>
    /// <param name="acid">The acid, as H2SO4, HNO3, HCl, H3PO4 or acetic acid.</param>
    /// <param name="share">Grams of pure acid per gram of acid and water, over 0 up to 1.</param>
    public static double? WarmsBy(Formula acid, double share)
    {
        ArgumentNullException.ThrowIfNull(acid);
        var grams = acid.MolarMass.GramsPerMole;
        var there = Math.Max(0, (1 - share) / share * grams / Water.GramsPerMol);
        if (Left(acid, there) is not { } left)
        {
            return null;
        }

        var most = 0.0;
        for (var water = there + 0.1; water < MostWater; water *= Step)
        {
            most = Math.Max(most, 1000 * (left - Left(acid, water)!.Value) / (HeatCapacity * (grams + (water * Water.GramsPerMol))));
        }

        return most;
    }
}
