namespace RecipeLint.Analysis.Hazards;

/// <summary>
/// Bromine of bromide and bleach: ClO- + Br- = BrO- + Cl- in minutes, and BrO- + Br- + 2 H+ = Br2 + H2O as soon as the pH falls. The vapour
/// is brown, heavier than air, and burns skin and lungs.
/// </summary>
internal static class Bromination
{
    /// <summary>g/mol of Br2, CIAAW weights.</summary>
    private const double BromineGramsPerMole = 159.81;

    /// <summary>
    /// Moles of bromide taken in a gram of a salt known by name only: near pure potassium bromide, 119.0 g/mol (common practice, no
    /// source).
    /// </summary>
    private const double NamedMolesPerGram = 0.0084;

    private const string Bromide = "inert:Br-1";

    /// <summary>Null where not both are there, or too little for vapour that counts.</summary>
    public static Hazard? Of(Holding holding, HazardLimits limits)
    {
        if (holding.First(HazardRole.Hypochlorite) is not { } bleach || holding.First(HazardRole.Bromide) is not { } salt)
        {
            return null;
        }

        var bromide = holding.Having(HazardRole.Bromide).Sum(Moles) / holding.Litres;
        var bromine = 1000 * BromineGramsPerMole * Math.Min(bromide / 2, HazardGate.ChlorinePerLitre(holding));
        return Chemistry.Quantities.Rounding.SixDigits(bromine) < limits.Poison.BromineFrom
            ? null
            : new Hazard(HazardKind.Bromine, HazardGrade.Present, bleach, salt, "bromine", bromine, limits.Poison.BromineFrom, "mg/L");
    }

    private static double Moles(Held held) =>
        held.Moles.ContainsKey(Bromide) ? held.MolesOf(Bromide) : NamedMolesPerGram * held.Grams;
}
