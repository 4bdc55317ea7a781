using RecipeLint.Analysis.Preservation;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Analysis.Hazards;

/// <summary>What ferments in a vessel, and whether it can there.</summary>
internal static class Fermentation
{
    /// <summary>g/mol of glucose, from CIAAW weights.</summary>
    private const double GlucoseGramsPerMole = 180.16;

    /// <summary>Part of a plant or animal extract that ferments (common practice, no source).</summary>
    private const double OfExtract = 0.1;

    private static readonly HazardRole[] StrongAcids = [HazardRole.NitricAcid, HazardRole.SulfuricAcid, HazardRole.HydrochloricAcid];

    /// <summary>Present where the file keeps it warm for weeks unguarded, possible elsewhere; null where nothing ferments.</summary>
    public static Hazard? Of(Holding holding, HazardLimits limits)
    {
        if (!holding.Has(HazardRole.Fermentable) && !holding.Has(HazardRole.Unknown))
        {
            return null;
        }

        if (Largest(holding) is not { } food || KillsYeast(holding, limits) || holding.Kept?.NothingGrows(limits) == true)
        {
            return null;
        }

        var sugar = OfSugar(holding);
        var all = sugar + OfExtracts(holding);
        return holding.Kept?.FermentsInTime(limits) == true && Rounding.SixDigits(all) >= limits.Gas.BurstFrom
                ? Of(food, HazardGrade.Present, all, limits.Gas.BurstFrom)
            : holding.Kept?.MayFermentInTime(limits) == true && Rounding.SixDigits(all) >= limits.Gas.BurstFrom
                ? Of(food, HazardGrade.Possible, all, limits.Gas.BurstFrom)
            : holding.First(HazardRole.Fermentable) is { } named && Rounding.SixDigits(sugar) >= limits.Gas.From
                ? Of(named, HazardGrade.Possible, sugar, limits.Gas.From)
            : null;
    }

    private static Hazard Of(Held food, HazardGrade grade, double litres, double from) =>
        new(HazardKind.FermentationPressure, grade, food, null, "carbon dioxide", litres, from, "L/L");

    private static Held? Largest(Holding holding) =>
        holding.Having(HazardRole.Fermentable).Concat(Extracts(holding))
            .MaxBy(i => i.Grams * (i.Is(HazardRole.Fermentable) ? 1 : OfExtract));

    /// <summary>Of plants and animals; what is made of peat hardly feeds yeast.</summary>
    private static IEnumerable<Held> Extracts(Holding holding) =>
        holding.Having(HazardRole.Unknown).Where(i => i.Is(HazardRole.Organic) && i.Is(HazardRole.Amine) && !i.Is(HazardRole.Fermentable));

    /// <summary>L/L; two moles of gas from each hexose, a sugar of unknown make is taken as glucose.</summary>
    private static double OfSugar(Holding holding)
    {
        var named = (4 * holding.MolesPerLitre("inert:sucrose")) + (2 * holding.MolesPerLitre("inert:glucose"));
        var unknown = holding.Having(HazardRole.Fermentable).Where(i => i.Moles.Count == 0).Sum(i => i.Grams);
        return HazardGate.LitresPerMole * Math.Max(named, 2 * unknown / GlucoseGramsPerMole / holding.Litres);
    }

    private static double OfExtracts(Holding holding) =>
        HazardGate.LitresPerMole * 2 * OfExtract * Extracts(holding).Sum(i => i.Grams) / GlucoseGramsPerMole / holding.Litres;

    /// <summary>Bleach, peroxide, strong acid and strong alkali, told by amount.</summary>
    private static bool KillsYeast(Holding holding, HazardLimits limits)
    {
        var protons = holding.Items.Where(i => i.Roles.Overlaps(StrongAcids)).Sum(i => i.MolesOf(Component.Hydrogen));
        var taken = holding.Items.Sum(i => Math.Max(0, -i.MolesOf(Component.Hydrogen)) + (2 * i.MolesOf(Component.Carbonate))
            + i.MolesOf(Component.Phosphate) + (3 * i.MolesOf(Component.Citrate)) + i.MolesOf(Component.Acetate)
            + i.MolesOf(Component.Lactate) + (2 * i.MolesOf(Component.Malate)));
        var given = holding.Items.Sum(i => Math.Max(0, i.MolesOf(Component.Hydrogen)) + i.MolesOf(Component.Phosphate)
            + (2 * i.MolesOf(Component.Ammonium)));
        var lye = holding.Having(HazardRole.Alkali).Sum(i => Math.Max(0, -i.MolesOf(Component.Hydrogen)));
        return HazardGate.ChlorinePerLitre(holding) >= SelfKeepers.Bleach
            || holding.GramsPerLitre(HazardRole.Peroxide) >= SelfKeepers.Peroxide
            || (protons - taken) / holding.Litres >= limits.Ferment.StrongTo
            || (lye - given) / holding.Litres >= limits.Ferment.StrongTo;
    }
}
