using System.Globalization;
using RecipeLint.Advice.Diagnosis;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Advice.Tanks;

/// <summary>What makes a cause in tank or lines likely besides equilibrium, with the part of the source water in it.</summary>
internal sealed class TankTraits(RecipeFacts recipe)
{
    /// <summary>
    /// mg/L from which a water clogs drippers: iron and manganese as in the limits for irrigation water, recalled; hardness as CaCO3.
    /// </summary>
    private const double IronFrom = 0.3, ManganeseFrom = 0.1, AlkalinityFrom = 1;

    /// <summary>meq/L from which strong acid that is poured in fizzes to be seen (common practice, no source).</summary>
    private const double FizzFrom = 0.3;

    private readonly List<AdditionFacts> _brought =
        [.. recipe.Doses.SelectMany(d => d.Stock is { } stock ? stock.Additions : d.Direct is { } direct ? [direct] : [])];

    /// <summary>True for what holds of any feed, and so tells none from another.</summary>
    public static bool IsOfEveryFeed(string trait) => trait is "salty" or "feeds-algae";

    /// <exception cref="InvalidOperationException">There is no such trait.</exception>
    public Trait Of(string trait) => trait switch
    {
        _ when trait.Contains('+', StringComparison.Ordinal) || trait.EndsWith('-') || char.IsDigit(trait[^1]) =>
            recipe.ComponentMoles.GetValueOrDefault(trait) > 0
            ? new Trait(true, $"the feed holds {IonWords.Of(trait)}")
            : new Trait(false, $"neither feed nor water brings {IonWords.Of(trait)}"),
        "hard-water" => InWater("alkalinity", Alkalinity, AlkalinityFrom, "meq/L"),
        "bicarbonate" => Bicarbonate(),
        "iron-water" => InWater("iron", Milligrams("Fe"), IronFrom, "mg/L"),
        "manganese-water" => InWater("manganese", Milligrams("Mn"), ManganeseFrom, "mg/L"),
        "well" => recipe.Water is null or { Water: null } ? new Trait(false, "its water is pure") : new Trait(null, ""),
        "salty" => new Trait(true, "any feed leaves its salts where it dries"),
        "feeds" => Any(a => a.Substance.FeedsMicrobes
            || a.Substance.Kind is SubstanceKind.Chelate or SubstanceKind.ChelatingAgent or SubstanceKind.Organic,
            "feeds microbes", "nothing in the feed but its nutrients keeps microbes alive"),
        "feeds-algae" => new Trait(true, "nitrogen and phosphate feed algae wherever light falls in"),
        "sulfate" => recipe.ComponentMoles.GetValueOrDefault(Component.Sulfate) > 0
            ? new Trait(
                true, "the feed holds sulfate, which microbes without air turn to sulfide") : new Trait(false, "the feed holds no sulfate"),
        "peroxide" => Any(a => HazardRoles.Of(a.Substance).Contains(HazardRole.Peroxide),
            "gives off oxygen", "the recipe holds no peroxide"),
        "extract" => Any(a => a.Substance.Extract is not null, "is an extract", "the recipe holds no extract"),
        "dry-doses" => recipe.Doses.Any(d => d.Direct is { Substance.Form: PhysicalForm.Solid })
            ? new Trait(true, "salts go into the tank dry") : new Trait(false, "nothing goes into the tank dry"),
        _ => throw new InvalidOperationException($"There is no trait '{trait}' of a tank."),
    };

    private double Milligrams(string element) => recipe.Water is { } water && water.Volume.Litres > 0
        ? 1000 * water.Elements[new Element(element)].Grams / water.Volume.Litres : 0;

    private double Alkalinity => recipe.Water is { } water && water.Volume.Litres > 0
        ? 1000 * water.ComponentMoles.GetValueOrDefault(Component.Carbonate) / water.Volume.Litres : 0;

    /// <summary>
    /// Each mole of carbonate in the tank, from the water and from what is dosed, gives a mole of gas: 44.009 g and, as an ideal gas at
    /// 20 °C and 1 atm, 24.06 L.
    /// </summary>
    private Trait Bicarbonate()
    {
        const double GramsPerMole = 44.009, LitresPerMole = 24.06;
        var millimoles = recipe.FinalVolume.Litres > 0
            ? 1000 * recipe.ComponentMoles.GetValueOrDefault(Component.Carbonate) / recipe.FinalVolume.Litres : 0;
        var figure = string.Create(
            CultureInfo.InvariantCulture,
            $"{millimoles:0.##} meq/L alkalinity, which acid turns into up to {millimoles * GramsPerMole:0} mg or "
                + $"{millimoles * LitresPerMole:0} mL of carbon dioxide in each litre");
        return millimoles >= FizzFrom
            ? new Trait(true, $"the tank holds {figure}")
            : new Trait(false, millimoles > 0 ? $"the tank holds only {figure}" : "neither water nor feed brings bicarbonate");
    }

    private static Trait InWater(string what, double found, double from, string unit)
    {
        var figure = string.Create(CultureInfo.InvariantCulture, $"{found:0.##} {unit} {what}");
        return found >= from
            ? new Trait(true, $"the source water brings {figure}")
            : new Trait(false, found > 0 ? $"the source water brings only {figure}" : $"the source water brings no {what}");
    }

    private Trait Any(Func<AdditionFacts, bool> fits, string does, string none) =>
        _brought.FirstOrDefault(fits) is { } found
        ? new Trait(true, $"{found.Substance.Name} {does}") : new Trait(false, none);
}
