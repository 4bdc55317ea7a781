using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Solutions;
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

    /// <summary>Share of the nitrite as acid from which it falls apart as in a strong acid: the pH is at its pKa, 3.15.</summary>
    private const double HalfWhole = 0.5;

    /// <summary>
    /// Brown gases of what sulfamic acid leaves of the nitrite. An ammonium salt that is only faintly acid gives nitrogen and hardly any of
    /// them; with nothing sourer than an acid phosphate they come slowly, if at all.
    /// </summary>
    public static Hazard? Oxides(Holding holding, HazardLimits limits)
    {
        if (!holding.Has(HazardRole.Nitrite) || MayBeSlow(holding) && ShareWhole(holding) is < HalfWhole)
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
    /// What stands as nitrous acid where nothing in it is sourer than an acid phosphate: a few per cent of the nitrite at pH 4.5, which
    /// fall apart over days, 3 HNO2 = HNO3 + 2 NO + H2O (inorganic chemistry textbooks, recalled).
    /// </summary>
    public static Hazard? Slow(Holding holding, HazardLimits limits)
    {
        if (!holding.Has(HazardRole.Nitrite) || !MayBeSlow(holding) || ShareWhole(holding) is not (< HalfWhole and var share))
        {
            return null;
        }

        var nitrite = 1000 * holding.GramsPerLitre(HazardRole.Nitrite);
        var whole = Rounding.SixDigits(share * nitrite);
        return whole >= limits.Poison.NitriteFrom
            ? new Hazard(
                HazardKind.NitrousAcid, HazardGrade.Present, holding.First(HazardRole.Nitrite),
                holding.Items.First(i => HazardGate.IsAcidToBleach(i.Roles)), "nitrite as nitrous acid", whole, limits.Poison.NitriteFrom,
                "mg/L")
            {
                Share = Rounding.SixDigits(share),
            }
            : null;
    }

    /// <summary>True with a faint acid or an acid salt as the only acid, of a metal that neither hydrolyses nor takes part.</summary>
    private static bool MayBeSlow(Holding holding) =>
        !holding.Has(HazardRole.Acid) && !holding.Has(HazardRole.Reductant) && !holding.Has(HazardRole.PeroxideCatalyst)
        && !holding.HasNameless && holding.Having(HazardRole.Nitrite).All(i => i.Moles.Count > 0)
        && holding.Items.Any(i => HazardGate.IsAcidToBleach(i.Roles));

    /// <summary>Share of the nitrite that stands as nitrous acid, 0 to 1; null where the solution cannot be computed.</summary>
    private static double? ShareWhole(Holding holding)
    {
        var mix = SolutionMix.Of(ComponentMoles.Sum([.. holding.Items.Select(i => i.Moles)]), new Volume(holding.Litres));
        var state = StateSolver.Solve(
            mix, new StateRequest(StateMoment.Mixing, new Temperature(SolutionMix.FilledAtCelsius), false, []));
        return state.Clear is { } clear && mix.Totals[Component.Nitrite] is > 0 and var all ? clear.Molality("HNO2") / all : null;
    }

    /// <summary>
    /// A mole of nitrogen from each nitrite and its partner: at once with sulfamic acid, with ammonium the faster the warmer, stronger and
    /// more acid it is. Where brown gases come as well only they are told: they are the graver.
    /// </summary>
    public static Hazard? Nitrogen(Holding holding, HazardLimits limits)
    {
        if (!holding.Has(HazardRole.Nitrite) || Oxides(holding, limits) is not null || Slow(holding, limits) is not null)
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
