using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Observations;

namespace RecipeLint.Advice.Diagnosis;

/// <summary>How probable a cause is, in words.</summary>
public enum Likeliness
{
    VeryLikely,
    Likely,
    Possible,
    Unlikely,
}

/// <summary>One reason for or against a cause.</summary>
/// <param name="Weight">Natural logarithm of the odds it adds; negative against.</param>
/// <param name="FromStock">True when it comes from the recipe and its chemistry, false when it was seen.</param>
public sealed record Evidence(string Text, double Weight, bool FromStock = true)
{
    /// <summary>True for what holds of every feed: it tells no feed from another and is no reason to list a cause.</summary>
    public bool IsOfEveryFeed { get; init; }
}

/// <summary>A cause with how probable it is and why.</summary>
/// <param name="Share">Part of all probability, 0 to 1.</param>
public sealed record RankedCause(Cause Cause, double Score, double Share, IReadOnlyList<Evidence> Evidence, SolidVerdict Solid)
{
    /// <summary>Shares from which the words hold; common practice, no source.</summary>
    public Likeliness Likeliness => Share switch
    {
        >= 0.6 => Likeliness.VeryLikely,
        >= 0.25 => Likeliness.Likely,
        >= 0.05 => Likeliness.Possible,
        _ => Likeliness.Unlikely,
    };

    /// <summary>True when anything at all speaks for it: what nothing speaks for is not worth a line.</summary>
    public bool HasReason => Evidence.Any(e => e is { Weight: > 0, IsOfEveryFeed: false });

    public IEnumerable<Evidence> For => Evidence.Where(e => e.Weight > 0).OrderByDescending(e => e.Weight);

    public IEnumerable<Evidence> Against => Evidence.Where(e => e.Weight < 0).OrderBy(e => e.Weight);
}

/// <summary>Causes of what was seen in a bottle, most probable first.</summary>
/// <param name="Hazards">What the contents can do to people, from the recipe and from what was seen: said before anything else.</param>
public sealed record BottleDiagnosis(Observation Observation, BottleChemistry Chemistry, IReadOnlyList<RankedCause> Causes,
    HazardReport Hazards)
{
    /// <summary>What is in the bottle and nobody can tell more of; null where all can be named.</summary>
    public UnknownContents? Unknown => UnknownContents.Of(Chemistry.Stock);
}
