using RecipeLint.Analysis;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.People;

/// <summary>A hazard that the gate sees in a stock or a tank; null where it sees none that is for these rules.</summary>
internal sealed record VesselHazard(Place Whole, string Vessel, Hazard? Hazard) : Verdict
{
    public static VesselHazard None(Place place, string vessel) => new(place, vessel, null)
    {
        Checks = [Check.That("two that must not meet come together", false)],
    };

    /// <summary>True where another hazard is told at the same place: who accepts the one has not accepted the other.</summary>
    private bool SharesItsPlace { get; init; }

    /// <summary>One for each hazard of a vessel.</summary>
    public static IEnumerable<VesselHazard> Of(Place place, string vessel, IReadOnlyList<Hazard> hazards)
    {
        var places = hazards.CountBy(h => PlaceOf(h) ?? place).ToDictionary();
        return hazards.Select(h => Of(place, vessel, h) with { SharesItsPlace = places[PlaceOf(h) ?? place] > 1 });
    }

    private static VesselHazard Of(Place place, string vessel, Hazard hazard) => new(place, vessel, hazard)
    {
        Checks =
        [
            hazard.Unit.Length == 0 ? Check.That("what nobody can name stands beside what reacts", true)
                : new Check("so much that it counts", Rounding.SixDigits(hazard.Value), Relation.AtLeast, hazard.Limit, hazard.Unit),
        ],
    };

    /// <summary>True for peroxide that iron, copper or manganese takes apart, which has a rule of its own in a tank.</summary>
    public static bool IsOfMetals(Hazard hazard) => hazard.Kind == HazardKind.OxygenPressure && hazard.With is { } with
        && Metals.Any(m => with.MolesOf(m) > 0);

    private static string[] Metals { get; } =
        [Component.FerrousIron, Component.FerricIron, Component.Copper, Component.Manganese];

    /// <summary>What is together, what comes of it and how much; how the cause is taken away; what to do with a mixture.</summary>
    public Finding Describe(RuleContext context)
    {
        var hazard = Hazard!;
        var with = hazard.With is { } other && other != hazard.From ? $" with {Say.Called(other.Name)}" : "";
        var place = PlaceOf(hazard) ?? Whole;
        var message = $"{Say.Capital(Say.Called(hazard.From?.Name ?? hazard.Text.Name))}{with} in '{Vessel}': this {hazard.Text.Happens}"
            + $"{Figure(hazard)}. "
            + $"{hazard.Text.Instead} {Standing(hazard)}: safety data sheets and local codes decide.";
        var idPath = IdPath.Of(context.Facts.Workspace, place) + (SharesItsPlace ? $"#{hazard.Kind}" : "");
        return context.Find(place, idPath, message, Harm.Person, OddsOf(hazard)) with
        {
            Measured = hazard.Unit.Length == 0 ? null : new Measured(hazard.What, hazard.Value, hazard.Limit, hazard.Unit),
            Values = hazard.Unit.Length == 0 ? []
                : [new NamedValue(hazard.What, hazard.Value, hazard.Unit), new NamedValue("limit", hazard.Limit, hazard.Unit)],
            Related = hazard.From?.Place is { } from && from != place ? [new RelatedPlace(from, "what it meets")] : [],
        };
    }

    private static Place? PlaceOf(Hazard hazard) => hazard.With?.Place ?? hazard.From?.Place;

    public Working Work()
    {
        var work = new WorkingBuilder($"what comes together in '{Vessel}'");
        if (Hazard is null || Hazard.Unit.Length == 0)
        {
            return work.Statements(this).Done();
        }

        var found = work.Given(Hazard.What, Hazard.Value, Hazard.Unit, "amounts and strengths of the file");
        return work.Check(Checks[0], found, work.Given("limit", Hazard.Limit, Hazard.Unit, "hazard gate")).Done(found);
    }

    /// <summary>
    /// What no command mixes, splits or strengthens is an error here too, and what ferments twice past what a bottle holds; what only
    /// builds up in a bottle that is kept is possible.
    /// </summary>
    private static Odds OddsOf(Hazard hazard) => hazard.Kind switch
    {
        HazardKind.OxygenPressure when hazard.With is null => Odds.Possible,

        // It is slow, and a loose cap lets it off.
        HazardKind.NitrousAcid => Odds.Possible,

        // Lye as a liquid has given most of its heat off already.
        HazardKind.Heat when hazard is { IsWhereTheyMeet: true, Grade: < HazardGrade.Grave } => Odds.Possible,
        HazardKind.FermentationPressure => hazard.Value >= 2 * hazard.Limit ? Odds.Certain : Odds.Possible,
        _ => Odds.Certain,
    };

    /// <summary>What to do with a vessel that stands there already.</summary>
    private static string Standing(Hazard hazard) => hazard.Kind switch
    {
        HazardKind.Heat => "Wear goggles, gloves and apron, and stop pouring where it gets hot",
        HazardKind.FermentationPressure => "A bottle that stands already is not shaken, warmed or opened where it bulges",
        HazardKind.OxygenPressure when hazard.With is null => "Keep it cool under a cap with a vent, and shake or open none that bulges",
        HazardKind.NitrousAcid => "A bottle that stands already is kept cool under a loose cap out of doors, and nobody leans over it",
        HazardKind.UnknownContents => "Until then close nothing tightly and warm nothing",
        _ => "Where they have met already do not close the vessel, pour nothing into it and keep away",
    };

    private static string Figure(Hazard hazard) => hazard.Unit switch
    {
        "" => "",
        "L/L" => $"; up to {Say.Number(hazard.Value)} L of {hazard.What} can come of a litre",
        "°C" => $", up to {Say.Number(Math.Min(hazard.Value, 100))} °C",
        _ => $" ({Say.Number(hazard.Value)} {hazard.Unit} {hazard.What}"
            + (hazard.Share is { } share ? $", {Say.Percent(share)} of all nitrite" : "")
            + $", counted from {Say.Number(hazard.Limit)} {hazard.Unit})",
    };
}
