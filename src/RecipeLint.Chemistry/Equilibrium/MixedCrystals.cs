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

    // Of KNO3 with NH4NO3 at 10 °C the totals alone give 13 % too little against the equilibrium.
    private const double Margin = 1.15;

    /// <summary>Twice the number of its pair, and one more for the ammonium salt; -1 for a solid without kin.</summary>
    internal static int KinOf(string solid)
    {
        for (var pair = 0; pair < Kin.Length; pair++)
        {
            if (Kin[pair].Potassium == solid) return 2 * pair;
            if (Kin[pair].Ammonium == solid) return 2 * pair + 1;
        }

        return -1;
    }

    /// <summary>
    /// Index of the ideal mixed crystal of two salts: n log10 of the sum of 10^(index / n), n the potassium or ammonium in a formula.
    /// </summary>
    internal static double Index(double first, double second, double exchanged) =>
        exchanged * Math.Log10(Math.Pow(10, first / exchanged) + Math.Pow(10, second / exchanged));

    /// <summary>
    /// Marks the greater of two kin that are past saturation together: clear alone it is close, and what crystallises anyway can be more.
    /// </summary>
    public static void Mark(List<SaltVerdict> verdicts, ComponentTotals totals)
    {
        Span<int> places = stackalloc int[2 * Kin.Length];
        places.Fill(-1);
        for (var i = 0; i < verdicts.Count; i++)
        {
            if (verdicts[i].Solid.Kin is >= 0 and var kin && places[kin] < 0) places[kin] = i;
        }

        for (var pair = 0; pair < Kin.Length; pair++)
        {
            int p = places[2 * pair], a = places[2 * pair + 1];
            if (p < 0 || a < 0) continue;
            var (greater, lesser) = verdicts[p].Index >= verdicts[a].Index ? (p, a) : (a, p);
            var exchanged = verdicts[p].Solid.Composition.Single(c => c.Key == Component.Potassium).Value;
            var mixed = Index(verdicts[p].Index, verdicts[a].Index, exchanged);
            if (mixed <= 0) continue;
            verdicts[greater] = verdicts[greater] with
            {
                State = verdicts[greater].State == SaltState.Crystallises ? SaltState.Crystallises : SaltState.Close,
                Mixed = new MixedCrystal(
                    verdicts[greater].Solid, verdicts[greater].Index, verdicts[lesser].Solid, verdicts[lesser].Index, exchanged, mixed,
                    totals),
            };
        }
    }

    /// <summary>
    /// The most that crystals of any one composition can be until the solution is saturated with them, g per kg of water. At equilibrium
    /// ideal mixed crystals have one composition, so no more of them can be there. What is dissolved changes the indices by its totals
    /// alone, and a seventh is added because the activities change with it too.
    /// </summary>
    internal static double MostGramsPerKg(MixedCrystal crystal)
    {
        double most = 0;
        var (first, second, totals) = (crystal.Of, crystal.With, crystal.Totals);
        for (var share = 0.025; share < 1; share += 0.025)
        {
            double low = 0, high = 1;
            var all = Exhausted(first, second, share, totals);
            for (var k = 0; k < 40; k++)
            {
                var middle = (low + high) / 2;
                if (PastBy(crystal, share, middle * all) > 0) low = middle; else high = middle;
            }

            var grams = share * first.MolarMassGramsPerMole + (1 - share) * second.MolarMassGramsPerMole;
            most = Math.Max(most, low * all * grams);
        }

        return Margin * most;
    }

    /// <summary>mol per kg of water of crystals of one composition that use up the first of their components.</summary>
    private static double Exhausted(Solid first, Solid second, double share, ComponentTotals totals)
    {
        var least = double.PositiveInfinity;
        foreach (var (component, taken) in Taken(first, second, share)) least = Math.Min(least, totals.MolPerKg[component] / taken);
        return least;
    }

    /// <summary>How far crystals of one composition are past saturation once some of them lie there; log10 per place exchanged.</summary>
    private static double PastBy(MixedCrystal crystal, double share, double molPerKg)
    {
        var exchanged = crystal.Exchanged;
        Span<double> left = stackalloc double[Components.Count];
        foreach (var (component, taken) in Taken(crystal.Of, crystal.With, share))
            left[component] = Math.Log10(Math.Max(1 - taken * molPerKg / crystal.Totals.MolPerKg[component], 1e-12));
        double a = crystal.IndexAlone / exchanged, b = crystal.IndexOfKin / exchanged;
        foreach (var (component, n) in crystal.Of.Terms) a += n * left[component] / exchanged;
        foreach (var (component, n) in crystal.With.Terms) b += n * left[component] / exchanged;
        return share * (a - Math.Log10(share)) + (1 - share) * (b - Math.Log10(1 - share));
    }

    /// <summary>What a mole of crystals takes of each component, water aside.</summary>
    private static Dictionary<int, double> Taken(Solid first, Solid second, double share)
    {
        var taken = new Dictionary<int, double>();
        foreach (var (component, n) in first.Terms) taken[component] = share * n;
        foreach (var (component, n) in second.Terms) taken[component] = taken.GetValueOrDefault(component) + (1 - share) * n;
        taken.Remove(Components.Water);
        return taken;
    }
}

/// <summary>A salt as part of mixed crystals with its kin.</summary>
/// <param name="Of">The salt.</param>
/// <param name="IndexAlone">How far it alone is past saturation.</param>
/// <param name="With">The kin.</param>
/// <param name="IndexOfKin">How far the kin alone is past saturation.</param>
/// <param name="Exchanged">Potassium or ammonium in a formula of either.</param>
/// <param name="Index">Of ideal mixed crystals: above 0 they can fall out.</param>
/// <param name="Totals">What is dissolved, mol per kg of water.</param>
public sealed record MixedCrystal(
    Solid Of, double IndexAlone, Solid With, double IndexOfKin, double Exchanged, double Index, ComponentTotals Totals)
{
    /// <summary>
    /// The most that can fall out of ideal mixed crystals, g per kg of water; where they mix in part only it is less.
    /// </summary>
    public double MostGramsPerKg => MixedCrystals.MostGramsPerKg(this);
}
