using RecipeLint.Analysis.Uncertainty;

namespace RecipeLint.Analysis.Trials;

/// <summary>
/// Draws that are the same on every machine and in every version: SplitMix64 (G. L. Steele, D. Lea, C. H. Flood, OOPSLA 2014; recalled).
/// </summary>
internal sealed class SeededDraws(ulong seed)
{
    private ulong _state = seed;

    /// <summary>The draws of one of many trials: none depends on how many there are before it.</summary>
    public static SeededDraws OfTrial(int seed, int trial) => new(Mixed(((ulong)(uint)seed << 32) | (uint)trial));

    /// <summary>Mean 0, standard deviation 1, in a shape.</summary>
    public double Next(ErrorShape shape) => shape switch
    {
        ErrorShape.Rectangular => Math.Sqrt(3) * ((2 * Uniform()) - 1),
        ErrorShape.Triangular => Math.Sqrt(6) * (Uniform() + Uniform() - 1),
        _ => Normal(),
    };

    /// <summary>The next 64 bits.</summary>
    public ulong Bits()
    {
        unchecked
        {
            _state += 0x9E37_79B9_7F4A_7C15;
        }

        return Mixed(_state);
    }

    /// <summary>From 0 up to, and without, 1.</summary>
    private double Uniform() => (Bits() >> 11) * (1.0 / (1UL << 53));

    /// <summary>G. E. P. Box and M. E. Muller, Ann. Math. Stat. 29 (1958), 610 (recalled).</summary>
    private double Normal() => Math.Sqrt(-2 * Math.Log(1 - Uniform())) * Math.Cos(2 * Math.PI * Uniform());

    private static ulong Mixed(ulong bits)
    {
        unchecked
        {
            bits = (bits ^ (bits >> 30)) * 0xBF58_476D_1CE4_E5B9;
            bits = (bits ^ (bits >> 27)) * 0x94D0_49BB_1331_11EB;
            return bits ^ (bits >> 31);
        }
    }
}
