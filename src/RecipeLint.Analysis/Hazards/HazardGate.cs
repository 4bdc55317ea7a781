using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Mixing;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Analysis.Hazards;

/// <summary>
/// Which hazards arise from what a vessel holds or would hold. Everything that advises asks here first, and the rules of the family People
/// read the same facts. A sorting aid that errs on the safe side: safety data sheets and local codes decide. Pure; never throws.
/// </summary>
public static class HazardGate
{
    /// <summary>Litres of a mole of gas at 20 °C and 1013 hPa (ideal gas).</summary>
    public const double LitresPerMole = 24.06;

    /// <summary>g/mol of Cl2, from CIAAW weights: what one mole of hypochlorite sets free.</summary>
    public const double ChlorineGramsPerMole = 70.90;

    public const string Hypochlorite = "inert:ClO-1";

    private const double AmmoniaGramsPerMole = 17.031;

    /// <summary>g of organic matter a mole of carbon, as in sugar (CH2O, CIAAW weights).</summary>
    private const double CarbonGramsPerMole = 30.03;

    /// <summary>What is never put to contents nobody can name.</summary>
    internal static readonly HashSet<HazardRole> Reactive =
    [
        HazardRole.Acid, HazardRole.AcidSalt, HazardRole.Alkali, HazardRole.Carbonate, HazardRole.Hypochlorite, HazardRole.Peroxide,
        HazardRole.StrongOxidiser, HazardRole.Nitrite, HazardRole.Sulfide, HazardRole.Cyanide, HazardRole.Sulfite, HazardRole.Phosphide,
        HazardRole.WaterReactive, HazardRole.Azide, HazardRole.Fluoride,
    ];

    internal static readonly HazardRole[] Acids = [HazardRole.Acid, HazardRole.AcidSalt, HazardRole.FaintAcid];

    /// <summary>Components whose nitrogen bleach turns to chloramines.</summary>
    public static IReadOnlyList<string> NitrogenCarriers { get; } =
        [
            Component.Ammonium, "inert:urea", Component.Glycinate, Component.Edta, Component.Dtpa, Component.Hedta, Component.Eddha,
            Component.Idha, Component.Sulfamate, "inert:FeHBED-1",
        ];

    private static readonly HashSet<HazardRole> Oxidisable =
    [
        HazardRole.Acid, HazardRole.Ammonium, HazardRole.Amine, HazardRole.Organic, HazardRole.Reductant, HazardRole.Peroxide,
            HazardRole.Sulfide, HazardRole.Cyanide,
        HazardRole.Sulfite, HazardRole.Hypochlorite, HazardRole.Iodide, HazardRole.BareMetal,
    ];

    private static readonly string[] Metals =
    [
        Component.FerrousIron, Component.FerricIron, Component.Copper, Component.Manganese, Component.Zinc, Component.Cobalt,
        Component.Nickel, Component.Aluminium,
    ];

    /// <summary>True for what takes bleach to a pH at which chlorine comes off.</summary>
    public static bool IsAcidToBleach(IReadOnlySet<HazardRole> roles) =>
        roles.Contains(HazardRole.Acid) || roles.Contains(HazardRole.AcidSalt)
        || (roles.Contains(HazardRole.FaintAcid) && !roles.Contains(HazardRole.Ammonium));

    /// <summary>Hazards of a finished stock as it stands in its bottle and of every step on the way, each kind once at its worst.</summary>
    public static HazardReport Of(StockFacts stock, HazardLimits? limits = null) =>
        limits is null || limits == HazardLimits.Default
            ? stock.Derived.Of(stock, static s => Walked(s, HazardLimits.Default))
            : Walked(stock, limits);

