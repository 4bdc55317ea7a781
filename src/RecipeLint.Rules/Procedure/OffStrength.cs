using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Procedure;

/// <summary>What it means when a stock comes out weaker or stronger than its file says.</summary>
internal static class OffStrength
{
    /// <summary>As far as an element may be off where a target states no tolerance; common practice, no source.</summary>
    private const double Borne = 0.05;

    /// <param name="off">How far everything in the stock is off, as a share; the sign does not matter.</param>
    public static Harm HarmOf(double off) => Math.Abs(off) > Borne ? Harm.Loss : Harm.Damage;
}
