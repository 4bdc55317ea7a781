using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Analysis.Hazards;

/// <summary>
/// Iron(II) mixed through with nitric acid too weak to fume where they meet: 3 Fe(II) and 4 HNO3 give one NO, which turns brown in air. It
/// starts by itself hours later or with a little warmth, and speeds itself up.
/// </summary>
internal static class NitricWithIron
{
    /// <summary>g/mol, from CIAAW weights.</summary>
    private const double NitricGramsPerMole = 63.01;

    private const double IronPerGas = 3, AcidPerGas = 4;

    /// <summary>Null where the acid is too weak, or iron and acid too little for gas that counts.</summary>
    public static Hazard? Of(Holding holding, HazardLimits limits)
    {
        if (!holding.Has(HazardRole.NitricAcid) || !holding.Has(HazardRole.Reductant))
        {
            return null;
        }

        var acid = holding.GramsPerLitre(HazardRole.NitricAcid);
        var iron = holding.Having(HazardRole.Reductant).Where(i => i.MolesOf(Component.FerrousIron) > 0).ToList();
        var litres = HazardGate.LitresPerMole * Math.Min(
            iron.Sum(i => i.MolesOf(Component.FerrousIron)) / holding.Litres / IronPerGas, acid / NitricGramsPerMole / AcidPerGas);
        return Rounding.SixDigits(acid) >= limits.StrongAcid.NitricIronFrom && Rounding.SixDigits(litres) >= limits.Gas.From
            ? new Hazard(
                HazardKind.NitrogenOxides, HazardGrade.Present, holding.First(HazardRole.NitricAcid), iron[0], "nitrogen oxides", litres,
                limits.Gas.From, "L/L")
            : null;
    }
}
