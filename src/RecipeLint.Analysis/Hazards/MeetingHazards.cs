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
public static class MeetingHazards
{
    /// <summary>Heat of H+ with OH-, kJ/mol (CRC Handbook, recalled).</summary>
    private const double NeutralisationKilojoules = 56;

    /// <summary>
    /// Heat of a mole of thiosulfate that hypochlorite turns to sulfate, 4 ClO- + S2O3-2 + 2 OH-, kJ/mol (standard enthalpies of the ions,
    /// CRC Handbook, recalled).
    /// </summary>
    private const double BleachedKilojoules = 1240;

    private const double BleachPerThiosulfate = 4;

    /// <summary>J per g and K of concentrated acids and salt solutions (common practice, no source: four fifths of water's).</summary>
    private const double HeatCapacity = 3.3;

    /// <summary>Liquids weaker than this have given off most of their heat of dilution (common practice, no source).</summary>
    private const double HalfDiluted = 0.5;

    private static readonly Lazy<Dictionary<string, HeatOfSolution>> Heats = new(() =>
        HeatOfSolution.All.GroupBy(h => FormulaParser.Parse(h.Formula).Hill).ToDictionary(g => g.Key, g => g.First()));

    /// <summary>The acids sold as liquids onto which no water is poured from a strength on.</summary>
    private static readonly (Formula Acid, Func<HazardLimits, double> Limit)[] LiquidAcids =
    [
        (FormulaParser.Parse("H2SO4"), l => l.WaterOnto.SulfuricFrom), (FormulaParser.Parse("HNO3"), l => l.WaterOnto.NitricFrom),
        (FormulaParser.Parse("HCl"), l => l.WaterOnto.HydrochloricFrom), (FormulaParser.Parse("H3PO4"), l => l.WaterOnto.PhosphoricFrom),
        (FormulaParser.Parse("C2H4O2"), l => l.WaterOnto.AceticFrom),
    ];

    /// <summary>Per cent of lye from which what is poured onto it boils: it is still solid (common practice, no source).</summary>
    private const double Solid = 60;

    private static readonly Formula[] Lyes = [FormulaParser.Parse("NaOH"), FormulaParser.Parse("KOH")];

    /// <summary>
    /// kJ of a gram of burnt lime that slakes, CaO + H2O = Ca(OH)2, 65 kJ/mol (standard enthalpies, CRC Handbook, recalled; 56.08 g/mol,
    /// CIAAW weights).
    /// </summary>
    private const double SlakingKilojoulesPerGram = 65.2 / 56.08;

    internal static IReadOnlyList<Hazard> Of(VesselContents before, VesselContents after, HazardLimits limits) =>
        Between(before, after) is { } meeting ? Of(meeting, limits)
        : WaterOntoAcid(before, after, limits).FirstOrDefault(m => m.IsDangerous) is { } splash
            ? [Splash(splash, "acid when water comes onto it")]
        : WaterOntoLye(before, after, limits) is { IsDangerous: true } spits
            ? [Splash(spits, "lye when water comes onto it") with
            {
                Grade = spits.Percent >= Solid ? HazardGrade.Grave : HazardGrade.Present,
            }]
            : [];

    private static Hazard Splash(StrongMeeting met, string what) =>
        new(HazardKind.Heat, HazardGrade.Grave, met.Reagent, null, what, met.Percent, met.Limit, "%");

    /// <summary>Water that is poured alone onto sodium or potassium hydroxide; null where it is not.</summary>
    private static StrongMeeting? WaterOntoLye(VesselContents before, VesselContents after, HazardLimits limits)
    {
        if (after.Additions.Count > before.Additions.Count || after.FreeWaterGrams <= before.FreeWaterGrams)
        {
            return null;
        }

        var lyes = before.Additions.Where(a => !a.ThroughAliquot && a.Substance.Formula is { } formula
            && Lyes.Any(formula.HasCompositionOf)).Select(Held.Of).ToList();
        var pure = lyes.Sum(l => l.PureGrams);
        return pure > 0
            ? new StrongMeeting(
                MeetingPoint.Standing, lyes[^1], lyes[^1], pure, pure + before.FreeWaterGrams, 0, limits.WaterOnto.LyeFrom)
            : null;
    }

