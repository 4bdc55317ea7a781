using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Analysis.Hazards;

/// <summary>What nitrite gives off: brown gases with acid, nitrogen with sulfamic acid and with ammonium.</summary>
internal static class NitriteGases
{
    /// <summary>Moles of nitrite taken in a gram of a product known by name only (common practice, no source: near pure salt).</summary>
    private const double NamedMolesPerGram = 0.01;

    /// <summary>g/mol of NaNO2, CIAAW weights: the limit of nitrite counts the salt.</summary>
    private const double GramsPerMole = 68.995;

    /// <summary>
    /// Brown gases of what sulfamic acid leaves of the nitrite. An ammonium salt that is only faintly acid gives nitrogen and hardly any of
    /// them.
    /// </summary>
    public static Hazard? Oxides(Holding holding, HazardLimits limits)
    {
        if (!holding.Has(HazardRole.Nitrite))
        {
            return null;
        }

        var taken = GramsPerMole * holding.MolesPerLitre(Component.Sulfamate);
        var nitrite = 1000 * Math.Max(0, holding.GramsPerLitre(HazardRole.Nitrite) - taken);
        return holding.First(HazardRole.Nitrite) is { } salt && Rounding.SixDigits(nitrite) >= limits.Poison.NitriteFrom
            && holding.Items.FirstOrDefault(i => HazardGate.IsAcidToBleach(i.Roles)) is { } acid
            ? new Hazard(HazardKind.NitrogenOxides, HazardGrade.Present, salt, acid, "nitrite", nitrite, limits.Poison.NitriteFrom, "mg/L")
            : null;
    }

    /// <summary>
    /// A mole of nitrogen from each nitrite and its partner: at once with sulfamic acid, with ammonium the faster the warmer, stronger and
    /// more acid it is. Where brown gases come as well only they are told: they are the graver.
    /// </summary>
    public static Hazard? Nitrogen(Holding holding, HazardLimits limits)
    {
        if (!holding.Has(HazardRole.Nitrite) || Oxides(holding, limits) is not null)
        {
            return null;
        }

        var nitrite = holding.Having(HazardRole.Nitrite).Sum(Nitrite) / holding.Litres;
        double Gas(string partner) => Rounding.SixDigits(HazardGate.LitresPerMole * Math.Min(nitrite, holding.MolesPerLitre(partner)));
        var (atOnce, slowly) = (Gas(Component.Sulfamate), Gas(Component.Ammonium));
        var (partner, litres) = atOnce >= limits.Gas.From ? (Component.Sulfamate, atOnce) : (Component.Ammonium, slowly);
        return litres < limits.Gas.From
            ? null
            : new Hazard(
                HazardKind.NitrogenPressure, atOnce >= limits.Gas.BriskFrom ? HazardGrade.Grave : HazardGrade.Present,
                holding.First(HazardRole.Nitrite), holding.Items.First(i => i.MolesOf(partner) > 0), "nitrogen", litres,
                limits.Gas.From, "L/L");
    }

    private static double Nitrite(Held held) =>
        held.Moles.Count == 0 ? NamedMolesPerGram * held.Grams : held.MolesOf(Component.Nitrite);
}
