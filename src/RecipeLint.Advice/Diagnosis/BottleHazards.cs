using RecipeLint.Analysis;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Advice.Diagnosis;

/// <summary>What a bottle that somebody stands before can do to them, and which tests and rescues that rules out.</summary>
public static class BottleHazards
{
    /// <summary>What each kind of gas needs in the recipe before pressure is put down to it.</summary>
    private static readonly (HazardKind Kind, HazardRole Role)[] Gases =
    [
        (HazardKind.OxygenPressure, HazardRole.Peroxide), (HazardKind.CarbonDioxidePressure, HazardRole.Carbonate),
        (HazardKind.FermentationPressure, HazardRole.Organic),
    ];

    /// <summary>From the recipe, as it stands and on the way there, and from what was seen, whatever the recipe says.</summary>
    public static HazardReport Of(StockFacts stock, Observation observation) => Of(HazardGate.Of(stock), observation);

    /// <summary>The same for what a tank holds.</summary>
    internal static HazardReport Of(HazardReport recipe, Observation observation)
    {
        var suspected = Suspected(recipe.Holding, [.. observation.Signs.Where(s => s.Present).Select(s => s.Sign.Id)]);
        return recipe.Suspecting(suspected);
    }

    /// <summary>Why a question must not be put to this bottle; null when it may.</summary>
    public static Refusal? Refuses(Question question, HazardReport hazards) => Refuses(question.Act, hazards, pinch: true);

    /// <summary>Why a text must not be printed that would have somebody do these things; null when it may.</summary>
    /// <param name="uses">As in <see cref="Cause.RescueUses"/>.</param>
    public static Refusal? Refuses(IEnumerable<string> uses, HazardReport hazards) =>
        uses.SelectMany(Acts).Select(a => Refuses(a, hazards, pinch: false)).FirstOrDefault(r => r is not null);

    private static Refusal? Refuses(string? act, HazardReport hazards, bool pinch)
    {
        const string Reagent = "reagent:";
        if (act is null)
        {
            return null;
        }

        if (hazards.ForLeaving is { } leave)
        {
            return new Refusal(leave, null, null, false);
        }

        return act switch
        {
            not "smell" when hazards.Forbids(VesselAction.Open) is { } closed => closed,
            _ when act.StartsWith(Reagent, StringComparison.Ordinal) => hazards.Forbids(
                SubstanceCatalogue.BuiltIn.ById(act[Reagent.Length..])
                    ?? throw new InvalidOperationException($"There is no reagent '{act}'."), pinch: pinch),
            "flame" => hazards.Forbids(VesselAction.Heat) ?? Deflagrates(hazards),
            "heat" => hazards.Forbids(VesselAction.Heat),
            "shake" => hazards.Forbids(VesselAction.Shake),
            "filter" => hazards.Forbids(VesselAction.Filter),
            "smell" => hazards.Forbids(VesselAction.Smell),
            "open" => null,
            _ => throw new InvalidOperationException($"There is no act '{act}'."),
        };
    }

    /// <summary>Nitrate dried together with what burns sparks off a spoon.</summary>
    private static Refusal? Deflagrates(HazardReport hazards)
    {
        var fuel = hazards.Holding.First(HazardRole.Fermentable)
            ?? hazards.Holding.Having(HazardRole.Organic).FirstOrDefault(i => i.Is(HazardRole.Acid));
        return hazards.Holding.First(HazardRole.OxidisingSalt) is { } oxidiser && fuel is not null
            ? new Refusal(new Hazard(HazardKind.Fire, HazardGrade.Present, oxidiser, fuel, "", 0, 0, ""), VesselAction.Heat, null, false)
            : null;
    }

    /// <summary>What a grower would reach for; all of them have to be harmless.</summary>
    private static IEnumerable<string> Acts(string use) => use switch
    {
        "acid" => ["reagent:vinegar-5", "reagent:nitric-38", "reagent:citric-acid-anhydrous"],
        "alkali" => ["reagent:koh-10", "reagent:potassium-bicarbonate"],
        "edta" => ["reagent:disodium-edta-2h2o"],
        _ => [use],
    };

    private static IEnumerable<HazardKind> Suspected(Holding holding, HashSet<string> signs)
    {
        if (signs.Contains("smell-chlorine"))
        {
            yield return HazardKind.Chlorine;
        }
        else if (signs.Contains("eyes-water") && !signs.Contains("smell-ammonia"))
        {
            // What stings without a name: the worst that the recipe allows, and chlorine where it allows none.
            yield return HazardKind.Chlorine;
        }

        if (signs.Contains("brown-fumes") || signs.Contains("fumes"))
        {
            yield return HazardKind.NitrogenOxides;
        }

        if (signs.Contains("smell-rotten-eggs"))
        {
            yield return HazardKind.HydrogenSulfide;
        }

        if (signs.Contains("smell-ammonia"))
        {
            yield return HazardKind.Ammonia;
        }

        if (signs.Contains("hot"))
        {
            yield return holding.First(HazardRole.Peroxide) is null ? HazardKind.Heat : HazardKind.OxygenPressure;
        }

        if (signs.Contains("pressure"))
        {
            var gases = Gases.Where(g => holding.First(g.Role) is not null).Select(g => g.Kind).ToList();
            foreach (var gas in gases.Count > 0 ? gases : [HazardKind.FermentationPressure])
            {
                yield return gas;
            }
        }
    }
}
