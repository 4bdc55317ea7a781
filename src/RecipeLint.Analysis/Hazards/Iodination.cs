using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Analysis.Hazards;

/// <summary>
/// Iodine that bleach sets free from iodide, ClO- + 2 I- + H2O = I2 + Cl- + 2 OH-: brown, its violet vapour poisonous. Much bleach turns it
/// on to iodate, past the iodine; acid brings it back.
/// </summary>
internal static class Iodination
{
    public const string Iodide = "inert:I-1";

    /// <summary>g/mol of I2, CIAAW weights.</summary>
    private const double IodineGramsPerMole = 253.81;

    private const double IodidePerIodine = 2;

    /// <summary>
    /// Moles of iodine atoms taken in a gram of a product known by name only: near pure potassium iodide, 166.0 g/mol, or iodine (common
    /// practice, no source).
    /// </summary>
    private const double NamedMolesPerGram = 0.006;

    /// <summary>Null where not both are there, or too little for vapour that counts.</summary>
    public static Hazard? Of(Holding holding, HazardLimits limits)
    {
        if (!holding.Has(HazardRole.Hypochlorite) || !(holding.Has(HazardRole.Iodide) || holding.Has(HazardRole.Iodine)))
        {
            return null;
        }

        var brings = holding.First(HazardRole.Iodide, HazardRole.Iodine)!;
        var atoms = holding.Items.Where(IsIodic).Sum(Atoms) / holding.Litres;
        var iodine = 1000 * IodineGramsPerMole * Math.Min(atoms / IodidePerIodine, HazardGate.ChlorinePerLitre(holding));
        return Rounding.SixDigits(iodine) < limits.Poison.IodineFrom
            ? null
            : new Hazard(
                HazardKind.Iodine, HazardGrade.Present, holding.First(HazardRole.Hypochlorite), brings, "iodine", iodine,
                limits.Poison.IodineFrom, "mg/L");
    }

    private static bool IsIodic(Held held) => held.Is(HazardRole.Iodide) || held.Is(HazardRole.Iodine);

    private static double Atoms(Held held) => held.Moles.ContainsKey(Iodide) ? held.MolesOf(Iodide) : NamedMolesPerGram * held.Grams;
}
