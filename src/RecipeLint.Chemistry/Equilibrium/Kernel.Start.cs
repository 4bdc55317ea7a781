namespace RecipeLint.Chemistry.Equilibrium;

internal sealed partial class Kernel
{
    /// <summary>
    /// Solves the solution without solids. The first attempt serves nearly every solution. For hard ones the convex problem with
    /// activity coefficients held and the full Newton take turns.
    /// </summary>
    public bool Solve(SolutionInput input) => (input.StartFrom is { } neighbour && SolveFrom(neighbour)) || Solve(input.StartPh);

    private bool Solve(double startPh)
    {
        Begin(startPh);
        Sweep(2);
        Activities();
        if (Descend(30, near: 0.05)) HoldIonicStrength(1, 30);
        if (Newton(60)) return true;
        Begin(7);
        var heldX = new double[_nc];
        var heldM = new double[_nt];
        for (var round = 0; round < 40; round++)
        {
            BeginLow();
            if (!Descend(300)) return false;
            HoldIonicStrength(round < 4 ? 1.0 : 0.4, largestChange: 1.2);
            _x.CopyTo(heldX, 0);
            _m.CopyTo(heldM, 0);
            var strength = _lnI;
            if (Newton(30)) return true;
            heldX.CopyTo(_x, 0);
            heldM.CopyTo(_m, 0);
            _lnI = strength;
            Activities();
        }
        return false;
    }

    /// <summary>Newton from the state of a neighbour; false when it has not all the components or the way from it is too far.</summary>
    public bool SolveFrom(Equilibrium neighbour)
    {
        if (!neighbour.Converged) return false;
        _lnW = 0;
        Prepare();
        // Both lists are in table order and share the tables' names.
        var at = 0;
        for (var i = 0; i < _nc + _ns; i++)
        {
            var name = i < _nc ? Components.Names[_component[i]] : ThermoTables.SpeciesNames[_species[i - _nc]];
            var next = at;
            while (next < neighbour.Species.Count && !ReferenceEquals(neighbour.Species[next].Name, name)) next++;
            var found = next < neighbour.Species.Count;
            _m[i] = found ? neighbour.Species[next].MolPerKg : 0;
            if (found) at = next + 1;
            if (i >= _nc) continue;
            if (!(_m[i] > 0)) return false;
            _x[i] = Math.Log(_m[i]);
        }
        _lnI = Math.Log(Math.Clamp(neighbour.IonicStrength, LowestI, HighestI));
        return Newton(15) && HighlyChargedShare() < 0.1;
    }

    /// <summary>
    /// Share of ions of charge 4 and more in the ionic strength. Where they carry it the model may have two states, and only the common
    /// beginning makes sure that it is always the same one.
    /// </summary>
    private double HighlyChargedShare()
    {
        double sum = 0;
        for (var i = 0; i < _nt; i++) if (Math.Abs(_z[i]) >= 4) sum += _z[i] * _z[i] * _m[i];
        return sum / 2 / Ionic;
    }

    private void HoldIonicStrength(double weight, double largestChange)
    {
        double strength = 0;
        for (var i = 0; i < _nt; i++) strength += _z[i] * _z[i] * Math.Min(_m[i], 50);
        var target = Math.Log(Math.Clamp(strength / 2, 1e-8, 20));
        _lnI += Math.Clamp(weight * (target - _lnI), -largestChange, largestChange);
    }

    /// <summary>Free molalities so low that no complex is more than a trace: below the answer Newton climbs, above it a polymer blinds it.</summary>
    private void BeginLow()
    {
        for (var low = 0; low < 30; low++)
        {
            for (var a = 1; a < _nc; a++) if (a != _gasComponent) _x[a] = Math.Log(_total[a]) - 3 * low;
            TieGas();
            Molalities();
            var highest = double.NegativeInfinity;
            for (var i = 0; i < _ns; i++) if (_term.AsSpan(_start[i], _start[i + 1] - _start[i]) is not [0]) highest = Math.Max(highest, _lnM[_nc + i]);
            foreach (var s in _soft) highest = Math.Max(highest, LnSaturation(s) - 3);
            if (highest < -3) break;
        }
        for (var a = 0; a < _nc; a++) _m[a] = Math.Exp(Math.Min(_x[a], LargestLnMolality));
    }

