using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Analysis.Equilibria;

/// <summary>
/// Which solids may form of a solution in its own time, without seeds and whatever the constants announce. Every state asks here, so that
/// no two readers of one bottle disagree on it.
/// </summary>
public static class Forming
{
    /// <summary>
    /// Silicate in its own alkali is there as chains, rings and grains too small to settle (<see cref="ConstantSet.InSilicateAlkali"/>): a
    /// bottle that is saturated with silica stays clear. Only where something else has lowered the pH by more than this is silica judged
    /// (common practice, no source).
    /// </summary>
    public const double PhTakenDown = 0.5;

    /// <summary>What silicate gels to.</summary>
    internal const string Silica = "Amorphous silica";

    private const string AcidOfEdta = "EDTA acid", AcidOfDtpa = "DTPA acid";

    /// <summary>
    /// True for a solid that forms readily, or a soluble salt with a handbook solubility, unless it is known to stay dissolved here.
    /// </summary>
    internal static bool May(SolutionMix mix, Solid solid, bool isJudgedSalt) => solid.Role switch
    {
        SolidRole.FormsReadily => StaysDissolvedBecause(mix, solid) is null,
        SolidRole.SolubleSalt => isJudgedSalt,
        _ => false,
    };

    /// <summary>Why a solid stays dissolved although the constants announce it; null where nothing is known to hold it.</summary>
    public static string? StaysDissolvedBecause(SolutionMix mix, Solid solid) =>
        WaitsForTheAir(mix, solid) ? "the air oxidises the iron before it crystallises"
        : solid.Name == Silica && mix.StandsInItsSilicateAlkali ? "silicate stays dissolved in its own alkali"
        : null;

    /// <summary>
    /// The acid of EDTA crystallises slower than the air oxidises iron(II) in its hold, and iron(III) is held in stronger acid: the
    /// classical iron stock of Murashige and Skoog (Physiol. Plant. 15 (1962) 473) is mixed from both at pH 2 to 3 and stays clear. It is
    /// judged once the iron is oxidised. That of DTPA is taken alike (common practice, no source).
    /// </summary>
    public static bool WaitsForTheAir(SolutionMix mix, Solid solid) =>
        solid.Name is AcidOfEdta or AcidOfDtpa && mix.Totals[Component.FerrousIron] > 0;
}
