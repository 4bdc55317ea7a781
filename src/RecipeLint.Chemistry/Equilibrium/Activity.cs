namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>
/// Activities by the specific ion interaction theory (SIT) and mass action: activity coefficients and water activity from molalities and
/// ionic strength, molalities of the complexes from activities, and the derivatives of the coefficients.
/// </summary>
internal sealed class Activity(Problem problem, Iterate at)
{
    /// <summary>
    /// Ion size times B of the Debye-Hueckel term, (kg/mol)^0.5: 1.5 at every temperature, as SIT coefficients are fitted with (Grenthe et
    /// al., NEA TDB-2).
    /// </summary>
    public const double IonSize = 1.5;

    /// <summary>ln of the molality below which a species counts for nothing in any sum, 1e-32 mol/kg.</summary>
    public const double LnNothing = -74;

    private const double LargestLnGamma = 60;

    /// <summary>Rows of the derivatives of ln gamma by ln m, as <see cref="IonPairs.Row"/> numbers them, and which are not zero.</summary>
    public readonly double[] Rows = problem.Work.Rows;
    public readonly bool[] Used = problem.Work.Used;

    /// <summary>
    /// Activity coefficients and water activity from the molalities at hand and the ionic strength unknown, then the molalities
    /// of the complexes from them. Repeats the pair: what one round leaves shrinks by the small share the complexes have in the sums.
    /// </summary>
    public void Evaluate(int rounds)
    {
        var s = problem.S;
        for (var a = 0; a < s.ComponentCount; a++)
        {
            at.LnM[a] = at.X[a];
            at.M[a] = Math.Exp(Math.Min(at.X[a], Iterate.LargestLnMolality));
        }
        var water = at.WaterKg;
        var inert = at.M.AsSpan(s.ComponentCount + s.ComplexCount);
        for (var i = 0; i < inert.Length; i++) inert[i] = problem.InertMol[i] / water;
        for (var r = 0; r < rounds; r++)
        {
            Coefficients();
            Molalities();
        }
    }

    /// <summary>Mass action: the molality of every complex from the activities of its components.</summary>
    public void Molalities()
    {
        var s = problem.S;
        Span<double> activity = stackalloc double[s.ComponentCount];
        for (var a = 0; a < activity.Length; a++) activity[a] = at.X[a] + at.LnGamma[a];
        ReadOnlySpan<int> term = s.Term, start = s.Start;
        ReadOnlySpan<double> coefficient =
            s.Coefficient, gamma = at.LnGamma.AsSpan(s.ComponentCount, s.ComplexCount), lnK = problem.LnK, water = s.Water;
        Span<double> m = at.M.AsSpan(s.ComponentCount, s.ComplexCount), lnM = at.LnM.AsSpan(s.ComponentCount, s.ComplexCount);
        var lnAw = at.LnAw;
        var from = 0;
        for (var i = 0; i < lnM.Length; i++)
        {
            var ln = lnK[i] - gamma[i] + water[i] * lnAw;
            var to = start[i + 1];
            for (var t = from; t < to; t++) ln += coefficient[t] * activity[term[t]];
            from = to;
            lnM[i] = ln;
        }

        Lanes.Molalities(m, lnM);
    }

    /// <summary>Molality from its logarithm; below 1e-32 mol/kg a species counts for nothing in any sum.</summary>
    public static double Exp(double ln) => ln < LnNothing ? 0 : Math.Exp(Math.Min(ln, Iterate.LargestLnMolality));

    /// <summary>Activity coefficients and water activity from molalities and ionic strength.</summary>
    public void Coefficients()
    {
        const double b = IonSize;
        double ionic = at.Ionic, root = Math.Sqrt(ionic), t = 1 + b * root, lnI = at.LnI, a = problem.LimitingSlope;
        var d = Problem.Ln10 * a * root / t;
        var slope = Problem.Ln10 * a / (2 * root * t * t);
        Lanes.Scale(at.LnGamma, problem.S.ChargeSquared, -d);
        Lanes.Scale(at.GammaI, problem.S.ChargeSquared, -slope);
        var sum = Lanes.Sum(at.M);
        var interaction = Interactions(ionic, lnI);
        var osmotic = -2 * Problem.Ln10 * a / (b * b * b) * (t - 2 * Math.Log(t) - 1 / t);
        var lnAw = -(sum + osmotic + interaction) / Problem.MolWater;
        at.LnAw = Math.Clamp(lnAw, -5, 2);
        Lanes.Clamp(at.LnGamma.AsSpan(0, problem.S.ComponentCount + problem.S.ComplexCount), LargestLnGamma);
    }

    /// <summary>Adds the interaction terms to the coefficients; returns their part of the water activity, mol/kg.</summary>
    private double Interactions(double ionic, double lnI)
    {
        var pairs = problem.Pairs;
        int[] first = pairs.First, second = pairs.Second;
        double[] e1 = problem.PairEpsilon, e2 = pairs.EpsilonLnI, m = at.M, lnGamma = at.LnGamma, gammaI = at.GammaI;
        var consistent = problem.Set.ConsistentWater;
        double interaction = 0;
        for (var p = 0; p < first.Length; p++)
        {
            int i = first[p], j = second[p];
            double e = e1[p] + e2[p] * lnI, mi = m[i], mj = m[j];
            lnGamma[i] += e * mj;
            lnGamma[j] += e * mi;
            interaction += e * mi * mj;
            if (e2[p] == 0) continue;
            var perI = e2[p] / ionic;
            gammaI[i] += perI * mj;
            gammaI[j] += perI * mi;
            if (consistent) interaction += e2[p] / 2 * mi * mj;
        }
        return interaction;
    }

    /// <summary>
    /// Rows of the derivatives of ln gamma by the unknowns ln m: exact for pairs with a component, first order for pairs with a complex.
    /// </summary>
    public void Derive()
    {
        Array.Clear(Rows);
        Array.Clear(Used);
        var pairs = problem.Pairs;
        var lnI = at.LnI;
        for (var p = 0; p < pairs.First.Length; p++)
        {
            int i = pairs.First[p], j = pairs.Second[p];
            var e = problem.PairEpsilon[p] + pairs.EpsilonLnI[p] * lnI;
            AddRow(pairs.Row[i], j, e);
            AddRow(pairs.Row[j], i, e);
        }
    }

    private void AddRow(int paired, int ion, double epsilon)
    {
        var em = epsilon * at.M[ion];
        if (Math.Abs(em) < 1e-9) return;
        var s = problem.S;
        Used[paired] = true;
        var row = paired * s.ComponentCount;
        if (ion < s.ComponentCount) { Rows[row + ion] += em; return; }
        for (var t = s.Start[ion - s.ComponentCount]; t < s.Start[ion - s.ComponentCount + 1]; t++) Rows[row + s.Term[t]] += em
            * s.Coefficient[t];
    }
}
