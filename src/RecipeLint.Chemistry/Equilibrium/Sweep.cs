namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>
/// Component by component, the free molality that fills its total with everything else held: brings complexes of thirty decades
/// into range before Newton, which could not see past them.
/// </summary>
internal sealed class Sweep(Problem problem, Iterate at, Activity activity)
{
    private readonly Stoichiometry _s = problem.S;

    public void Run(int times)
    {
        for (var a = 0; a < _s.ComponentCount; a++) at.M[a] = Math.Exp(at.X[a]);
        activity.Molalities();
        for (var k = 0; k < times; k++)
        {
            double largest = 0;
            for (var a = _s.ComponentCount - 1; a >= 0; a--)
            {
                if (a == 0 && problem.FixedPh is { } ph) { Shift(0, -ph * Problem.Ln10 - at.LnGamma[0] - at.X[0]); continue; }
                if (a == _s.Gas)
                {
                    Shift(a, problem.GasLnTarget + at.LnAw - 2 * (at.X[0] + at.LnGamma[0]) - at.LnGamma[a] - at.X[a]);
                    continue;
                }
                for (var inner = 0; inner < 3; inner++)
                {
                    var change = a == 0 ? ProtonStep() : ComponentStep(a);
                    Shift(a, change);
                    largest = Math.Max(largest, Math.Abs(change));
                    if (Math.Abs(change) < 1.5) break;
                }
            }
            if (largest < 0.1) break;
        }
        at.HoldIonicStrength(1, 30);
    }

    private double ComponentStep(int a)
    {
        double sum = at.M[a], slope = sum;
        for (var q = _s.IncidenceStart[a]; q < _s.IncidenceStart[a + 1]; q++)
        {
            double v = _s.IncidenceCoefficient[q], part = v * at.M[_s.ComponentCount + _s.Incidence[q]];
            sum += part;
            slope += v * part;
        }
        return Math.Log(problem.Total[a] / sum) * sum / slope;
    }

    private double ProtonStep()
    {
        double pos = Math.Max(-problem.ProtonTotal, 0), neg = Math.Max(problem.ProtonTotal, 0), slopePos = 0, slopeNeg = 0;
        for (var a = 0; a < _s.ComponentCount; a++)
        {
            var part = _s.Proton[a] * at.M[a];
            if (part > 0) { pos += part; if (a == 0) slopePos += part; } else neg -= part;
        }
        for (var q = 0; q < _s.ComplexCount; q++)
        {
            var part = _s.Proton[_s.ComponentCount + q] * at.M[_s.ComponentCount + q];
            if (part > 0) pos += part; else neg -= part;
        }
        for (var q = _s.IncidenceStart[0]; q < _s.IncidenceStart[1]; q++)
        {
            var i = _s.Incidence[q];
            double v = _s.IncidenceCoefficient[q], part = _s.Proton[_s.ComponentCount + i] * at.M[_s.ComponentCount + i];
            if (part > 0) slopePos += v * part; else slopeNeg -= v * part;
        }
        var slope = slopePos / pos - slopeNeg / neg;
        return slope > 1e-6 ? Math.Clamp(-Math.Log(pos / neg) / slope, -6, 6) : 0;
    }

    /// <summary>
    /// Moves one ln m and the molalities of the complexes that hold the component, by powers where that is safe: the rounding it leaves
    /// is gone with the next <see cref="Activity.Molalities"/>.
    /// </summary>
    private void Shift(int a, double change)
    {
        const int powers = 8;
        at.X[a] += change;
        at.M[a] = Math.Exp(Math.Min(at.X[a], Iterate.LargestLnMolality));
        Span<double> power = stackalloc double[2 * powers + 1];
        power[powers] = 1;
        double up = Math.Exp(change), down = 1 / up;
        for (var k = 1; k <= powers; k++)
        {
            power[powers + k] = power[powers + k - 1] * up;
            power[powers - k] = power[powers - k + 1] * down;
        }
        var safe = Math.Abs(change) < 20;
        ReadOnlySpan<int> with = _s.Incidence.AsSpan(_s.IncidenceStart[a], _s.IncidenceStart[a + 1] - _s.IncidenceStart[a]);
        ReadOnlySpan<double> times = _s.IncidenceCoefficient.AsSpan(_s.IncidenceStart[a], with.Length);
        Span<double> m = at.M.AsSpan(_s.ComponentCount, _s.ComplexCount), lnM = at.LnM.AsSpan(_s.ComponentCount, _s.ComplexCount);
        for (var q = 0; q < with.Length; q++)
        {
            var i = with[q];
            var v = times[q];
            var ln = lnM[i] += v * change;
            var whole = (int)v;
            m[i] = safe && m[i] > 0 && ln is > -74 and < Iterate.LargestLnMolality && whole == v && Math.Abs(whole) <= powers
                ? m[i] * power[powers + whole]
                : Activity.Exp(ln);
        }
    }
}