    private static HazardReport Walked(StockFacts stock, HazardLimits limits)
    {
        var finished = Of(Holding.Of(stock), limits);

        // One vessel has one figure, that of the finished bottle, wherever the finished bottle is as bad as the way there.
        List<Hazard> hazards = [.. finished.Hazards
            .Concat(HazardWalk.Of(stock, limits).SelectMany(m => m.Standing.Hazards
                .Where(h => h.Grade >= HazardGrade.Present && !(finished.Find(h.Kind)?.Grade >= h.Grade))
                .Concat(m.Meeting)))
            .Concat(SilicateLye.Of(stock, limits) is { } lye ? [lye] : Array.Empty<Hazard>())];
        return new HazardReport(finished.Holding, Gravest(hazards), limits) { Each = hazards };
    }

    /// <summary>
    /// Hazards of what the tank of a recipe holds once every dose and the reagent of its pH are in; its water is left out.
    /// </summary>
    public static HazardReport Of(RecipeFacts recipe)
    {
        var report = Of(Holding.Of(recipe));
        return report.Holding.Has(HazardRole.Hypochlorite) && !ChlorineInTank.GivesGas(recipe)
            ? new HazardReport(report.Holding, Gravest(report.Hazards.Select(OnlyForRoots)), report.Limits)
            : report;
    }

    /// <summary>Bleach so dilute that no gas counts, only more acid could change that.</summary>
    private static Hazard OnlyForRoots(Hazard hazard) => hazard.Kind is HazardKind.Chlorine or HazardKind.Chloramines
        ? hazard with { Grade = HazardGrade.Possible }
        : hazard;

    /// <summary>Hazards of a beaker, in whatever order its contents meet.</summary>
    public static HazardReport Of(Beaker beaker)
    {
        List<Held> items = [.. beaker.Items.Select(i => Held.Of(i.Substance, i.Mass.Grams))];
        var whole = Holding.Of(items, beaker.Volume.Litres);
        var meeting = items.SelectMany(i => Meeting(Holding.Of(items.Where(o => o != i), beaker.Volume.Litres), i, HazardLimits.Default));
        return new HazardReport(whole, Gravest(Of(whole).Hazards.Concat(meeting)), HazardLimits.Default);
    }

    /// <summary>Hazards of contents at rest.</summary>
    public static HazardReport Of(Holding holding, HazardLimits? limits = null)
    {
        var used = limits ?? HazardLimits.Default;
        var found = new[]
        {
            Chlorine(holding, used), ChlorineOfOxidiser(holding, used), ChlorineOfPeroxide.Of(holding, used), Chloramines(holding, used),
            NitriteGases.Oxides(holding, used), NitriteGases.Slow(holding, used), NitriteGases.Nitrogen(holding, used),
            StrongOxidiser(holding, used), Bromination.Of(holding, used), OilWithNitrate.Of(holding, used),
            PoisonsOfAcid.Sulfide(holding, used), PoisonsOfAcid.Cyanide(holding, used), PoisonsOfAcid.Sulfite(holding, used),
            PoisonsOfAcid.Fluoride(holding, used), PoisonsOfAcid.Chlorite(holding, used), Iodination.Of(holding, used),
            GasesOfWater.Phosphine(holding), GasesOfWater.Flammable(holding), Explosives.Of(holding),
            Hydrogen(holding), Oxygen(holding, used), CarbonDioxide(holding, used), Fermentation.Of(holding, used), Ammonia(holding, used),
            Bleaching(holding, used), NitricThrough(holding, used), NitricWithIron.Of(holding, used), Slaking.Of(holding),
            Unknown(holding),
        };
        var suspected = holding.Suspected.Select(Suspicion);
        return new HazardReport(holding, Gravest(found.OfType<Hazard>().Concat(suspected)), used);
    }

    /// <summary>Hazards where one thing is poured onto what stands in the vessel, before the two are mixed.</summary>
    public static IReadOnlyList<Hazard> Meeting(VesselContents before, VesselContents after, HazardLimits? limits = null) =>
        MeetingHazards.Of(before, after, limits ?? HazardLimits.Default);

    /// <summary>The same for a reagent poured into contents at rest.</summary>
    internal static IReadOnlyList<Hazard> Meeting(Holding before, Held poured, HazardLimits limits) => MeetingHazards.Of(before, poured,
        limits);

