using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Analysis.Hazards;

/// <summary>
/// Whether the bleach in a tank gives off gas that counts, or is so little that only the roots suffer. In a dilute tank chlorine stands as
/// hypochlorous acid; how much is Cl2 follows from pH and chloride, and from that what the air over it holds. An upper bound: all bleach is
/// taken as hypochlorous acid.
/// </summary>
public static class ChlorineInTank
{
    /// <summary>[HOCl][H+][Cl-]/[Cl2] in (mol/L)² at 25 °C (recalled; 3.9 to 5 ×10^-4 are printed).</summary>
    private const double Hydrolysis = 4e-4;

    /// <summary>mol/L of Cl2 under one atmosphere of it at 25 °C, Henry's law (recalled).</summary>
    private const double Henry = 0.09;

    private const double MilligramsPerMole = 1000 * HazardGate.ChlorineGramsPerMole;

    /// <summary>Available chlorine, mg/L.</summary>
    public static double MilligramsPerLitre(RecipeFacts recipe) =>
        Rounding.SixDigits(MilligramsPerMole * HazardGate.ChlorinePerLitre(Holding.OfWhatIsRead(recipe)));

    /// <summary>True where the air over it counts, and where the pH of the tank is not known.</summary>
    public static bool GivesGas(RecipeFacts recipe, HazardLimits? limits = null)
    {
        var used = limits ?? HazardLimits.Default;
        var chlorine = MilligramsPerLitre(recipe);
        return chlorine >= used.Chlorine.GasFrom
            || recipe.Chemistry is not { Final: { IsSolved: true, Ph: var ph } }
            || PartsPerMillion(chlorine, recipe.MilligramsPerLitre("Cl"), ph) >= used.Chlorine.AirFrom;
    }

    /// <summary>ppm of Cl2 in air that stands in balance with the tank.</summary>
    /// <param name="chlorine">Available, mg/L.</param>
    /// <param name="chloride">mg/L; as much again as the bleach holds is added, for bleach brings it.</param>
    public static double PartsPerMillion(double chlorine, double chloride, double ph)
    {
        var bleach = chlorine / MilligramsPerMole;
        var ratio = Math.Pow(10, -ph) * ((chloride / (MilligramsPerMole / 2)) + bleach) / Hydrolysis;
        return 1e6 * bleach * ratio / (1 + ratio) / Henry;
    }
}
