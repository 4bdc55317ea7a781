using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Analysis.Hazards;

/// <summary>
/// Hydrogen peroxide in strong hydrochloric acid: H2O2 and 2 HCl give chlorine, with heat that speeds it up, as in baths that etch copper
/// (Bretherick's Handbook of Reactive Chemical Hazards, recalled). Chloride in a weaker acid stays what it is.
/// </summary>
internal static class ChlorineOfPeroxide
{
    /// <summary>Null where either is too weak for gas that counts.</summary>
    public static Hazard? Of(Holding holding, HazardLimits limits)
    {
        if (holding.First(HazardRole.HydrochloricAcid) is not { } acid || holding.First(HazardRole.Peroxide) is not { } peroxide)
        {
            return null;
        }

        var strength = holding.GramsPerLitre(HazardRole.HydrochloricAcid);
        return Rounding.SixDigits(strength) >= limits.Oxidiser.HydrochloricWithPeroxideFrom
            && Rounding.SixDigits(holding.GramsPerLitre(HazardRole.Peroxide)) >= limits.Oxidiser.PeroxideWithHydrochloricFrom
                ? new Hazard(
                    HazardKind.Chlorine, HazardGrade.Present, peroxide, acid, "hydrochloric acid", strength,
                    limits.Oxidiser.HydrochloricWithPeroxideFrom, "g/L")
                : null;
    }
}
