using RecipeLint.Analysis.Mixing;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Physical;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Analysis.Hazards;

/// <summary>
/// What happens where a stream enters a vessel: what is poured meets what stands there undiluted, so the strengths of both count and not
/// that of the mixture.
/// </summary>
internal static class MeetingHazards
{
    /// <summary>Heat of H+ with OH-, kJ/mol (CRC Handbook, recalled).</summary>
    private const double NeutralisationKilojoules = 56;

    /// <summary>J per g and K of concentrated acids and salt solutions (common practice, no source: four fifths of water's).</summary>
    private const double HeatCapacity = 3.3;

    /// <summary>Liquids weaker than this have given off most of their heat of dilution (common practice, no source).</summary>
    private const double HalfDiluted = 0.5;

    private static readonly Lazy<Dictionary<string, HeatOfSolution>> Heats = new(() =>
        HeatOfSolution.All.GroupBy(h => FormulaParser.Parse(h.Formula).Hill).ToDictionary(g => g.Key, g => g.First()));

    public static IReadOnlyList<Hazard> Of(VesselContents before, VesselContents after, HazardLimits limits)
    {
        List<Held> there = [.. before.Additions.Select(Held.Of)];
        var added = after.Additions.Skip(before.Additions.Count).ToList();
        List<Held> poured = [.. added.Select(Held.Of)];
        if (poured.Count == 0)
        {
            return [];
        }

        var meeting = new Meeting(there, before.Grams, poured, after.Grams, after.FreeWaterGrams)
        {
            IsOneThing = poured.Count == 1,
            ThroughAliquot = added.Exists(a => a.ThroughAliquot),
        };
        return Of(meeting, limits);
    }

    public static IReadOnlyList<Hazard> Of(Holding before, Held poured, HazardLimits limits)
    {
        var grams = 1000 * before.Litres;
        return Of(new Meeting(before.Items, grams, [poured], grams + poured.Grams, grams) { IsOneThing = true }, limits);
    }

    private static IReadOnlyList<Hazard> Of(Meeting meeting, HazardLimits limits) =>
    [
        .. new[]
        {
            Nitric(meeting, limits), NitricReductant(meeting, limits), Fumes(meeting, limits), Oxidiser(meeting, HazardRole.Peroxide,
                limits),
            Oxidiser(meeting, HazardRole.Hypochlorite, limits), Dry(meeting, limits), Heat(meeting, limits),
        }.OfType<Hazard>(),
    ];

    /// <summary>Strong nitric acid with organic matter.</summary>
    private static Hazard? Nitric(Meeting meeting, HazardLimits limits)
    {
        var (nitric, value) = Strengths(meeting, HazardRole.NitricAcid, HazardRole.Organic, limits.NitricFrom, limits.NitricOrganicFrom);
        return value <= 0
            ? null
            : new Hazard(
                HazardKind.NitrogenOxides, HazardGrade.Present, nitric, meeting.LastWith(HazardRole.Organic, nitric),
                    "nitric acid where they meet", value,
                limits.NitricFrom, "%");
    }

    /// <summary>Nitric acid with iron(II) or iodide gives brown fumes, with chloride chlorine as well.</summary>
    private static Hazard? NitricReductant(Meeting meeting, HazardLimits limits)
    {
        foreach (var (role, limit) in new[] { (HazardRole.Reductant, limits.NitricReductantFrom), (HazardRole.Chloride,
            limits.NitricFrom), (HazardRole.HydrochloricAcid, limits.NitricReductantFrom) })
        {
            var (nitric, value) = Strengths(meeting, HazardRole.NitricAcid, role, limit, limits.NitricOrganicFrom);
            if (value > 0)
            {
                return new Hazard(
                    HazardKind.NitrogenOxides, HazardGrade.Present, nitric, meeting.LastWith(role, nitric),
                        "nitric acid where they meet", value, limit, "%");
            }
        }

        return null;
    }