    /// <summary>A hazard that rests on a sign alone.</summary>
    internal static Hazard Suspicion(HazardKind kind) => new(kind, HazardGrade.Suspected, null, null, "", 0, 0, "");

    /// <summary>The word of a handling in the data.</summary>
    internal static string Word(VesselAction handling) => handling switch
    {
        VesselAction.KeepTogether => "keep-together",
        VesselAction.MakeStronger => "make-stronger",
        _ => handling.ToString().ToLowerInvariant(),
    };

    /// <summary>Each kind once, at its worst; what is to be left alone first.</summary>
    internal static IReadOnlyList<Hazard> Gravest(IEnumerable<Hazard> hazards) =>
        hazards.ToList() is { Count: > 0 } all ? Gravest(all) : [];

    private static IReadOnlyList<Hazard> Gravest(List<Hazard> hazards) =>
    [
        .. hazards.GroupBy(h => h.Kind)
            .Select(g => g.OrderByDescending(h => h.Grade).ThenByDescending(h => h.IsWhereTheyMeet)
                .ThenByDescending(h => h.Value).First())
            .OrderByDescending(h => h.IsForLeaving)
            .ThenByDescending(h => h.Grade)
            .ThenBy(h => h.Kind),
    ];

    private static Hazard? Chlorine(Holding holding, HazardLimits limits)
    {
        if (holding.First(HazardRole.Hypochlorite) is not { } bleach)
        {
            return null;
        }

        var chlorine = 1000 * ChlorineGramsPerMole * ChlorinePerLitre(holding);
        if (Rounding.SixDigits(chlorine) < limits.Chlorine.From)
        {
            return null;
        }

        // An ammonium salt is an acid too, a faint one: what comes first then is chloramine. One product of both kinds waits for another.
        (Held Bleach, Held Acid)? Meets(IEnumerable<Held> acids) => acids
            .SelectMany(a => holding.Having(HazardRole.Hypochlorite).Where(b => b != a || !a.Is(HazardRole.Unknown)).Select(b => (b, a)))
            .Select(p => ((Held, Held)?)p).FirstOrDefault();
        var pair = Meets(holding.Having(HazardRole.Acid).Concat(holding.Having(HazardRole.AcidSalt)))
            ?? Meets(holding.Items.Where(i => IsAcidToBleach(i.Roles)));
        var acid = pair?.Acid;
        bleach = pair?.Bleach ?? bleach;
        return new Hazard(
            HazardKind.Chlorine, acid is null ? HazardGrade.Possible : HazardGrade.Present, bleach, acid, "available chlorine",
                chlorine, limits.Chlorine.From, "mg/L");
    }

    /// <summary>
    /// Permanganate, chlorate or dichromate sets chlorine free from hydrochloric acid, and from a chloride as soon as there is an acid, its
    /// own as well: monopersulfate is sour (Bretherick's Handbook of Reactive Chemical Hazards, recalled).
    /// </summary>
    private static Hazard? ChlorineOfOxidiser(Holding holding, HazardLimits limits)
    {
        var grams = holding.GramsPerLitre(HazardRole.StrongOxidiser);
        var chloride = holding.First(HazardRole.Chloride);
        var acid = holding.First(HazardRole.HydrochloricAcid) ?? (chloride is null ? null : holding.First(HazardRole.Acid));
        acid = acid is not null && acid == holding.First(HazardRole.StrongOxidiser) ? chloride : acid;
        return holding.First(HazardRole.StrongOxidiser) is { } oxidiser && acid is not null && acid != oxidiser
            && Rounding.SixDigits(grams) >= limits.Oxidiser.StrongFrom
                ? new Hazard(HazardKind.Chlorine, HazardGrade.Present, oxidiser, acid, "strong oxidiser", grams, limits.Oxidiser.StrongFrom,
                    "g/L")
                : null;
    }

