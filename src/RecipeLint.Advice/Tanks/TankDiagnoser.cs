using RecipeLint.Advice.Diagnosis;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Observations;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Advice.Tanks;

/// <summary>A cause with where its solid forms and what of it the source water brings.</summary>
/// <param name="Moment">Where the engine sees its solid nearest to falling out; null without one.</param>
/// <param name="WithPureWater">g/L that would still fall out there with pure water; null where that says nothing.</param>
/// <param name="Acid">What acid does to it there; null where that says nothing.</param>
public sealed record RankedTankCause(RankedCause Ranked, TankMoment? Moment, double? WithPureWater, TankAcid? Acid);

/// <summary>Causes of what was seen in tank, lines or drippers, most probable first.</summary>
public sealed record TankDiagnosis(
    Observation Observation, TankChemistry Chemistry, IReadOnlyList<RankedTankCause> Causes, HazardReport Hazards)
{
    private const int MostListed = 4, LeastListed = 2;

    private const double ListedFrom = 0.05;

    /// <summary>The causes that an answer lists.</summary>
    public static IEnumerable<RankedCause> Listed(IEnumerable<RankedCause> causes) => causes.Where(c => c.HasReason)
        .Where((c, i) => i < LeastListed || (i < MostListed && c.Share >= ListedFrom));
}

/// <summary>Why a tank, a line or a dripper looks as it does.</summary>
public static class TankDiagnoser
{
    /// <summary>
    /// What a trait says; little where the chemistry has spoken of the same thing already, or where every feed has it.
    /// </summary>
    private const double HasTrait = 1.1, HasTraitBesides = 0.4, LacksTraits = -1.2;

    /// <summary>The same input always gives the same order.</summary>
    public static TankDiagnosis Of(RecipeFacts recipe, Observation observation, Temperature? seenAt = null)
    {
        observation = PartsAreDosed(observation);
        var chemistry = TankChemistry.Of(recipe, seenAt);
        var traits = new TankTraits(recipe);
        var fizzed = Diagnoser.HasFizzed(observation);
        var found = TankData.Causes
            .Select(c => (Cause: c, Found: chemistry.Of(c)))
            .ToDictionary(c => c.Cause.Cause.Id, c => (c.Cause, c.Found.Solid, c.Found.Moment));
        var ranked = CauseRanking.OfOwnSigns(
            [.. found.Values.Select(f => new CauseRanking.Entry(
                f.Cause.Cause,
                f.Solid,
                Diagnoser.SilicateWentIn(f.Cause.Cause, observation) is { } late
                    ? [late]
                    : [.. Reasons(f.Cause.Cause, f.Solid, f.Moment, traits, fizzed)]))],
            observation);
        var hazards = BottleHazards.WithBleachOfTheLines(BottleHazards.Of(recipe, observation), recipe);
        return new TankDiagnosis(
            observation,
            chemistry,
            [
                .. ranked.Select(r => new RankedTankCause(
                    r, found[r.Cause.Id].Moment,
                    r.Solid.Standing == Standing.Forms && found[r.Cause.Id].Moment is { } moment
                        ? chemistry.WithPureWater(found[r.Cause.Id].Cause, moment)
                        : null,
                    TankAcid.Of(chemistry, r, found[r.Cause.Id].Moment))),
            ],
            observation.TellsNoCause ? hazards : BottleHazards.With(hazards, [.. TankDiagnosis.Listed(ranked)]));
    }

    /// <summary>A part that goes into a bottle meets another; into a tank it is dosed.</summary>
    private static Observation PartsAreDosed(Observation told) => told.Parts.Count == 0 || told.Of("on-joining") != true ? told
        : (told with { Signs = [.. told.Signs.Where(s => s.Sign.Id != "on-joining")] })
            .With([new Seen(Vocabulary.Sign("on-dosing"), true)]);

    /// <summary>Where it forms, for the end of a sentence.</summary>
    public static string Where(TankMoment moment) => moment switch
    {
        TankMoment.Water => "of the source water alone, in air",
        TankMoment.Warm => "of the source water in a pipe that lies in the sun",
        TankMoment.Poured => "as soon as the tank is poured together",
        TankMoment.Air => "in the tank at rest with the air",
        TankMoment.Adjusted => "once the pH of the tank is set",
        TankMoment.Meeting => "where the concentrates meet undiluted",
        _ => "where the feed dries",
    };

    private static IEnumerable<Evidence> Reasons(Cause cause, SolidVerdict solid, TankMoment? moment, TankTraits traits, bool fizzed)
    {
        var missing = cause.Needs.Where(n => traits.Of(n).Holds == false).ToList();
        if (missing.Count > 0)
        {
            yield return new Evidence(traits.Of(missing[0]).Because, Diagnoser.Lacking(missing, false, fizzed));
            yield break;
        }

        if (cause.NeedsAnyOf.Count > 0 && !cause.NeedsAnyOf.Any(n => traits.Of(n).Holds != false))
        {
            yield return new Evidence(traits.Of(cause.NeedsAnyOf[0]).Because, Diagnoser.MissingNeed);
            yield break;
        }

        if (fizzed && cause.Needs.Contains(Component.Carbonate))
        {
            // The water of that day need not be the one of the recipe.
            yield return new Evidence("", Diagnoser.ProvedByFizz);
        }

        var computed = solid.Standing != Standing.Unknown;
        if (computed)
        {
            yield return Diagnoser.SolidReason(solid, moment is { } there ? Where(there) : "", Everyday(moment));
        }

        var known = cause.MadeLikelyBy.Select(traits.Of).ToList();
        if (known.Find(t => t.Holds == true) is { Holds: true } holds)
        {
            var besides = computed || cause.MadeLikelyBy.All(TankTraits.IsOfEveryFeed);
            yield return new Evidence(holds.Because, besides ? HasTraitBesides : HasTrait)
            {
                IsOfEveryFeed = cause.MadeLikelyBy.Where(t => traits.Of(t).Holds == true).All(TankTraits.IsOfEveryFeed),
            };
        }
        else if (known.Count > 0 && known.TrueForAll(t => t.Holds == false))
        {
            yield return new Evidence(known[0].Because, LacksTraits);
        }
    }

    /// <summary>
    /// Any two parts cloud undiluted, any hard water scales, and any feed leaves something where it dries: that says less than a deposit in
    /// the tank.
    /// </summary>
    private static double Everyday(TankMoment? moment) => moment switch
    {
        TankMoment.Meeting => -1.8,
        TankMoment.Water or TankMoment.Warm => -0.8,
        TankMoment.Drying => -1.2,
        _ => 0,
    };
}