    /// <summary>Strong nitric acid where it meets organic matter; null where not both are there.</summary>
    public static StrongMeeting? NitricWithOrganic(VesselContents before, VesselContents after, HazardLimits limits) =>
        Between(before, after) is { } meeting ? NitricWithOrganic(meeting, limits) : null;

    /// <summary>
    /// Peroxide or bleach where it meets organic matter; null where not both are there, or the two come diluted from another stock.
    /// </summary>
    public static StrongMeeting? OxidiserWithOrganic(VesselContents before, VesselContents after, HazardRole role, HazardLimits limits) =>
        Between(before, after) is { } meeting ? OxidiserWithOrganic(meeting, role, limits) : null;

    /// <summary>An oxidiser dry with organic matter; null where there is water, or not both are there.</summary>
    public static DryMeeting? DryTogether(VesselContents before, VesselContents after, HazardLimits limits) =>
        Between(before, after) is { } meeting ? DryTogether(meeting, limits) : null;

    /// <summary>Water that is poured alone onto each acid that stands in the vessel.</summary>
    public static IEnumerable<StrongMeeting> WaterOntoAcid(VesselContents before, VesselContents after, HazardLimits limits)
    {
        if (after.Additions.Count > before.Additions.Count || after.FreeWaterGrams <= before.FreeWaterGrams)
        {
            yield break;
        }

        foreach (var (acid, limit) in LiquidAcids)
        {
            var acids = before.Additions.Where(a => !a.ThroughAliquot && IsLiquidAcid(a.Substance, acid)).Select(Held.Of).ToList();
            var pure = acids.Sum(a => a.PureGrams);
            if (pure > 0)
            {
                var all = pure + before.FreeWaterGrams;
                yield return new StrongMeeting(MeetingPoint.Standing, acids[^1], acids[^1], pure, all, 0, limit(limits))
                {
                    Warms = HeatOfDilution.WarmsBy(acid, pure / all) is { } kelvin
                        ? (kelvin, limits.WaterOnto.WarmsFrom, limits.WaterOnto.NoticedFrom)
                        : null,
                };
            }
        }
    }

    /// <summary>True for an acid sold as a liquid, at any strength.</summary>
    private static bool IsLiquidAcid(Substance substance, Formula acid) =>
        substance is { Kind: SubstanceKind.Acid, Form: PhysicalForm.Liquid, Formula: { } formula } && formula.HasCompositionOf(acid);

    /// <summary>What comes together in one pouring; null where nothing but water is poured.</summary>
    private static Meeting? Between(VesselContents before, VesselContents after)
    {
        var added = after.Additions.Skip(before.Additions.Count).ToList();
        return added.Count == 0 ? null
            : new Meeting(
                [.. before.Additions.Select(Held.Of)], before.Grams, [.. added.Select(Held.Of)], after.Grams, after.FreeWaterGrams)
            {
                IsOneThing = added.Count == 1,
                ThroughAliquot = added.Exists(a => a.ThroughAliquot),
            };
    }

    internal static IReadOnlyList<Hazard> Of(Holding before, Held poured, HazardLimits limits)
    {
        var grams = 1000 * before.Litres;
        return Of(new Meeting(before.Items, grams, [poured], grams + poured.Grams, grams) { IsOneThing = true }, limits);
    }

    /// <summary>Two things as they are bought, put together without water.</summary>
    internal static Hazard? Dry(Held one, Held other, HazardLimits limits)
    {
        var both = new Meeting([one], one.Grams, [other], one.Grams + other.Grams, 0);
        return Dry(both, limits) ?? DryNitrite(both, limits);
    }

    private static IReadOnlyList<Hazard> Of(Meeting meeting, HazardLimits limits) =>
    [
        .. new[]
        {
            Nitric(meeting, limits), NitricReductant(meeting, limits), Fumes(meeting, limits), Oxidiser(meeting, HazardRole.Peroxide,
                limits),
            Oxidiser(meeting, HazardRole.Hypochlorite, limits), Dry(meeting, limits), DryNitrite(meeting, limits),
            Heat(meeting, limits),
        }.OfType<Hazard>(),
    ];