    private static Hazard? Chloramines(Holding holding, HazardLimits limits)
    {
        if (!holding.Has(HazardRole.Hypochlorite))
        {
            return null;
        }

        var chlorine = 1000 * ChlorineGramsPerMole * ChlorinePerLitre(holding);
        return holding.First(HazardRole.Hypochlorite) is { } bleach
            && Rounding.SixDigits(chlorine) >= limits.Chlorine.From
            && holding.Having(HazardRole.Ammonium).Concat(holding.Having(HazardRole.Amine)).OrderByDescending(Nitrogen)
                .FirstOrDefault() is { } partner
                ? new Hazard(HazardKind.Chloramines, HazardGrade.Present, bleach, partner, "available chlorine", chlorine,
                    limits.Chlorine.From, "mg/L")
                : null;
    }

    /// <summary>Moles of nitrogen that bleach turns to chloramines.</summary>
    public static double Nitrogen(Held held) => NitrogenCarriers.Sum(held.MolesOf);

    /// <summary>
    /// Bleach mixed through with organic matter, at any dilution: two hypochlorites burn a carbon, and half a mole of gas or less comes of
    /// each. With acids it is chlorine first of all, with ammonium and amines chloramine, and said so.
    /// </summary>
    private static Hazard? Bleaching(Holding holding, HazardLimits limits)
    {
        if (!holding.Has(HazardRole.Hypochlorite) || !holding.Has(HazardRole.Organic))
        {
            return null;
        }

        var organic = holding.Having(HazardRole.Organic).Where(i => !i.Is(HazardRole.Acid) && !i.Is(HazardRole.Amine)
            && !i.Is(HazardRole.Hypochlorite)).ToList();
        var litres = LitresPerMole * Math.Min(
            ChlorinePerLitre(holding) / 2, organic.Sum(i => i.PureGrams) / CarbonGramsPerMole / holding.Litres);
        return holding.First(HazardRole.Hypochlorite) is { } bleach && organic.Count > 0 && Rounding.SixDigits(litres) >= limits.Gas.From
            ? new Hazard(
                HazardKind.Runaway, HazardGrade.Present, bleach, organic.MaxBy(i => i.PureGrams), "carbon dioxide and chlorinated gases",
                litres, limits.Gas.From, "L/L")
            : null;
    }

    /// <summary>Nitric acid mixed through with organic matter: slow in the cold, and it runs away once it is warm.</summary>
    private static Hazard? NitricThrough(Holding holding, HazardLimits limits)
    {
        if (!holding.Has(HazardRole.NitricAcid) && limits.StrongAcid.NitricStandingFrom > 0)
        {
            return null;
        }

        var acid = holding.GramsPerLitre(HazardRole.NitricAcid);
        var organic = holding.Having(HazardRole.Organic).Where(i => !i.Is(HazardRole.NitricAcid)).ToList();
        return Rounding.SixDigits(acid) >= limits.StrongAcid.NitricStandingFrom
            && Rounding.SixDigits(organic.Sum(i => i.PureGrams) / holding.Litres) >= limits.StrongAcid.NitricStandingOrganicFrom
            ? new Hazard(
                HazardKind.NitrogenOxides, HazardGrade.Present, holding.First(HazardRole.NitricAcid), organic.MaxBy(i => i.PureGrams),
                "nitric acid", acid, limits.StrongAcid.NitricStandingFrom, "g/L")
            : null;
    }

    private static Hazard? StrongOxidiser(Holding holding, HazardLimits limits)
    {
        var grams = holding.GramsPerLitre(HazardRole.StrongOxidiser);
        return holding.First(HazardRole.StrongOxidiser) is { } oxidiser
            && Rounding.SixDigits(grams) >= limits.Oxidiser.StrongFrom
            && holding.Items.FirstOrDefault(i => i != oxidiser && i.Roles.Overlaps(Oxidisable)) is { } partner
                ? new Hazard(HazardKind.Runaway, HazardGrade.Present, oxidiser, partner, "strong oxidiser", grams,
                    limits.Oxidiser.StrongFrom, "g/L")
                : null;
    }

