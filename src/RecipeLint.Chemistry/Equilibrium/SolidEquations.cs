namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>
/// What solids present add to the equations: one mass action each, the balance of water, and balances that still mean something where the
/// solids leave next to nothing of a component.
/// </summary>
internal sealed class SolidEquations(Problem problem, Iterate at, Activity activity, NewtonWork work)
{
    /// <summary>
    /// Share of a total that is added to both sides of its balance beside solids. What they leave of a component is a small difference of
    /// large amounts: below this share its logarithm is noise, and nothing needs it, because the solid's constant decides what is left.
    /// </summary>
    private const double Blur = 1e-10;

    /// <summary>
    /// Below this ratio of what should be left to what is dissolved the logarithm goes on as a straight line, through zero and beyond.
    /// </summary>
    private const double Straight = 0.1;

    /// <summary>Share of a total from which on a step may not use up what is left of it; what is less may pass through zero.</summary>
    private const double Guarded = 1e-3;

    /// <summary>Times the total of a component that a step may bring into one complex, and by what it may always rise, ln.</summary>
    private const double Overshoot = 2, LongestRise = 1;

    /// <summary>The solids in equilibrium with the solution.</summary>
    public List<ActiveSolid> Present { get; } = [];

    public bool Any => Present.Count > 0;

    /// <summary>Residual of a component's balance: the logarithm of what is dissolved over what the solids leave of its total.</summary>
    public double Balance(int a, double water)
    {
        if (!Any) return Math.Log(work.Sum[a] * water / problem.Total[a]);
        var ratio = Ratio(a, water, out _);
        return ratio > Straight ? -Math.Log(ratio) : 1 - Math.Log(Straight) - ratio / Straight;
    }

    /// <summary>Derivative of a balance by the molality dissolved.</summary>
    public double BalanceSlope(int a, double water)
    {
        if (!Any) return 1 / work.Sum[a];
        var ratio = Ratio(a, water, out var dissolved);
        return (ratio > Straight ? 1 : ratio / Straight) * water / dissolved;
    }

    private double Ratio(int a, double water, out double dissolved)
    {
        var blur = Blur * problem.Total[a];
        dissolved = work.Sum[a] * water + blur;
        return (LeftOver(a) + blur) / dissolved;
    }

    /// <summary>Derivative of a balance by the amount bound in solids.</summary>
    public double BoundSlope(int a, double water)
    {
        var blur = Blur * problem.Total[a];
        double dissolved = work.Sum[a] * water + blur, left = LeftOver(a) + blur;
        return 1 / (left > Straight * dissolved ? left : Straight * dissolved);
    }

    /// <summary>What the solids leave of a component's total, mol per kg of initial water.</summary>
    public double LeftOver(int a)
    {
        var left = problem.Total[a];
        foreach (var s in Present)
            for (var t = 0; t < s.Term.Length; t++)
                if (s.Term[t] == a) left -= s.Coefficient[t] * s.Amount;
        return left;
    }

    /// <summary>
    /// How far a solid is past saturation, natural logarithm: of the activity product, and for soluble salts weighted with the product of
    /// what is dissolved in all over that of the saturated pure solution.
    /// </summary>
    public double Saturation(ActiveSolid s)
    {
        var byActivity = at.LnSaturation(s);
        if (s.LnPure is null) return byActivity;
        var share = SaltVerdicts.CalibratedShare(at.Ionic);
        return share * byActivity + (1 - share) * ByTotals(s);
    }

    /// <summary>How far each of many solids is past saturation, as <see cref="Saturation"/> says of one.</summary>
    public void Saturations(List<ActiveSolid> all, Span<double> past)
    {
        Span<double> dissolved = stackalloc double[problem.S.ComponentCount];
        for (var a = 0; a < dissolved.Length; a++) dissolved[a] = LnDissolved(a);
        var share = SaltVerdicts.CalibratedShare(at.Ionic);
        for (var k = 0; k < past.Length; k++)
        {
            var s = all[k];
            past[k] = at.LnSaturation(s);
            if (s.LnPure is not { } pure) continue;
            var byTotals = -pure;
            for (var t = 0; t < s.Term.Length; t++) byTotals += s.Coefficient[t] * dissolved[s.Term[t]];
            foreach (var p in s.Protonated) byTotals += p.Ln(at.M);
            foreach (var pair in s.HeldBy) byTotals -= LnHeld(pair, out _);
            past[k] = share * past[k] + (1 - share) * byTotals;
        }
    }

