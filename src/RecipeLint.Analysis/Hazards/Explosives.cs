using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Analysis.Hazards;

/// <summary>What forms something that goes off at a touch: iodine with ammonia water, azide with acid or with heavy metals.</summary>
internal static class Explosives
{
    private static readonly string[] Metals = [Component.Copper, Component.Zinc, Component.Cobalt, Component.Nickel, Component.Manganese];

    /// <summary>Any amount counts.</summary>
    public static Hazard? Of(Holding holding) => OfIodine(holding) ?? OfAzide(holding);

    private static Hazard? OfIodine(Holding holding)
    {
        var ammonia = holding.First(HazardRole.AmmoniaWater)
            ?? (holding.Has(HazardRole.Alkali) ? holding.First(HazardRole.Ammonium) : null);
        return holding.First(HazardRole.Iodine) is { } iodine && ammonia is not null
            ? new Hazard(
                HazardKind.Explosive, HazardGrade.Present, iodine, ammonia, "iodine", holding.GramsPerLitre(HazardRole.Iodine), 0, "g/L")
            : null;
    }

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