    /// <summary>Strong sulfuric acid with chloride, nitrate or organic matter.</summary>
    private static Hazard? Fumes(Meeting meeting, HazardLimits limits)
    {
        foreach (var role in new[] { HazardRole.Chloride, HazardRole.OxidisingSalt, HazardRole.NitricAcid, HazardRole.Organic })
        {
            var (sulfuric, value) = Strengths(meeting, HazardRole.SulfuricAcid, role, limits.SulfuricFumesFrom, limits.OrganicFrom);
            if (value > 0)
            {
                return new Hazard(
                    role == HazardRole.Organic ? HazardKind.Runaway : HazardKind.AcidFumes, HazardGrade.Present, sulfuric,
                        meeting.LastWith(role, sulfuric),
                    "sulfuric acid where they meet", value, limits.SulfuricFumesFrom, "%");
            }
        }

        return null;
    }

    /// <summary>
    /// The strength, in per cent, that a strong reagent has where it meets a partner: as poured onto enough of the partner, as it
    /// stands when
    /// enough of the partner comes, or in the mixture with any of it. 0 where it is too weak.
    /// </summary>
    private static (Held? Reagent, double Percent) Strengths(Meeting meeting, HazardRole strong, HazardRole partner, double limit,
        double partnerLimit)
    {
        var reagent = meeting.Poured.LastOrDefault(h => h.Is(strong));
        var other = meeting.Poured.LastOrDefault(h => h.Is(partner) && !h.Is(strong));
        var pouredStrong = reagent is null || !meeting.IsOneThing ? 0 : reagent.Strength;
        var pouredOther = other is null || !meeting.IsOneThing ? 0 : other.Strength;
        var strongBefore = 100 * meeting.ShareBefore(h => h.Is(strong));
        var after = 100 * meeting.ShareAfter(h => h.Is(strong));
        var value = pouredStrong >= limit && Rounding.SixDigits(100 * meeting.ShareBefore(h => h.Is(partner)
            && !h.Is(strong))) >= partnerLimit ? pouredStrong
            : Rounding.SixDigits(strongBefore) >= limit && pouredOther >= partnerLimit ? strongBefore
            : Rounding.SixDigits(after) >= limit && meeting.All.Any(h => h.Is(partner) && !h.Is(strong)) ? after
            : 0;
        return (value > 0 ? reagent ?? meeting.There.LastOrDefault(h => h.Is(strong)) : null, value);
    }

    /// <summary>Peroxide or bleach with organic matter, at the strength it has where they meet.</summary>
    private static Hazard? Oxidiser(Meeting meeting, HazardRole role, HazardLimits limits)
    {
        if (meeting.ThroughAliquot)
        {
            return null;
        }

        // Bleach with an acid is chlorine gas first of all, and said so.
        bool Oxidises(Held h) => h.Is(role);
        bool Burns(Held h) => h.Is(HazardRole.Organic) && !h.Is(role) && (role != HazardRole.Hypochlorite
            || h.Substance.Kind != SubstanceKind.Acid);

        var limit = role == HazardRole.Peroxide ? limits.PeroxideFrom : limits.HypochloriteFrom;
        var added = meeting.Poured[^1];
        var before = 100 * meeting.ShareBefore(Oxidises);
        var met = Oxidises(added) && 100 * meeting.ShareBefore(Burns) >= limits.OrganicFrom ? added.Strength
            : Burns(added) && added.Strength >= limits.OrganicFrom ? before
            : meeting.All.Any(Burns) ? 100 * meeting.ShareAfter(Oxidises)
            : 0;
        if (Rounding.SixDigits(met) < limit || meeting.All.LastOrDefault(Burns) is not { } fuel
            || meeting.All.LastOrDefault(Oxidises) is not { } oxidiser)
        {
            return null;
        }

        var what = role == HazardRole.Peroxide ? "hydrogen peroxide where they meet" : "hypochlorite where they meet";
        return new Hazard(HazardKind.Runaway, HazardGrade.Present, oxidiser, fuel, what, met, limit, "%");
    }

    /// <summary>Oxidising solids and organic matter in a vessel into which no water has come yet.</summary>
    private static Hazard? Dry(Meeting meeting, HazardLimits limits)
    {
        if (meeting.FreeWaterGrams > 0 || meeting.ThroughAliquot)
        {
            return null;
        }

        var oxidisers = meeting.All.Where(h => h.Is(HazardRole.OxidisingSalt)).ToList();
        var fuels = meeting.All.Where(h => h.Substance.FeedsMicrobes || h.Substance.Kind == SubstanceKind.Organic
            || h.Is(HazardRole.Fermentable)).ToList();
        if (oxidisers.Count == 0 || fuels.Count == 0)
        {
            return null;
        }

        var fuel = fuels.Sum(f => f.Grams);
        var share = 100 * fuel / (fuel + oxidisers.Sum(o => o.Grams));
        return Rounding.SixDigits(share) <= limits.CombustibleFrom
            ? null
            : new Hazard(HazardKind.Fire, HazardGrade.Present, oxidisers[0], fuels[0], "organic matter in the dry oxidiser", share,
                limits.CombustibleFrom, "%");
    }