    /// <summary>Lye dissolves aluminium and zinc, acid these and iron as well; any amount of a metal goes on for as long as there is some.
    /// </summary>
    private static Hazard? Hydrogen(Holding holding)
    {
        var grams = holding.GramsPerLitre(HazardRole.BareMetal);
        var solvent = holding.First(HazardRole.Acid, HazardRole.AcidSalt, HazardRole.Alkali);
        return holding.First(HazardRole.BareMetal) is { } metal && grams > 0
            ? new Hazard(
                HazardKind.Hydrogen, solvent is null ? HazardGrade.Possible : HazardGrade.Present, metal, solvent, "metal", grams, 0, "g/L")
            : null;
    }

    private static Hazard? Oxygen(Holding holding, HazardLimits limits)
    {
        if (holding.First(HazardRole.Peroxide) is not { } peroxide)
        {
            return null;
        }

        var litres = PeroxidePerLitre(holding) / 2 * LitresPerMole;
        if (Rounding.SixDigits(litres) < limits.Gas.From)
        {
            return null;
        }

        var catalyst = holding.First(HazardRole.PeroxideCatalyst, HazardRole.Hypochlorite, HazardRole.Alkali);
        return new Hazard(
            HazardKind.OxygenPressure, catalyst is null || catalyst == peroxide ? HazardGrade.Possible : HazardGrade.Present, peroxide,
                catalyst, "oxygen",
            litres, limits.Gas.From, "L/L");
    }

    private static Hazard? CarbonDioxide(Holding holding, HazardLimits limits)
    {
        if (holding.First(HazardRole.Carbonate) is not { } carbonate || holding.First(HazardRole.Acid, HazardRole.AcidSalt) is not { } acid)
        {
            return null;
        }

        // A carbonate takes two protons before gas leaves it, hydrogen carbonate one; where they meet the acid is in excess, so all of
        // it counts.
        var carbonates = holding.MolesPerLitre(Component.Carbonate)
            + (holding.Having(HazardRole.Carbonate).Sum(NamedMoles) / holding.Litres);
        var alkaline =
            holding.Having(HazardRole.Carbonate).Sum(i => i.MolesOf(Component.Carbonate) - i.MolesOf(Component.Hydrogen)) / holding.Litres;
        var others = holding.Items.Where(i => !i.Is(HazardRole.Carbonate)).ToList();
        var taken = carbonates > 0 ? 1 + Math.Clamp(alkaline / carbonates, 0, 1) : 1;
        double Gas(double protons) => LitresPerMole * Math.Clamp(protons / holding.Litres / taken, 0, carbonates);
        var ofAcids = others.Sum(i => i.MolesOf(Component.Hydrogen) + (i.Is(HazardRole.Acid) ? NamedMoles(i) : 0));
        var litres =
            Gas(ofAcids + others.Sum(i => i.MolesOf(Component.Phosphate) + (i.Is(HazardRole.AcidSalt) ? 2 * Metals.Sum(i.MolesOf) : 0)));

        // A salt that is only a little acid lets the gas off slowly: no vessel foams over.
        var foams = Rounding.SixDigits(Gas(ofAcids)) >= limits.Gas.BriskFrom;
        return Rounding.SixDigits(litres) < limits.Gas.From
            ? null
            : new Hazard(
                HazardKind.CarbonDioxidePressure, foams ? HazardGrade.Grave : HazardGrade.Present, carbonate,
                acid, "carbon dioxide", litres, limits.Gas.From, "L/L");
    }