    private double ByTotals(ActiveSolid s)
    {
        var ln = -s.LnPure!.Value;
        for (var t = 0; t < s.Term.Length; t++) ln += s.Coefficient[t] * LnDissolved(s.Term[t]);
        foreach (var p in s.Protonated) ln += p.Ln(at.M);
        foreach (var pair in s.HeldBy) ln -= LnHeld(pair, out _);
        return ln;
    }

    /// <summary>
    /// ln of how much more of a salt is held beside a pair; and the component that counts, -1 where more of it would hold no more.
    /// </summary>
    private double LnHeld(SaltsInCompany.Pair pair, out int counts)
    {
        double first = DissolvedOf(pair.First), second = DissolvedOf(pair.Second);
        var molality = Math.Min(first, second) / at.WaterKg;
        counts = !pair.GrowsAt(molality) ? -1 : first < second ? pair.First : pair.Second;
        return Problem.Ln10 * pair.Log10(molality);
    }

    /// <summary>ln of what is dissolved of a component, mol per kg of the water left.</summary>
    private double LnDissolved(int a) => Math.Log(DissolvedOf(a)) - at.LnW;

    /// <summary>What the solids leave of a component, mol per kg of initial water, never less than the blur.</summary>
    private double DissolvedOf(int a) => Math.Max(LeftOver(a), Blur * problem.Total[a]);

    public double ProtonsLeft()
    {
        var protons = problem.ProtonTotal;
        foreach (var s in Present) protons -= s.Proton * s.Amount;
        return protons;
    }

    /// <summary>
    /// Residual of the proton condition: the logarithm of one side over the other. Beside solids, which may change its sign, an inverse
    /// hyperbolic sine of the difference takes its place: a straight line near zero, a logarithm far from it.
    /// </summary>
    public double ProtonBalance()
    {
        if (!Any) return Math.Log(work.Positive / work.Negative);
        if (work.ProtonScale == 0) work.ProtonScale = work.Positive + work.Negative;
        return Math.Asinh((work.Positive - work.Negative) / work.ProtonScale);
    }

    /// <summary>Derivative of the proton condition beside solids by protons, kg/mol.</summary>
    public double OverProton => 1 / ProtonSpread();

    private double ProtonSpread()
    {
        var open = work.Positive - work.Negative;
        return Math.Sqrt(open * open + work.ProtonScale * work.ProtonScale);
    }

    /// <summary>Derivatives of the proton condition by the molalities on its two sides.</summary>
    public (double Positive, double Negative) ProtonSlopes(double water) => Any
        ? (water / ProtonSpread(), water / ProtonSpread())
        : (water / work.Positive, water / work.Negative);

    /// <summary>Mass action of each solid and the balance of water.</summary>
    public void Residuals(double water)
    {
        if (!Any) return;
        var row = work.IonicRow + 1;
        foreach (var s in Present) work.F[row++] = Saturation(s) - s.Offset;
        var total = water * problem.S.WaterIn(at.M);
        foreach (var s in Present) total += s.Water * s.Amount;
        work.F[row] = total > 0 ? Math.Log(total / problem.WaterTotal) : 10;
    }

    /// <summary>Rows and columns of the solids and of water.</summary>
    public void Jacobian(double water, double ionic)
    {
        if (!Any) return;
        int n = work.Size, free = problem.S.ComponentCount, first = free + 1, waterColumn = n - 1;
        var overProton = OverProton;
        if (problem.FixedPh is null) work.Jacobian[waterColumn] = (work.Positive - work.Negative + ProtonsLeft()) * overProton;
        for (var a = 1; a < free; a++)
            if (a != problem.S.Gas) work.Jacobian[a * n + waterColumn] = work.Sum[a] * BalanceSlope(a, water);
        for (var k = 0; k < Present.Count; k++)
        {
            SolidRow(Present[k], first + k, water, ionic);
            if (problem.FixedPh is null) work.Jacobian[first + k] = Present[k].Proton * overProton;
        }
        WaterRow(first, water);
    }