    /// <summary>
    /// How warm the vessel gets from dilution and neutralisation, from 20 °C and without loss to the room: an upper bound.
    /// </summary>
    private static Hazard? Heat(Meeting meeting, HazardLimits limits)
    {
        var added = meeting.Poured[^1];
        var kilojoules = meeting.Poured.Sum(Dilution) + (NeutralisationKilojoules * Neutralised(meeting));
        if (meeting.Grams <= 0 || kilojoules <= 0)
        {
            return null;
        }

        var celsius = VesselContents.BenchCelsius + (1000 * kilojoules / (HeatCapacity * meeting.Grams));
        if (Rounding.SixDigits(celsius) < limits.HotFrom)
        {
            return null;
        }

        var other = meeting.There.LastOrDefault(h => h.Is(added.Is(HazardRole.Alkali) ? HazardRole.Acid : HazardRole.Alkali));
        return new Hazard(
            HazardKind.Heat, Rounding.SixDigits(celsius) >= limits.BoilingFrom ? HazardGrade.Grave : HazardGrade.Present, added, other,
                "temperature it can reach",
            celsius, limits.HotFrom, "°C");
    }

    /// <summary>kJ that going into water sets free; liquids count by how much stronger than half they are.</summary>
    private static double Dilution(Held held)
    {
        if (held.Substance.Formula is not { } formula || !Heats.Value.TryGetValue(formula.Hill, out var heat) || heat.KilojoulesPerMol >= 0)
        {
            return 0;
        }

        var share = held.Substance.Form == PhysicalForm.Solid ? 1
            : Math.Clamp(((held.Strength / 100) - HalfDiluted) / (1 - HalfDiluted), 0, 1);
        return -heat.KilojoulesPerMol * share * held.PureGrams / heat.GramsPerMol;
    }

    /// <summary>Moles of acid and alkali that cancel in this step.</summary>
    private static double Neutralised(Meeting meeting)
    {
        static double Acid(IEnumerable<Held> items) => items.Where(h => h.Is(HazardRole.Acid)).Sum(h => Math.Max(0, h.MolesOf(Component.Hydrogen)));
        static double Alkali(IEnumerable<Held> items) => items.Where(h => h.Is(HazardRole.Alkali)).Sum(h => Math.Max(0, -h.MolesOf(Component.Hydrogen)));
        static double Cancelled(double acid, double alkali) => Math.Min(acid, alkali);

        return Cancelled(Acid(meeting.All), Alkali(meeting.All)) - Cancelled(Acid(meeting.There), Alkali(meeting.There));
    }

    /// <summary>One pouring.</summary>
    /// <param name="There">What stood in the vessel.</param>
    /// <param name="ThereGrams">Mass of everything that stood there.</param>
    /// <param name="Poured">What goes in, at least one.</param>
    /// <param name="Grams">Mass of everything afterwards.</param>
    /// <param name="FreeWaterGrams">Water afterwards, without that of crystals.</param>
    private sealed record Meeting(IReadOnlyList<Held> There, double ThereGrams, IReadOnlyList<Held> Poured, double Grams,
        double FreeWaterGrams)
    {
        public bool IsOneThing { get; init; }

        public bool ThroughAliquot { get; init; }

        public IEnumerable<Held> All => There.Concat(Poured);

        public double ShareBefore(Func<Held, bool> fits) => ThereGrams > 0 ? There.Where(fits).Sum(h => h.PureGrams) / ThereGrams : 0;

        public double ShareAfter(Func<Held, bool> fits) => Grams > 0 ? All.Where(fits).Sum(h => h.PureGrams) / Grams : 0;

        public Held? LastWith(HazardRole role, Held? but) => All.LastOrDefault(h => h.Is(role) && h != but);
    }
}
