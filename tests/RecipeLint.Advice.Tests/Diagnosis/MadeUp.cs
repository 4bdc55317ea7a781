using RecipeLint.Advice.Diagnosis;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Observations;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Advice.Tests.Diagnosis;

/// <summary>Invented causes and signs, so that a weight can be asked for by itself.</summary>
internal static class MadeUp
{
    public static Cause Cause(
        string id,
        string[]? often = null,
        string[]? sometimes = null,
        string[]? never = null,
        Dictionary<string, Behaviour>? tests = null,
        Rescue rescue = Rescue.Keep,
        Frequency frequency = Frequency.Common) => new()
        {
            Id = id,
            Name = id,
            Frequency = frequency,
            Often = (often ?? []).ToHashSet(),
            Sometimes = (sometimes ?? []).ToHashSet(),
            Never = (never ?? []).ToHashSet(),
            Tests = tests ?? [],
            Rescue = rescue,
            RescueSay = "",
            Change = "",
            Source = "invented",
            Confidence = Confidence.Memory,
        };

    public static Sign Sign(string id, SignKind kind, params string[] kin) => new(id, kind, id, "no " + id, kin);

    public static RankedCause Ranked(
        string id, double share, double weight = 1, bool ofEveryFeed = false, CauseDanger[]? dangers = null, HazardKind? isHazard = null) => new(
        Cause(id) with { Dangers = dangers ?? [], IsHazard = isHazard }, 0, share, [new Evidence("why", weight) { IsOfEveryFeed = ofEveryFeed }],
        SolidVerdict.None);
}
