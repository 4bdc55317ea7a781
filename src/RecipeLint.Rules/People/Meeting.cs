using RecipeLint.Analysis.Mixing;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.People;

/// <summary>Where an oxidiser meets what it can oxidise.</summary>
internal enum MeetingPoint
{
    /// <summary>The oxidiser is poured, and meets undiluted what stands in the vessel.</summary>
    Stream,

    /// <summary>The partner is poured into the oxidiser as it stands in the vessel.</summary>
    Standing,

    /// <summary>Both are mixed through.</summary>
    Mixed,
}

/// <summary>An oxidiser and its partner in one vessel at one step.</summary>
/// <param name="Strength">% of the oxidiser where they meet.</param>
internal sealed record Meeting(MixingStep Moment, MeetingPoint Point, double Strength)
{
    /// <summary>How the strength follows.</summary>
    /// <param name="name">The oxidiser, for a sentence.</param>
    internal Term Work(WorkingBuilder work, Func<Substance, bool> oxidises, Func<Substance, bool> burns, string name)
    {
        switch (Point)
        {
            case MeetingPoint.Stream:
                var poured = Moment.Added[^1];
                work.Given("organic matter in the vessel before", 100 * Reactants.Share(Moment.Before, burns), "%", "amounts in the file");
                var pure = work.Given($"{name} in what is poured", VesselContents.PureGrams(poured), "g", "file and strength");
                return work.Result("strength where the stream enters", "100 × pure / poured", 100 * pure / work.Given("poured", poured.Mass.Grams, "g", "file"), "%");
            case MeetingPoint.Standing:
                return Whole(work, Moment.Before, oxidises, $"{name} in the vessel before");
            default:
                return Whole(work, Moment.After, oxidises, $"{name} in the vessel");
        }
    }

    private static Term Whole(WorkingBuilder work, VesselContents contents, Func<Substance, bool> fits, string what)
    {
        var pure = work.Given($"{what}, pure", contents.Additions.Where(a => fits(a.Substance)).Sum(VesselContents.PureGrams), "g", "file and strength");
        return work.Result("its strength there", "100 × pure / everything in the vessel", 100 * pure / work.Given("everything in the vessel", contents.Grams, "g", "file"), "%");
    }
}
