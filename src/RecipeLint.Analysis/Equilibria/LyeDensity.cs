using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Physical;

namespace RecipeLint.Analysis.Equilibria;

/// <summary>
/// Density of strong alkalis. The volumes of hydroxide and carbonate are fitted to 25 % by mass and go astray beyond (sodium hydroxide of
/// 50 % came out at 1.83 g/mL instead of 1.53), so a lye is looked up in the table it is sold by, and any other strong alkali has none.
/// </summary>
internal static class LyeDensity
{
    /// <summary>
    /// g of hydroxide and carbonate per litre from which the fit is left: 25 % by mass of them weigh a quarter more than water.
    /// </summary>
    private const double StrongGramsPerLitre = 300;

    /// <summary>Share of the cations' charge that alkali makes up in a pure lye; what is bought takes up carbon dioxide.</summary>
    private const double Pure = 0.98;

    private const double GramsPerMoleHydroxide = 17.007, GramsPerMoleCarbonate = 60.008;

    private static readonly (string Cation, bool IsCarbonate, string Formula)[] Tables =
    [
        (Component.Sodium, false, "NaOH"), (Component.Potassium, false, "KOH"), (Component.Potassium, true, "K2CO3"),
    ];

    /// <summary>True for an alkali so strong that the fit of volumes says nothing of it.</summary>
    public static bool IsStrong(SolutionMix mix)
    {
        var (sodium, potassium, hydroxide, carbonate) = Of(mix);
        var alkali = Math.Min(hydroxide + (2 * carbonate), sodium + potassium);
        var cations = alkali > 0 ? alkali * ((sodium * 22.990) + (potassium * 39.098)) / (sodium + potassium) : 0;
        return cations + (hydroxide * GramsPerMoleHydroxide) + (carbonate * GramsPerMoleCarbonate) > StrongGramsPerLitre;
    }

    /// <summary>g/mL of a pure lye at a temperature in °C; null for a mixture, and beyond the table.</summary>
    public static double? GramsPerMl(SolutionMix mix, double celsius)
    {
        var (sodium, potassium, hydroxide, carbonate) = Of(mix);
        var all = sodium + potassium;
        foreach (var (cation, isCarbonate, formula) in Tables)
        {
            var own = cation == Component.Sodium ? sodium : potassium;
            var alkali = isCarbonate ? 2 * carbonate : hydroxide;
            if (own >= Pure * all && alkali >= Pure * own && AcidStrength.Find(formula) is { } table)
            {
                var moles = isCarbonate ? own / 2 : own;
                return table.AtGramsPerLitre(moles * table.GramsPerMol, SolutionMix.FilledAtCelsius).MassPercent is { } percent
                    ? table.AtMassPercent(percent, celsius).DensityGramsPerMl
                    : null;
            }
        }

        return null;
    }

    /// <summary>mol/L; protons that are missing are hydroxide.</summary>
    private static (double Sodium, double Potassium, double Hydroxide, double Carbonate) Of(SolutionMix mix) => (
        mix.MolesPerLitre.GetValueOrDefault(Component.Sodium),
        mix.MolesPerLitre.GetValueOrDefault(Component.Potassium),
        Math.Max(0, -mix.MolesPerLitre.GetValueOrDefault(Component.Hydrogen)),
        mix.MolesPerLitre.GetValueOrDefault(Component.Carbonate));
}