    private static Hazard? Ammonia(Holding holding, HazardLimits limits)
    {
        if (holding.First(HazardRole.AmmoniaWater, HazardRole.Ammonium) is not { } ammonium)
        {
            return null;
        }

        if (!holding.Has(HazardRole.Alkali))
        {
            return null;
        }

        var alkali = holding.Having(HazardRole.Alkali).OrderByDescending(a => a.Is(HazardRole.AmmoniaWater) ? 0 : FreeAlkali(a))
            .FirstOrDefault();
        var bases = holding.Items.Sum(FreeAlkali);
        var grams = 1000 * AmmoniaGramsPerMole * Math.Clamp(bases / holding.Litres, 0, holding.MolesPerLitre(Component.Ammonium));
        if (alkali is null || Rounding.SixDigits(grams) < limits.Poison.AmmoniaFrom)
        {
            return null;
        }

        // Ammonia water by itself gives it off, as everybody knows who buys it; what sets it free from a salt does not show on the bottle.
        var alone = alkali.Is(HazardRole.AmmoniaWater) && holding.Having(HazardRole.Ammonium).All(i => i.Is(HazardRole.AmmoniaWater));
        return new Hazard(
            HazardKind.Ammonia, alone ? HazardGrade.Possible : HazardGrade.Present, alone ? alkali : ammonium, alone ? null : alkali,
                "free ammonia", grams,
            limits.Poison.AmmoniaFrom, "mg/L");
    }

    /// <summary>
    /// Moles of acid, alkali or carbonate in a product known by name only: as in hydrochloric acid of 37 % or lye of 40 % (common practice,
    /// no source); 0 where the composition is known.
    /// </summary>
    private static double NamedMoles(Held held) => held.Moles.Count == 0 && held.Is(HazardRole.Unknown) ? 0.01 * held.Grams : 0;

    /// <summary>Moles of base that reach ammonium, negative for an acid; hydrogen carbonate and lime count nothing.</summary>
    private static double FreeAlkali(Held held) =>
        -held.MolesOf(Component.Hydrogen)
        - held.MolesOf(Component.Phosphate)
        + (held.MolesOf(Component.Calcium) >= held.MolesOf(Component.Carbonate) ? 0 : held.MolesOf(Component.Carbonate))
        + (held.Is(HazardRole.Alkali) ? NamedMoles(held) + held.MolesOf(Component.Edta) + held.MolesOf(Component.Pyrophosphate) : 0);

    private static Hazard? Unknown(Holding holding)
    {
        if (!holding.HasUnknown)
        {
            return null;
        }

        // Of an extract its kind is known at least: it is no poison gas waiting for the acid that stocks are kept with. What burnt lime
        // does has a text of its own.
        var unknown = holding.First(HazardRole.Unknown);
        List<Held> reactive = holding.HasNameless
            ? [.. holding.Items.Where(i => i.Roles.Overlaps(Reactive) && !i.Is(HazardRole.AcidSalt) && !i.Is(HazardRole.Quicklime))]
            : [];
        return new Hazard(
            HazardKind.UnknownContents, reactive.Count == 0 ? HazardGrade.Possible : HazardGrade.Present, unknown,
            reactive.Find(i => i.Substance.Name != unknown?.Substance.Name), "", 0, 0, "");
    }

    /// <summary>
    /// mol/L of hypochlorite; a product known by name only counts with 5 % of its mass (household bleach, common practice, no source).
    /// </summary>
    internal static double ChlorinePerLitre(Holding holding) =>
        holding.Having(HazardRole.Hypochlorite).Sum(i => Math.Max(i.MolesOf(Hypochlorite), i.Moles.ContainsKey(Hypochlorite) ? 0
            : 0.05 * i.Grams / ChlorineGramsPerMole)) / holding.Litres;

    /// <summary>
    /// mol/L of peroxide; a product known by name only counts with 3 % of its mass (household peroxide, common practice, no source).
    /// </summary>
    public static double PeroxidePerLitre(Holding holding) =>
        holding.Having(HazardRole.Peroxide).Sum(i => i.Moles.TryGetValue(HydrogenPeroxide.Component, out var moles) ? moles
            : 0.03 * i.Grams / HydrogenPeroxide.GramsPerMole) / holding.Litres;
}