    private static StrongMeeting? NitricWithOrganic(Meeting meeting, HazardLimits limits) =>
        Strongest(
            meeting, HazardRole.NitricAcid, h => h.Is(HazardRole.Organic), limits.StrongAcid.NitricFrom,
            limits.StrongAcid.NitricOrganicFrom);

    /// <summary>Strong nitric acid with organic matter.</summary>
    private static Hazard? Nitric(Meeting meeting, HazardLimits limits) =>
        Of(NitricWithOrganic(meeting, limits), HazardKind.NitrogenOxides, "nitric acid where they meet");

    private static Hazard? Of(StrongMeeting? meeting, HazardKind kind, string what) => meeting is { IsDangerous: true }
        ? new Hazard(kind, HazardGrade.Present, meeting.Reagent, meeting.Partner, what, meeting.Percent, meeting.Limit, "%")
        : null;

    /// <summary>Nitric acid with iron(II) or iodide gives brown fumes, with chloride chlorine as well.</summary>
    private static Hazard? NitricReductant(Meeting meeting, HazardLimits limits)
    {
        if (!meeting.Roles.Has(HazardRole.NitricAcid))
        {
            return null;
        }

        (HazardRole Role, double Limit)[] partners =
        [
            (HazardRole.Reductant, limits.StrongAcid.NitricReductantFrom), (HazardRole.Chloride, limits.StrongAcid.NitricFrom),
            (HazardRole.HydrochloricAcid, limits.StrongAcid.NitricReductantFrom),
        ];
        return partners
            .Select(p => Of(
                Strongest(meeting, HazardRole.NitricAcid, h => h.Is(p.Role), p.Limit, limits.StrongAcid.NitricOrganicFrom),
                HazardKind.NitrogenOxides, "nitric acid where they meet"))
            .FirstOrDefault(h => h is not null);
    }

    /// <summary>Strong sulfuric acid with chloride, nitrate or organic matter.</summary>
    private static Hazard? Fumes(Meeting meeting, HazardLimits limits)
    {
        if (!meeting.Roles.Has(HazardRole.SulfuricAcid))
        {
            return null;
        }

        HazardRole[] partners = [HazardRole.Chloride, HazardRole.OxidisingSalt, HazardRole.NitricAcid, HazardRole.Organic];
        return partners
            .Select(role => Of(
                Strongest(
                    meeting, HazardRole.SulfuricAcid, h => h.Is(role), limits.StrongAcid.SulfuricFumesFrom, limits.Oxidiser.OrganicFrom),
                role == HazardRole.Organic ? HazardKind.Runaway : HazardKind.AcidFumes, "sulfuric acid where they meet"))
            .FirstOrDefault(h => h is not null);
    }

    /// <summary>
    /// A strong reagent where it is strongest: as poured onto enough of the partner, as it stands when enough of the partner comes, or in
    /// the mixture with any of it. The first of them that is dangerous, else the strongest; null where not both are there.
    /// </summary>
    private static StrongMeeting? Strongest(
        Meeting meeting, HazardRole reagentRole, Func<Held, bool> partner, double limit, double partnerLimit)
    {
        bool Strong(Held held) => held.Is(reagentRole);
        bool Meets(Held held) => partner(held) && !Strong(held);
        if (meeting.Grams <= 0 || !meeting.Roles.Has(reagentRole) || !meeting.All.Any(Meets))
        {
            return null;
        }

        var reagent = meeting.Poured.LastOrDefault(Strong) ?? meeting.There.Last(Strong);
        var other = meeting.All.Last(Meets);
        var alone = meeting.IsOneThing ? meeting.Poured[0] : null;
        var before = 100 * meeting.ShareBefore(Meets);
        var points = new List<StrongMeeting>();
        if (alone is not null && Strong(alone) && Rounding.SixDigits(before) >= partnerLimit)
        {
            points.Add(new StrongMeeting(MeetingPoint.Stream, reagent, other, alone.PureGrams, alone.Grams, before, limit));
        }

        if (alone is not null && Meets(alone) && alone.Strength >= partnerLimit && meeting.ThereGrams > 0 && meeting.There.Any(Strong))
        {
            points.Add(new StrongMeeting(
                MeetingPoint.Standing, reagent, other, meeting.There.Where(Strong).Sum(h => h.PureGrams), meeting.ThereGrams, before,
                limit));
        }

        points.Add(new StrongMeeting(
            MeetingPoint.Mixed, reagent, other, meeting.All.Where(Strong).Sum(h => h.PureGrams), meeting.Grams, before, limit));
        return points.Find(p => p.IsDangerous) ?? points.MaxBy(p => p.Percent);
    }

