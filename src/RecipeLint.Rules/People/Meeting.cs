using RecipeLint.Analysis.Hazards;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.People;

/// <summary>How the strength of a reagent follows where it meets its partner; the gate has judged it.</summary>
internal static class Meeting
{
    /// <param name="name">The reagent, for a sentence.</param>
    internal static Term Work(WorkingBuilder work, StrongMeeting met, string name)
    {
        switch (met.Point)
        {
            case MeetingPoint.Stream:
                work.Given("organic matter in the vessel before", met.PartnerPercent, "%", "amounts in the file");
                var pure = work.Given($"{name} in what is poured", met.PureGrams, "g", "file and strength");
                return work.Result(
                    "strength where the stream enters",
                    "100 × pure / poured",
                    100 * pure / work.Given("poured", met.Grams, "g", "file"),
                    "%");
            case MeetingPoint.Standing:
                return Whole(work, met, $"{name} in the vessel before");
            default:
                return Whole(work, met, $"{name} in the vessel");
        }
    }

    private static Term Whole(WorkingBuilder work, StrongMeeting met, string what)
    {
        var pure = work.Given($"{what}, pure", met.PureGrams, "g", "file and strength");
        return work.Result(
            "its strength there",
            "100 × pure / everything in the vessel",
            100 * pure / work.Given("everything in the vessel", met.Grams, "g", "file"),
            "%");
    }
}
