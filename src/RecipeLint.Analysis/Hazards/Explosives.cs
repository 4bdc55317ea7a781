using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Analysis.Hazards;

/// <summary>
/// What forms something that goes off at a touch: iodine with ammonia water, azide with acid or with heavy metals, acetone and hexamine
/// with peroxide.
/// </summary>
internal static class Explosives
{
    private static readonly string[] Metals = [Component.Copper, Component.Zinc, Component.Cobalt, Component.Nickel, Component.Manganese];

    /// <summary>Any amount counts.</summary>
    public static Hazard? Of(Holding holding) => OfIodine(holding) ?? OfAzide(holding) ?? OfPeroxide(holding);

    private static Hazard? OfIodine(Holding holding)
    {
        var ammonia = holding.First(HazardRole.AmmoniaWater)
            ?? (holding.Has(HazardRole.Alkali) ? holding.First(HazardRole.Ammonium) : null);
        return holding.First(HazardRole.Iodine) is { } iodine && ammonia is not null
            ? new Hazard(
                HazardKind.Explosive, HazardGrade.Present, iodine, ammonia, "iodine", holding.GramsPerLitre(HazardRole.Iodine), 0, "g/L")
            : null;
    }

    /// <summary>Acid makes it quick; it forms without, and household peroxide is acid by its stabiliser.</summary>
    private static Hazard? OfPeroxide(Holding holding) =>
        holding.First(HazardRole.ExplosiveWithPeroxide) is { } partner && holding.First(HazardRole.Peroxide) is { } peroxide
            ? new Hazard(
                HazardKind.Explosive, HazardGrade.Present, partner, peroxide, "", 0, 0, "")
            : null;

    private static Hazard? OfAzide(Holding holding)
    {
        var partner = holding.First(HazardRole.Acid, HazardRole.AcidSalt)
            ?? holding.Items.FirstOrDefault(i => Metals.Any(m => i.MolesOf(m) > 0));
        return holding.First(HazardRole.Azide) is not { } azide ? null
            : partner is null ? new Hazard(HazardKind.Explosive, HazardGrade.Possible, azide, null, "", 0, 0, "")
            : new Hazard(
                HazardKind.Explosive, HazardGrade.Present, azide, partner, "azide", holding.GramsPerLitre(HazardRole.Azide), 0, "g/L");
    }
}