    private static StrongMeeting? OxidiserWithOrganic(Meeting meeting, HazardRole role, HazardLimits limits)
    {
        if (meeting.ThroughAliquot)
        {
            return null;
        }

        // Bleach with an acid is chlorine gas first of all, and said so.
        bool Burns(Held h) => h.Is(HazardRole.Organic) && (role != HazardRole.Hypochlorite || h.Substance.Kind != SubstanceKind.Acid);
        return Strongest(
            meeting, role, Burns, role == HazardRole.Peroxide ? limits.Oxidiser.PeroxideFrom : limits.Oxidiser.HypochloriteFrom,
            limits.Oxidiser.OrganicFrom);
    }

    /// <summary>Peroxide or bleach with organic matter, at the strength it has where they meet.</summary>
    private static Hazard? Oxidiser(Meeting meeting, HazardRole role, HazardLimits limits) => Of(
        OxidiserWithOrganic(meeting, role, limits), HazardKind.Runaway,
        role == HazardRole.Peroxide ? "hydrogen peroxide where they meet" : "hypochlorite where they meet");

    private static DryMeeting? DryTogether(Meeting meeting, HazardLimits limits)
    {
        if (meeting.FreeWaterGrams > 0 || meeting.ThroughAliquot || !meeting.Roles.Has(HazardRole.OxidisingSalt))
        {
            return null;
        }

        var oxidisers = meeting.All.Where(h => h.Is(HazardRole.OxidisingSalt)).ToList();
        var fuels = meeting.All.Where(h => h.Substance.FeedsMicrobes || h.Substance.Kind == SubstanceKind.Organic
            || h.Is(HazardRole.Fermentable) || h.Is(HazardRole.Fuel)).ToList();
        return oxidisers.Sum(o => o.Grams) > 0 && fuels.Sum(f => f.Grams) > 0
            ? new DryMeeting(oxidisers, fuels, limits.Oxidiser.CombustibleFrom)
            : null;
    }

    /// <summary>Oxidising solids and organic matter in a vessel into which no water has come yet.</summary>
    private static Hazard? Dry(Meeting meeting, HazardLimits limits) => DryTogether(meeting, limits) is { IsDangerous: true } dry
        ? new Hazard(
            HazardKind.Fire,
            HazardGrade.Present,
            dry.Oxidisers[0],
            dry.Fuels[0],
            "organic matter in the dry oxidiser",
            dry.Percent,
            dry.Limit, "%")
        : null;

    /// <summary>Nitrite with an ammonium salt in a vessel into which no water has come yet.</summary>
    private static Hazard? DryNitrite(Meeting meeting, HazardLimits limits)
    {
        if (meeting.FreeWaterGrams > 0 || meeting.ThroughAliquot || meeting.Grams <= 0
            || !meeting.Roles.Has(HazardRole.Nitrite) || !meeting.Roles.Has(HazardRole.Ammonium))
        {
            return null;
        }

        var limit = limits.Poison.NitriteDryFrom;
        var percent = 100 * meeting.All.Where(h => h.Is(HazardRole.Nitrite)).Sum(h => h.PureGrams) / meeting.Grams;
        return Rounding.SixDigits(percent) < limit
            ? null
            : new Hazard(
                HazardKind.NitrogenPressure, HazardGrade.Grave, meeting.All.First(h => h.Is(HazardRole.Nitrite)),
                meeting.All.First(h => h.Is(HazardRole.Ammonium)), "nitrite in the dry mixture", percent, limit, "%");
    }

