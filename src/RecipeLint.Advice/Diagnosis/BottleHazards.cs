using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Observations;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Advice.Diagnosis;

/// <summary>What a bottle that somebody stands before can do to them, and which tests and rescues that rules out.</summary>
public static class BottleHazards
{
    /// <summary>"Causes severe skin burns and eye damage" of the CLP regulation.</summary>
    private const string BurnsSkin = "H314";

    /// <summary>What bursts bottles, and what of the contents does it.</summary>
    private static readonly Dictionary<HazardKind, HazardRole> Pressures = new()
    {
        [HazardKind.FermentationPressure] = HazardRole.Organic,
        [HazardKind.OxygenPressure] = HazardRole.Peroxide,
        [HazardKind.CarbonDioxidePressure] = HazardRole.Carbonate,
    };

    /// <summary>From the recipe, as it stands and on the way there, and from what was seen, whatever the recipe says.</summary>
    public static HazardReport Of(StockFacts stock, Observation observation) => Of(HazardGate.Of(stock), observation);

    /// <summary>The same for the tank of a recipe.</summary>
    public static HazardReport Of(RecipeFacts recipe, Observation observation) => Of(HazardGate.Of(recipe), observation);

    /// <summary>The same for what a tank holds.</summary>
    internal static HazardReport Of(HazardReport recipe, Observation observation) =>
        recipe.Suspecting(NoticedHazards.Of(observation, recipe.Holding));

    /// <summary>
    /// The same with what a listed cause can give off or is itself: what is listed and nearly sure counts as noticed, any other holds for
    /// advice.
    /// </summary>
    internal static HazardReport With(HazardReport hazards, IReadOnlyList<RankedCause> listed) => WithPressure(
        listed.SelectMany(c => c.Cause.Dangers.Select(d => (Danger: d, c.Likeliness)))
            .Aggregate(hazards, (now, d) => now.Allowing(
                d.Danger.Kind,
                Held.Of(Named(d.Danger.From), now.Holding.Litres),
                d.Likeliness == Likeliness.VeryLikely ? HazardGrade.Suspected : HazardGrade.Possible)),
        listed);

    /// <summary>
    /// Pressure that is listed first is as good as told; listed further down it is possible, and nobody shakes, closes or smells at it.
    /// </summary>
    private static HazardReport WithPressure(HazardReport hazards, IReadOnlyList<RankedCause> listed)
    {
        foreach (var cause in listed.Where(c => c.Likeliness != Likeliness.Unlikely))
        {
            if (cause.Cause.IsHazard is not { } kind || !Pressures.TryGetValue(kind, out var role))
            {
                continue;
            }

            if (cause == listed[0])
            {
                hazards = hazards.Suspecting([kind]);
            }
            else if (hazards.Find(kind) is null && hazards.Holding.First(role) is { } from)
            {
                hazards = hazards with
                {
                    Hazards = HazardGate.Gravest(hazards.Hazards.Append(new Hazard(kind, HazardGrade.Possible, from, null, "", 0, 0, ""))),
                };
            }
        }

        return hazards;
    }

    /// <summary>The same for a bottle that burns eyes and skin by its pH, or by what its labels say where no pH is computed.</summary>
    internal static HazardReport WithCorrosion(HazardReport hazards, StockFacts stock, SolutionState state)
    {
        var limits = hazards.Limits;
        var strong = state.IsSolved
            ? state.Ph >= limits.Corrosive.PhFrom ? hazards.Holding.First(HazardRole.Alkali)
                : state.Ph <= limits.Corrosive.PhTo ? hazards.Holding.First(HazardRole.Acid, HazardRole.AcidSalt) : null
            : stock.Additions.Where(a => a.Substance.Hazards?.Statements.Contains(BurnsSkin) == true).Select(Held.Of).FirstOrDefault();
        if (strong is null)
        {
            return hazards;
        }

        // A rescue of an acid stock can be warmed with care; lye, and acid that burns at once, nobody warms or drips through a filter.
        var kind = strong.Is(HazardRole.Alkali) || !state.IsSolved || state.Ph <= limits.Corrosive.AtOncePhTo
            ? HazardKind.Caustic
            : HazardKind.Splashed;
        return hazards.Find(kind) is not null ? hazards : hazards with
        {
            Hazards = HazardGate.Gravest(hazards.Hazards.Append(new Hazard(kind, HazardGrade.Possible, strong, null, "", 0, 0, ""))),
        };
    }

    /// <summary>Bleach that a recipe doses stands in a line at the strength of its stock, whatever the tank dilutes it to.</summary>
    internal static HazardReport WithBleachOfTheLines(HazardReport hazards, RecipeFacts recipe) => recipe.Doses
        .SelectMany(d => d.Stock is { } stock ? stock.Additions.Select(Held.Of) : d.Direct is { } direct ? [Held.Of(direct)] : [])
        .Where(h => h.Is(HazardRole.Hypochlorite)).Take(1)
        .Aggregate(hazards, (now, bleach) => now.Allowing(
            HazardKind.Chlorine, Held.Of(bleach.Substance, Holding.TrialGramsPerLitre * now.Holding.Litres), HazardGrade.Possible));

    /// <summary>
    /// Why nothing is looked for, compared or mended in what stands there, whatever else was told or measured; null where that may go on.
    /// </summary>
    public static Refusal? Stops(HazardReport hazards) =>
        hazards.Forbids(VesselAction.Order) ?? (hazards.ForLeaving is { } leave ? new Refusal(leave, null, null, false) : null);

    private static Substance Named(string name) => new()
    {
        Id = Slug.Of(name),
        Name = name,
        Kind = SubstanceKind.Product,
        Content = ElementContent.Empty,
    };

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
            "cap" => hazards.Forbids(VesselAction.Cap),
            not "smell" when hazards.Forbids(VesselAction.Open) is { } closed => closed,
            _ when act.StartsWith(Reagent, StringComparison.Ordinal) => hazards.Forbids(
                SubstanceCatalogue.BuiltIn.ById(act[Reagent.Length..])
                    ?? throw new InvalidOperationException($"There is no reagent '{act}'."), pinch: pinch),
            "flame" => hazards.Forbids(VesselAction.Heat) ?? Deflagrates(hazards),
            "heat" => hazards.Forbids(VesselAction.Heat),
            "shake" => hazards.Forbids(VesselAction.Shake),

            // It is poured in and stirred.
            "water" => hazards.Hazards.FirstOrDefault(h => h.ForbidsPutting) is { } there ? new Refusal(there, null, null, false)
                : hazards.Forbids(VesselAction.Shake),
            "filter" => hazards.Forbids(VesselAction.Filter),
            "smell" => hazards.Forbids(VesselAction.Smell),
            "wipe" => hazards.Forbids(VesselAction.Wipe),
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
}
