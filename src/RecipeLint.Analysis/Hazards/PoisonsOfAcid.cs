using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Analysis.Hazards;

/// <summary>Salts from which acid sets a poisonous gas free: sulfide, cyanide, sulfite.</summary>
internal static class PoisonsOfAcid
{
    public static Hazard? Sulfide(Holding holding, HazardLimits limits) =>
        PoisonOfAcid(holding, HazardRole.Sulfide, HazardKind.HydrogenSulfide, "sulfide", limits.Poison.SulfideFrom);

    public static Hazard? Cyanide(Holding holding, HazardLimits limits) =>
        PoisonOfAcid(holding, HazardRole.Cyanide, HazardKind.HydrogenCyanide, "cyanide", limits.Poison.CyanideFrom);

    /// <summary>A salt from which even a faint acid sets a poisonous gas free.</summary>
    /// <param name="from">mg/L.</param>
    private static Hazard? PoisonOfAcid(Holding holding, HazardRole role, HazardKind kind, string what, double from)
    {
        var milligrams = 1000 * holding.GramsPerLitre(role);
        if (holding.First(role) is not { } salt || Rounding.SixDigits(milligrams) < from)
        {
            return null;
        }

        var acid = holding.First([.. HazardGate.Acids, HazardRole.Ammonium]);
        var grade = acid is null ? HazardGrade.Possible : HazardGrade.Present;
        return new Hazard(kind, grade, salt, acid, what, milligrams, from, "mg/L");
    }

    /// <summary>Hydrogen fluoride of fluoride in acid; hydrofluoric acid and hydrogen fluorides are both in one.</summary>
    public static Hazard? Fluoride(Holding holding, HazardLimits limits)
    {
        var milligrams = 1000 * holding.GramsPerLitre(HazardRole.Fluoride);
        return holding.First(HazardRole.Fluoride) is { } salt && Rounding.SixDigits(milligrams) >= limits.Poison.FluorideFrom
            && holding.First(HazardRole.Acid, HazardRole.AcidSalt) is { } acid
                ? new Hazard(
                    HazardKind.HydrogenFluoride, HazardGrade.Present, salt, acid == salt ? null : acid, "fluoride", milligrams,
                    limits.Poison.FluorideFrom, "mg/L")
                : null;
    }

    /// <summary>Chlorine dioxide of chlorite or chlorate in acid: poisonous, and it explodes where it gathers.</summary>
    public static Hazard? Chlorite(Holding holding, HazardLimits limits)
    {
        var milligrams = 1000 * holding.GramsPerLitre(HazardRole.Chlorite);
        return holding.First(HazardRole.Chlorite) is { } salt && Rounding.SixDigits(milligrams) >= limits.Poison.ChloriteFrom
            && holding.First(HazardRole.Acid, HazardRole.AcidSalt) is { } acid && acid != salt
                ? new Hazard(
                    HazardKind.ChlorineDioxide, HazardGrade.Present, salt, acid, "chlorite or chlorate", milligrams,
                    limits.Poison.ChloriteFrom, "mg/L")
                : null;
    }

    public static Hazard? Sulfite(Holding holding, HazardLimits limits)
    {
        var grams = 1000 * holding.GramsPerLitre(HazardRole.Sulfite);
        return holding.First(HazardRole.Sulfite) is { } sulfite
            && Rounding.SixDigits(grams) >= limits.Poison.SulfiteFrom
            && holding.First(HazardRole.Acid, HazardRole.AcidSalt) is { } acid && acid != sulfite
                ? new Hazard(
                    HazardKind.SulfurDioxide, HazardGrade.Present, sulfite, acid, "sulfite", grams, limits.Poison.SulfiteFrom, "mg/L")
                : null;
    }
}