    /// <summary>
    /// How warm the vessel gets from dilution, neutralisation and bleach with thiosulfate, from 20 °C and without loss to
    /// the room: an upper bound.
    /// </summary>
    private static Hazard? Heat(Meeting meeting, HazardLimits limits)
    {
        var added = meeting.Poured[^1];
        var kilojoules = meeting.Poured.Sum(Dilution) + (NeutralisationKilojoules * Neutralised(meeting))
            + (BleachedKilojoules * Bleached(meeting));
        if (meeting.Grams <= 0 || kilojoules <= 0)
        {
            return null;
        }

        var celsius = VesselContents.BenchCelsius + (1000 * kilojoules / (HeatCapacity * meeting.Grams));
        if (Rounding.SixDigits(celsius) < limits.Heat.HotFrom)
        {
            return null;
        }

        var other = meeting.There.LastOrDefault(h => h.Is(Opposite(added)));
        return new Hazard(
            HazardKind.Heat, Rounding.SixDigits(celsius) >= limits.Heat.BoilingFrom ? HazardGrade.Grave : HazardGrade.Present, added, other,
                "temperature it can reach",
            celsius, limits.Heat.HotFrom, "°C")
        {
            WaitsForWater = meeting.ThereGrams <= 0,
        };
    }

    private static HazardRole Opposite(Held added) => added.Is(HazardRole.Sulfite) ? HazardRole.Hypochlorite
        : added.Is(HazardRole.Hypochlorite) ? HazardRole.Sulfite
        : added.Is(HazardRole.Alkali) ? HazardRole.Acid : HazardRole.Alkali;

    /// <summary>Moles of thiosulfate that bleach uses up in this step.</summary>
    private static double Bleached(Meeting meeting)
    {
        static double Used(IEnumerable<Held> items) => Math.Min(
            items.Sum(h => h.MolesOf(HazardGate.Hypochlorite)) / BleachPerThiosulfate, items.Sum(h => h.MolesOf(Component.Thiosulfate)));
        return meeting.Roles.Has(HazardRole.Hypochlorite) && meeting.Roles.Has(HazardRole.Sulfite)
            ? Used(meeting.All) - Used(meeting.There)
            : 0;
    }

    /// <summary>
    /// How warm something gets that the file names and no catalogue holds, poured into what stands there; null where it does not scald.
    /// </summary>
    internal static Hazard? Heat(Holding there, Held poured, HazardLimits limits)
    {
        var grams = 1000 * there.Litres;
        return Heat(new Meeting(there.Items, grams, [poured], grams + poured.Grams, grams), limits);
    }

    /// <summary>kJ that going into water sets free; liquids count by how much stronger than half they are.</summary>
    private static double Dilution(Held held)
    {
        if (held.Is(HazardRole.Quicklime))
        {
            return SlakingKilojoulesPerGram * held.Grams;
        }

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
        static double Acid(
            IEnumerable<Held> items) => items.Where(h => h.Is(HazardRole.Acid)).Sum(h => Math.Max(0, h.MolesOf(Component.Hydrogen)));
        static double Alkali(
            IEnumerable<Held> items) => items.Where(h => h.Is(HazardRole.Alkali)).Sum(h => Math.Max(0, -h.MolesOf(Component.Hydrogen)));
        static double Cancelled(double acid, double alkali) => Math.Min(acid, alkali);

        if (!meeting.Roles.Has(HazardRole.Acid) || !meeting.Roles.Has(HazardRole.Alkali))
        {
            return 0;
        }

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

        /// <summary>What any of it does.</summary>
        public RoleSet Roles { get; } = new(RoleSet.OfAll(There).Bits | RoleSet.OfAll(Poured).Bits);

        public double ShareBefore(Func<Held, bool> fits) => ThereGrams > 0 ? There.Where(fits).Sum(h => h.PureGrams) / ThereGrams : 0;
    }
}