    private void Begin(double startPh)
    {
        double strength = 0;
        _lnW = 0;
        _x[0] = -(_fixedPh ?? startPh) * Ln10;
        for (var a = 1; a < _nc; a++)
        {
            _x[a] = a == _gasComponent ? -14 : Math.Log(_total[a]);
            strength += _z[a] * _z[a] * _total[a];
        }
        for (var i = 0; i < _inertMol.Length; i++) strength += _z[_nc + _ns + i] * _z[_nc + _ns + i] * _inertMol[i];
        _lnI = Math.Log(Math.Clamp(strength / 2, 1e-6, 8));
        Prepare();
        Array.Clear(_m);
        for (var a = 0; a < _nc; a++) _m[a] = Math.Exp(_x[a]);
        for (var i = 0; i < _inertMol.Length; i++) _m[_nc + _ns + i] = _inertMol[i];
        Activities();
    }

    /// <summary>
    /// Component by component, the free molality that fills its total with everything else held: brings complexes of thirty decades
    /// into range before Newton, which could not see past them.
    /// </summary>
    private void Sweep(int times)
    {
        for (var a = 0; a < _nc; a++) _m[a] = Math.Exp(_x[a]);
        Molalities();
        for (var k = 0; k < times; k++)
        {
            double largest = 0;
            for (var a = _nc - 1; a >= 0; a--)
            {
                if (a == 0 && _fixedPh is not null) { Shift(0, -_fixedPh.Value * Ln10 - _lnGamma[0] - _x[0]); continue; }
                if (a == _gasComponent) { Shift(a, _gasLnTarget + _lnAw - 2 * (_x[0] + _lnGamma[0]) - _lnGamma[a] - _x[a]); continue; }
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
        HoldIonicStrength(1, 30);
    }

    private double ComponentStep(int a)
    {
        double sum = _m[a], slope = sum;
        for (var q = _incidenceStart[a]; q < _incidenceStart[a + 1]; q++)
        {
            double v = _incidenceCoefficient[q], part = v * _m[_nc + _incidence[q]];
            sum += part;
            slope += v * part;
        }
        return Math.Log(_total[a] / sum) * sum / slope;
    }

    private double ProtonStep()
    {
        double pos = Math.Max(-_protonTotal, 0), neg = Math.Max(_protonTotal, 0), slopePos = 0, slopeNeg = 0;
        for (var a = 0; a < _nc; a++)
        {
            var part = _proton[a] * _m[a];
            if (part > 0) { pos += part; if (a == 0) slopePos += part; } else neg -= part;
        }
        for (var q = 0; q < _ns; q++)
        {
            var part = _proton[_nc + q] * _m[_nc + q];
            if (part > 0) pos += part; else neg -= part;
        }
        for (var q = _incidenceStart[0]; q < _incidenceStart[1]; q++)
        {
            var i = _incidence[q];
            double v = _incidenceCoefficient[q], part = _proton[_nc + i] * _m[_nc + i];
            if (part > 0) slopePos += v * part; else slopeNeg -= v * part;
        }
        var slope = slopePos / pos - slopeNeg / neg;
        return slope > 1e-6 ? Math.Clamp(-Math.Log(pos / neg) / slope, -6, 6) : 0;
    }

    /// <summary>
    /// Moves one ln m and the molalities of the complexes that hold the component, by powers where that is safe: the rounding it leaves
    /// is gone with the next <see cref="Molalities"/>.
    /// </summary>
    private void Shift(int a, double change)
    {
        const int powers = 8;
        _x[a] += change;
        _m[a] = Math.Exp(Math.Min(_x[a], LargestLnMolality));
        Span<double> power = stackalloc double[2 * powers + 1];
        power[powers] = 1;
        double up = Math.Exp(change), down = 1 / up;
        for (var k = 1; k <= powers; k++)
        {
            power[powers + k] = power[powers + k - 1] * up;
            power[powers - k] = power[powers - k + 1] * down;
        }
        var safe = Math.Abs(change) < 20;
        ReadOnlySpan<int> with = _incidence.AsSpan(_incidenceStart[a], _incidenceStart[a + 1] - _incidenceStart[a]);
        ReadOnlySpan<double> times = _incidenceCoefficient.AsSpan(_incidenceStart[a], with.Length);
        Span<double> m = _m.AsSpan(_nc, _ns), lnM = _lnM.AsSpan(_nc, _ns);
        for (var q = 0; q < with.Length; q++)
        {
            var i = with[q];
            var v = times[q];
            var ln = lnM[i] += v * change;
            var whole = (int)v;
            m[i] = safe && m[i] > 0 && ln is > -74 and < LargestLnMolality && whole == v && Math.Abs(whole) <= powers
                ? m[i] * power[powers + whole]
                : Exp(ln);
        }
    }
}