    private void SolidRow(ActiveSolid s, int number, double water, double ionic)
    {
        int n = work.Size, free = problem.S.ComponentCount;
        var row = work.Jacobian.AsSpan(number * n, n);
        double column = 0;
        for (var t = 0; t < s.Term.Length; t++)
        {
            var a = s.Term[t];
            row[a] += s.Coefficient[t];
            DenseLu.AddScaled(row[..free], activity.Rows.AsSpan(a * free, free), s.Coefficient[t]);
            column += s.Coefficient[t] * at.GammaI[a];
            if (a > 0 && a != problem.S.Gas) work.Jacobian[a * n + number] = s.Coefficient[t] * BoundSlope(a, water);
        }
        if (s.Water != 0) DenseLu.AddScaled(row[..free], work.WaterSlope, s.Water);
        row[free] = column * ionic;
        if (s.LnPure is null) return;
        Weigh(s, row, free, free + 1);
        if (s.Protonated.Length == 0) return;
        Span<double> slopes = stackalloc double[free + problem.S.ComplexCount];
        if (!SlopesOfProtonShares(s, slopes)) return;
        for (var i = 0; i < slopes.Length; i++) if (slopes[i] != 0) AddLnM(row, i, slopes[i], ionic);
    }

    /// <summary>
    /// What the shares with protons add to the weighted measure of a salt, by ln m of everything dissolved; false where they stand still.
    /// </summary>
    public bool SlopesOfProtonShares(ActiveSolid s, Span<double> slopes)
    {
        var weight = 1 - SaltVerdicts.CalibratedShare(at.Ionic);
        slopes.Clear();
        var any = false;
        foreach (var p in s.Protonated) any |= p.Slopes(at.M, weight, slopes);
        return any;
    }

    /// <summary>Adds so many times the derivatives of ln m of something dissolved to the row of a solid.</summary>
    private void AddLnM(Span<double> row, int species, double times, double ionic)
    {
        var stoichiometry = problem.S;
        int free = stoichiometry.ComponentCount, complex = species - free;
        if (complex < 0)
        {
            row[species] += times;
            return;
        }

        var byIonic = -at.GammaI[species];
        for (var t = stoichiometry.Start[complex]; t < stoichiometry.Start[complex + 1]; t++)
        {
            int a = stoichiometry.Term[t];
            var v = times * stoichiometry.Coefficient[t];
            row[a] += v;
            DenseLu.AddScaled(row[..free], activity.Rows.AsSpan(a * free, free), v);
            byIonic += stoichiometry.Coefficient[t] * at.GammaI[a];
        }

        if (problem.Pairs.Row[species] is >= 0 and var paired)
            DenseLu.AddScaled(row[..free], activity.Rows.AsSpan(paired * free, free), -times);
        if (stoichiometry.Water[complex] is not 0 and var wet) DenseLu.AddScaled(row[..free], work.WaterSlope, times * wet);
        row[free] += times * byIonic * ionic;
    }

    /// <summary>Turns the derivatives of an activity product into those of the weighted measure.</summary>
    /// <param name="s">The salt.</param>
    /// <param name="row">Its row of derivatives; the last column is that of the water left.</param>
    /// <param name="ionicColumn">The column of ln I.</param>
    /// <param name="firstSolid">The column of the first solid present.</param>
    public void Weigh(ActiveSolid s, Span<double> row, int ionicColumn, int firstSolid)
    {
        var share = SaltVerdicts.CalibratedShare(at.Ionic);
        foreach (ref var v in row[..firstSolid]) v *= share;
        row[ionicColumn] += SaltVerdicts.CalibratedShareSlope(at.Ionic) * at.Ionic * (at.LnSaturation(s) - ByTotals(s));
        for (var t = 0; t < s.Term.Length; t++)
        {
            var dissolved = DissolvedOf(s.Term[t]);
            for (var k = 0; k < Present.Count; k++)
                for (var u = 0; u < Present[k].Term.Length; u++)
                    if (Present[k].Term[u] == s.Term[t])
                    {
                        row[firstSolid + k] -= (1 - share) * s.Coefficient[t] * Present[k].Coefficient[u] / dissolved;
                    }
            row[^1] -= (1 - share) * s.Coefficient[t];
        }

        foreach (var pair in s.HeldBy)
        {
            LnHeld(pair, out var counts);
            if (counts < 0) continue;
            var slope = (1 - share) * Problem.Ln10 * pair.PerMol;
            row[^1] += slope * DissolvedOf(counts) / at.WaterKg;
            for (var k = 0; k < Present.Count; k++)
                for (var u = 0; u < Present[k].Term.Length; u++)
                    if (Present[k].Term[u] == counts) row[firstSolid + k] += slope / at.WaterKg * Present[k].Coefficient[u];
        }
    }

