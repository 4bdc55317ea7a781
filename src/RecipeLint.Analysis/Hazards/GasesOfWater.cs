namespace RecipeLint.Analysis.Hazards;

/// <summary>What gives off gas with nothing but water: phosphide, carbide, hydrides and alkali metals. Any amount counts.</summary>
internal static class GasesOfWater
{
    /// <summary>Phosphine; the moisture of the air is enough.</summary>
    public static Hazard? Phosphine(Holding holding) =>
        Of(holding, HazardRole.Phosphide, HazardKind.Phosphine, "phosphide", holding.First(HazardRole.Acid, HazardRole.AcidSalt));

    /// <summary>Acetylene and hydrogen, which catch fire by themselves where a metal gets hot.</summary>
    public static Hazard? Flammable(Holding holding) =>
        Of(holding, HazardRole.WaterReactive, HazardKind.FlammableGas, "what water takes apart", null);

    private static Hazard? Of(Holding holding, HazardRole role, HazardKind kind, string what, Held? acid) =>
        holding.First(role) is { } salt && holding.GramsPerLitre(role) is > 0 and var grams
            ? new Hazard(kind, HazardGrade.Present, salt, acid, what, grams, 0, "g/L")
            : null;
}
