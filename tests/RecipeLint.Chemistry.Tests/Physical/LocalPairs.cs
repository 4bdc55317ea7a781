namespace RecipeLint.Chemistry.Tests.Physical;

/// <summary>
/// A small speciation for these tests only: sulfate pairs (and H2PO4- pairs) of the divalent metals at 25 °C, activities by
/// −z²·A·√I/(1+1.5·√I). log K: MgSO4 2.23, CaSO4 2.31, CaH2PO4+ 1.41, MgH2PO4+ 1.17 (NEA-TDB selection in ThermoChimie 12a),
/// ZnSO4 2.34 (MINTEQA2 4.0). Alkali sulfates, chlorides and nitrates stay free, as the conductivity fit demands.
/// </summary>
internal static class LocalPairs
{
    private static readonly (string Cation, string Anion, string Pair, int Charge, double LogK)[] Pairs =
    [
        ("Mg+2", "SO4-2", "MgSO4", 0, 2.23),
        ("Ca+2", "SO4-2", "CaSO4", 0, 2.31),
        ("Zn+2", "SO4-2", "ZnSO4", 0, 2.34),
        ("Ca+2", "H2PO4-", "CaH2PO4+", 1, 1.41),
        ("Mg+2", "H2PO4-", "MgH2PO4+", 1, 1.17),
    ];

    internal static Dictionary<string, double> Speciate(IReadOnlyDictionary<string, double> total)
    {
        var free = total.ToDictionary(p => p.Key, p => p.Value);
        var paired = new double[Pairs.Length];
        for (var round = 0; round < 500; round++)
        {
            var i = 0.5 * (free.Sum(p => p.Value * Square(Charge(p.Key))) + Pairs.Select((p, k) => paired[k] * p.Charge * p.Charge).Sum());
            var d = 0.51 * Math.Sqrt(i) / (1 + (1.5 * Math.Sqrt(i)));
            for (var k = 0; k < Pairs.Length; k++)
            {
                var (cation, anion, _, charge, logK) = Pairs[k];
                if (!free.TryGetValue(cation, out var m) || !free.TryGetValue(anion, out var a))
                    continue;

                // Exact for one pair with the rest held: x = K'(M−x)(A−x), M and A what this pair and its free ions hold together.
                double constant = Math.Pow(10, logK - (d * (Square(Charge(cation)) + Square(Charge(anion)) - (charge * charge))));
                double totalM = m + paired[k], totalA = a + paired[k], b = totalM + totalA + (1 / constant);
                var x = (b - Math.Sqrt((b * b) - (4 * totalM * totalA))) / 2;
                (free[cation], free[anion], paired[k]) = (totalM - x, totalA - x, x);
            }
        }

        for (var k = 0; k < Pairs.Length; k++)
        {
            if (paired[k] > 0)
                free[Pairs[k].Pair] = paired[k];
        }

        return free;
    }

    private static double Square(double x) => x * x;

    private static int Charge(string ion) => ion[^1] switch { '+' => 1, '-' => -1, '2' => ion[^2] == '+' ? 2 : -2, _ => throw new ArgumentException(ion) };
}