    /// <summary>
    /// Water of the solution and of the solids, mol per kg of initial water; what there should be where that is not positive.
    /// </summary>
    public double WaterOfAll(double water)
    {
        var all = water * problem.S.WaterIn(at.M);
        foreach (var s in Present) all += s.Water * s.Amount;
        return all > 0 ? all : problem.WaterTotal;
    }

    private void WaterRow(int first, double water)
    {
        int n = work.Size, row = (n - 1) * n;
        var species = problem.S;
        double total = water * species.WaterIn(at.M), all = WaterOfAll(water);
        for (var i = 0; i < species.ComplexCount; i++)
        {
            var w = species.Water[i] * at.M[species.ComponentCount + i] * water / all;
            if (w == 0) continue;
            for (var t = species.Start[i]; t < species.Start[i + 1]; t++) work.Jacobian[row + species.Term[t]] += w
                * species.Coefficient[t];
        }
        for (var k = 0; k < Present.Count; k++) work.Jacobian[row + first + k] = Present[k].Water / all;
        work.Jacobian[row + n - 1] = total / all;
    }

    /// <summary>
    /// Cuts a step so that no component of which there is plenty is used up to more than 98 % and water changes by half at most.
    /// </summary>
    public double StepLength(double length)
    {
        if (!Any) return length;
        var first = problem.S.ComponentCount + 1;
        for (var a = 1; a < problem.S.ComponentCount; a++)
        {
            if (a == problem.S.Gas) continue;
            double used = 0;
            for (var k = 0; k < Present.Count; k++)
            {
                var s = Present[k];
                for (var t = 0; t < s.Term.Length; t++) if (s.Term[t] == a) used += s.Coefficient[t] * work.Step[first + k];
            }
            var left = LeftOver(a);
            if (left > Guarded * problem.Total[a] && used * length > 0.98 * left) length = 0.98 * left / used;
        }
        var w = Math.Abs(work.Step[work.Size - 1]);
        if (w * length > 0.7) length = 0.7 / w;
        return WithoutOvershoot(length);
    }

    /// <summary>
    /// Cuts a step so that no complex comes to hold several times what there is of a component: seven molybdates and nine protons in one
    /// polymer make a thousandfold of a step that is short for each of them, and the iteration does not find back from there.
    /// </summary>
    private double WithoutOvershoot(double length)
    {
        var s = problem.S;
        var step = work.Step;
        for (var i = 0; i < s.ComplexCount; i++)
        {
            double change = 0, most = double.PositiveInfinity;
            for (var t = s.Start[i]; t < s.Start[i + 1]; t++) change += s.Coefficient[t] * step[s.Term[t]];
            if (!(change * length > LongestRise)) continue;
            for (var t = s.Start[i]; t < s.Start[i + 1]; t++)
            {
                var a = s.Term[t];
                if (a > 0 && a != s.Gas && s.Coefficient[t] > 0) most = Math.Min(most, problem.Total[a] / s.Coefficient[t]);
            }
            if (double.IsPositiveInfinity(most)) continue;
            var room = Math.Max(LongestRise, Math.Log(Overshoot * most) - at.LnW - at.LnM[s.ComponentCount + i]);
            if (change * length > room) length = room / change;
        }
        return length;
    }

    public void Save()
    {
        if (!Any) return;
        foreach (var s in Present) s.Saved = s.Amount;
        work.Saved[work.Size - 1] = at.LnW;
    }

    public void Move(double length)
    {
        if (!Any) return;
        for (var k = 0; k < Present.Count; k++) Present[k].Amount = Present[k].Saved + length * work.Step[work.IonicRow + 1 + k];
        at.LnW = work.Saved[work.Size - 1] + length * work.Step[work.Size - 1];
    }
}
