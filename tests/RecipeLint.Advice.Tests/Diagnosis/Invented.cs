using RecipeLint.Advice.Diagnosis;
using RecipeLint.Analysis.Observations;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Advice.Tests.Diagnosis;

/// <summary>Causes that nobody meets, each with just what a test asks of it.</summary>
internal static class Invented
{
    public static Cause Cause(
        string id, string often = "", string sometimes = "", string never = "", Frequency frequency = Frequency.Common, Rescue rescue = Rescue.Acid,
        params (string Sign, Behaviour Behaviour)[] tests) => new()
        {
            Id = id,
            Name = id,
            Frequency = frequency,
            Often = Signs(often),
            Sometimes = Signs(sometimes),
            Never = Signs(never),
            Tests = tests.ToDictionary(t => t.Sign, t => t.Behaviour),
            Rescue = rescue,
            RescueSay = "",
            Change = "",
            Source = "invented",
            Confidence = Confidence.Memory,
        };

    /// <summary>"+white -sand": told, and told to be absent.</summary>
    public static Observation Told(string signs) => Observation.Nothing.With(
        signs.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(s => new Seen(Vocabulary.Sign(s[1..]), s[0] == '+')));

    private static HashSet<string> Signs(string ids) => [.. ids.Split(' ', StringSplitOptions.RemoveEmptyEntries)];
}
