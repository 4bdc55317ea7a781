using RecipeLint.Advice.Diagnosis;
using RecipeLint.Analysis.Hazards;

namespace RecipeLint.Advice.Tanks;

/// <summary>A solution in which a solid of tank, line or dripper can form.</summary>
public enum TankMoment
{
    /// <summary>The source water alone, in air.</summary>
    Water,

    /// <summary>The source water in pipes that lie in the sun.</summary>
    Warm,

    /// <summary>The tank as it is poured together, closed to the air.</summary>
    Poured,

    /// <summary>The tank at rest with the air.</summary>
    Air,

    /// <summary>The tank with its pH set.</summary>
    Adjusted,

    /// <summary>The concentrates together, undiluted.</summary>
    Meeting,

    /// <summary>The feed where it dries.</summary>
    Drying,
}

/// <summary>Something that makes a tank, a line or a dripper look as it does.</summary>
/// <param name="Moments">Where the engine is asked for its solids.</param>
public sealed record TankCause(Cause Cause, IReadOnlyList<TankMoment> Moments);

/// <summary>The embedded causes. A fault in them is a fault of the build and throws.</summary>
public static class TankData
{
    private static readonly Lazy<IReadOnlyList<TankCause>> Loaded = new(Read);

    /// <summary>Every known cause, in the order of the file.</summary>
    public static IReadOnlyList<TankCause> Causes => Loaded.Value;

    private static IReadOnlyList<TankCause> Read()
    {
        using var document = DiagnosisData.Open("causes", "Tanks");
        var sentences = SharedSentences.Of(document.RootElement, DiagnosisData.Sentences);
        return
        [
            .. document.RootElement.GetProperty("causes").EnumerateArray().Select(c => new TankCause(
                DiagnosisData.ReadCause(c, sentences) with
                {
                    Solids = [.. DiagnosisData.Texts(c, "solidsOf").SelectMany(of => DiagnosisData.Cause(of).Solids).Distinct()],
                },
                [.. DiagnosisData.Texts(c, "moments").Select(m => Enum.Parse<TankMoment>(m, ignoreCase: true))])),
        ];
    }
}
