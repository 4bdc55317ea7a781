using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Plant;

/// <summary>A published limit for raw water.</summary>
/// <param name="Key">Key of the analysis, or "EC" or "hardness".</param>
/// <param name="Value">In <paramref name="Unit"/>.</param>
/// <param name="Recalled">True for a figure that was not read again.</param>
/// <param name="Source">Who states it, to stand behind "the limit of".</param>
/// <param name="Harm">What so much of it does; a clause without its subject.</param>
/// <param name="Remedy">What to do; a sentence.</param>
internal sealed record WaterLimit(
    string Key, string Name, double Value, string Unit, Level Level, bool Recalled, string Source, string Harm, string Remedy);

/// <summary>A figure of a water against a limit.</summary>
/// <param name="Found">Highest value of the year, in the unit of the limit.</param>
internal sealed record WaterBreach(WaterLimit Limit, double Found, Place Place);

/// <summary>
/// Limits for the water a feed is made of. FAO prints sodium and chloride in meq/L; a copy that prints the same figures as mg/L is wrong.
/// They hold for raw water only: copper, manganese, boron and zinc of a finished feed may lie above them on purpose. Nitrate and
/// bicarbonate are left to the nutrient ranges and to the alkalinity of the feed.
/// </summary>
internal static class WaterLimits
{
    /// <summary>
    /// R. S. Ayers and D. W. Westcot, Water quality for agriculture, FAO Irrigation and Drainage Paper 29 rev. 1, 1985: table 1 and the
    /// table of trace elements.
    /// </summary>
    private const string Fao = "FAO paper 29";

    /// <summary>Electrical conductivity and pH guide for hydroponics, table 1.</summary>
    private const string Oklahoma = "Oklahoma State University";

    /// <summary>Common practice, recalled.</summary>
    private const string Greenhouse = "greenhouse extension guidance";

    private const string Blend = "Blend it with rain or reverse-osmosis water.";

    private static readonly Dictionary<string, string> Poisons = new(StringComparer.Ordinal)
    {
        ["As"] = "arsenic",
        ["Cd"] = "cadmium",
        ["Cr"] = "chromium",
        ["Hg"] = "mercury",
        ["Ni"] = "nickel",
        ["Pb"] = "lead",
        ["Se"] = "selenium",
    };

    /// <summary>What piles up in the crop and in who eats it.</summary>
    private static WaterLimit Poison(string key, double milligrams, string source, bool recalled) => new(
        key, Poisons[key], milligrams, "mg/L", Level.Warning, recalled, source, "piles up in the crop and in who eats it",
        "Use another water for what is eaten, drink none of it, and ask the laboratory or the water authority, who decide by local rules.");

