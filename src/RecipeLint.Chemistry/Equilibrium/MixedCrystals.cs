namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>
/// Potassium and ammonium are much of a size and take each other's place in a crystal: two salts that both stay below saturation can fall
/// out as mixed crystals. How far they mix is known of few, so both ends are asked: without mixing each salt is judged alone, with ideal
/// mixing the solution is saturated when the shares add up to 1. Ideal mixing is the most they can do, so a stock that is clear by it is
/// clear.
/// </summary>
internal static class MixedCrystals
{
    // Isomorphous pairs: P. Groth, Chemische Krystallographie 2 (1908) (recalled). The nitrates mix in part only.
    private static readonly (string Potassium, string Ammonium)[] Kin =
    [
        ("Niter", "Ammonium nitrate"), ("Arcanite", "Ammonium sulfate"), ("MKP", "MAP"), ("Picromerite", "Boussingaultite"),
        ("Potassium zinc sulfate", "Ammonium zinc sulfate"), ("Potassium copper sulfate", "Ammonium copper sulfate"),
        ("Potassium iron sulfate", "Mohrite"),
        ("Potassium cobalt sulfate", "Ammonium cobalt sulfate"), ("Potassium nickel sulfate", "Ammonium nickel sulfate"),
    ];

    /// <summary>
    /// Index of the ideal mixed crystal of two salts: n log10 of the sum of 10^(index / n), n the potassium or ammonium in a formula.
    /// </summary>
    internal static double Index(double first, double second, double exchanged) =>
        exchanged * Math.Log10(Math.Pow(10, first / exchanged) + Math.Pow(10, second / exchanged));

    /// <summary>Marks the greater of two kin that are clear alone and past saturation together.</summary>
    public static void Mark(List<SaltVerdict> verdicts)
    {
        foreach (var (potassium, ammonium) in Kin)
        {
            int p = verdicts.FindIndex(v => v.Solid.Name == potassium), a = verdicts.FindIndex(v => v.Solid.Name == ammonium);
            if (p < 0 || a < 0) continue;
            var (greater, lesser) = verdicts[p].Index >= verdicts[a].Index ? (p, a) : (a, p);
            var exchanged = verdicts[p].Solid.Composition.Single(c => c.Key == Component.Potassium).Value;
            var mixed = Index(verdicts[p].Index, verdicts[a].Index, exchanged);
            if (mixed <= 0 || verdicts[greater].State == SaltState.Crystallises) continue;
            verdicts[greater] = verdicts[greater] with
            {
                State = SaltState.Close,
                Mixed = new MixedCrystal(verdicts[lesser].Solid, verdicts[lesser].Index, exchanged, mixed),
            };
        }
    }
}

/// <summary>A salt as part of mixed crystals with its kin.</summary>
/// <param name="With">The kin.</param>
/// <param name="IndexOfKin">How far the kin alone is past saturation.</param>
/// <param name="Exchanged">Potassium or ammonium in a formula of either.</param>
/// <param name="Index">Of ideal mixed crystals: above 0 they can fall out.</param>
public sealed record MixedCrystal(Solid With, double IndexOfKin, double Exchanged, double Index);