    /// <summary>For each key the graver limit first.</summary>
    public static IReadOnlyList<WaterLimit> All { get; } =
    [
        new("EC", "conductivity", 3.0, "mS/cm", Level.Warning, false, Fao, "leaves no room for nutrients", Blend),
        new("EC", "conductivity", 0.7, "mS/cm", Level.Note, false, Fao, "takes up room that nutrients need", Blend),
        new("Na", "sodium", 3.0, "meq/L", Level.Warning, false, Fao, "scorches leaves and piles up in a solution that is used again",
            Blend),
        new("Na", "sodium", 50, "mg/L", Level.Note, false, Oklahoma, "piles up in a solution that is used again", Blend),
        new("Cl", "chloride", 10, "meq/L", Level.Warning, false, Fao, "scorches leaf edges and keeps nitrate out", Blend),
        new("Cl", "chloride", 4, "meq/L", Level.Note, false, Fao, "piles up in a solution that is used again", Blend),
        new("B", "boron", 3.0, "mg/L", Level.Warning, false, Fao, "is harmful to most crops before any is added",
            "Use another water; boron passes most filters."),
        new("B", "boron", 0.7, "mg/L", Level.Note, false, Fao, "is near what sensitive crops bear",
            "Leave boron out of the trace stock, and count what the water brings."),
        new("F", "fluoride", 1.0, "mg/L", Level.Warning, false, Fao, "marks the leaf tips of foliage plants and lilies", Blend),
        new("Cu", "copper", 0.2, "mg/L", Level.Warning, false, Fao, "is toxic to a number of plants and points to corroding pipes",
            "Look for copper pipes or fittings."),
        new("Zn", "zinc", 2.0, "mg/L", Level.Warning, true, Fao, "is more than any crop is fed and points to galvanised gutters or "
            + "pipes", "Look for galvanised gutters, tanks or pipes."),
        new("Fe", "iron", 5.0, "mg/L", Level.Warning, true, Fao, "drops as rust and takes phosphate with it",
            "Aerate and filter it before use."),
        new("Fe", "iron", 0.5, "mg/L", Level.Note, true, Greenhouse, "clogs drippers with rust, and feeds no plant",
            "Aerate and filter it before use; do not count it as a nutrient."),
        new("Mn", "manganese", 1.0, "mg/L", Level.Note, true, Greenhouse, "clogs drippers with black slime",
            "Aerate and filter it before use, and lower the manganese of the trace stock."),
        .. ContaminantLimits.InWater.Where(l => Poisons.ContainsKey(l.Element))
            .Select(l => Poison(l.Element, l.Milligrams, Fao, l.Recalled)),
        Poison("Hg", 0.001, "the drinking water directive (EU) 2020/2184", true),
        new("hardness", "hardness", 150, "mg/L as CaCO3", Level.Note, false, "Greenhouse Management, chapter on irrigation water,",
            "scales heaters and drippers and clouds stocks made with it", "Count its calcium and magnesium in the recipe, and make "
                + "stocks with soft water."),
    ];

    /// <summary>The gravest limit of each key that the water passes, judged by the highest value of the year.</summary>
    public static IEnumerable<WaterBreach> Breaches(WaterDocument water) => Nearest(water).Where(b => b.Found > b.Limit.Value);

    /// <summary>For each key the gravest limit that the water passes, else the mildest.</summary>
    public static IEnumerable<WaterBreach> Nearest(WaterDocument water)
    {
        foreach (var group in All.GroupBy(l => l.Key))
        {
            WaterBreach? nearest = null;
            foreach (var limit in group)
            {
                if (Value(water, limit) is var (found, place))
                {
                    nearest = new WaterBreach(limit, found, place);
                    if (found > limit.Value)
                    {
                        break;
                    }
                }
            }

            if (nearest is not null)
            {
                yield return nearest;
            }
        }
    }

    private static (double Found, Place Place)? Value(WaterDocument water, WaterLimit limit)
    {
        switch (limit.Key)
        {
            case "EC":
                return water.Ec is { } ec ? (Rounding.SixDigits(ec.Value.High.MillisiemensPerCentimetre), ec.Place.Key) : null;
            case "hardness":
                return water.Hardness is { } hardness ? (Rounding.SixDigits(hardness.Value.High.MilliequivalentsPerLitre
                    * FeedAlkalinity.CaCO3MilligramsPerMilliequivalent), hardness.Place.Key) : null;
            default:
                // What fills a gap of the analysis is an estimate and no measured load.
                if (water.Values.FirstOrDefault(v => v.Key.Value == limit.Key) is not { } value || IsEstimated(water, value))
                {
                    return null;
                }

                var millimoles = value.Concentration.High.MillimolesPerLitre;
                return (Rounding.SixDigits(limit.Unit == "meq/L" ? millimoles : millimoles * AtomicWeights.Of(new Element(limit.Key))),
                    value.Key.Place.Key);
        }
    }

    /// <summary>An estimated ion stands at the place of the figure it was estimated from.</summary>
    private static bool IsEstimated(WaterDocument water, WaterValue value) =>
        value.Key.Place == water.Ec?.Place || value.Key.Place == water.Hardness?.Place || value.Key.Place == water.Alkalinity?.Place;
}
