namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>
/// The numeric problem for one solution: only the species whose components are present, in arrays that live as long as the solve.
/// Unknowns are the logarithms of the free component molalities and of the ionic strength; with solids also their amounts and the mass
/// of water. Everything here is in natural logarithms, mol per kg of water and mol per kg of initial water.
/// </summary>
internal sealed partial class Kernel
{
    public const double Ln10 = 2.302585092994046;

    /// <summary>mol of water in a kilogram, the value of the reference calculations.</summary>
    public const double MolWater = 55.50837;

    private static readonly ulong[] SpeciesMask = Masks(ThermoTables.SpeciesStart, ThermoTables.SpeciesTerms);

    private readonly ConstantSet _set;
    private readonly double _kelvin, _log10Kelvin, _debyeHueckel;
    private readonly int _nc, _ns, _nt;
    private readonly int[] _component, _local, _species;
    private readonly int[] _start, _term;
    private readonly double[] _coefficient, _water, _lnK;
    private readonly double[] _z, _proton;
    private readonly int[] _incidenceStart, _incidence;
    private readonly double[] _incidenceCoefficient;
    private readonly int[] _pairA, _pairB;
    private readonly double[] _pairE1, _pairE2;
    private readonly int[] _pairedRow;
    private readonly int _pairedCount;
    private readonly double[] _total, _inertMol;
    private double _protonTotal;
    private double _waterTotal = MolWater;

    /// <summary>Takes the protons and the water of the state at hand as what must be conserved while solids form.</summary>
    internal void ConserveProtonsAndWater()
    {
        double protons = 0;
        for (var i = 0; i < _nc + _ns; i++) protons += _proton[i] * _m[i];
        _protonTotal = protons;
        _waterTotal = WaterInSpecies();
        _fixedPh = null;
    }

    private double? _fixedPh;
    private readonly int _gasComponent = -1;
    private readonly double _gasLnTarget;

    public Kernel(ConstantSet set, SolutionInput input)
    {
        _set = set;
        _kelvin = input.Celsius + 273.15;
        _log10Kelvin = Math.Log10(_kelvin);
        _debyeHueckel = DebyeHueckel.A(input.Celsius);
        var totals = input.Totals.MolPerKg;

        _local = new int[Components.Count];
        Array.Fill(_local, -1);
        ulong present = 1UL << Components.Hydrogen | 1UL << Components.Water;
        var count = 1;
        for (var i = 2; i < totals.Length; i++) if (totals[i] > 0 || (i == Components.Carbonate && input.CarbonDioxideAtm is > 0)) count++;
        _nc = count;
        _component = new int[count];
        _total = new double[count];
        _local[Components.Hydrogen] = 0;
        count = 1;
        for (var i = 2; i < totals.Length; i++)
        {
            var open = i == Components.Carbonate && input.CarbonDioxideAtm is > 0;
            if (totals[i] <= 0 && !open) continue;
            if (open) _gasComponent = count;
            _component[count] = i;
            _total[count] = open ? 0 : totals[i];
            _local[i] = count++;
            present |= 1UL << i;
        }

        Span<int> chosen = stackalloc int[SpeciesMask.Length];
        int terms = 0;
        for (var i = 0; i < SpeciesMask.Length; i++)
            if ((SpeciesMask[i] & ~present) == 0 && !double.IsNaN(set.SpeciesLogK[6 * i]))
            {
                chosen[_ns++] = i;
                terms += ThermoTables.SpeciesStart[i + 1] - ThermoTables.SpeciesStart[i];
            }
        _species = chosen[.._ns].ToArray();
        _nt = _nc + _ns + input.InertIons.Count;
        _start = new int[_ns + 1];
        _term = new int[terms];
        _coefficient = new double[terms];
        _water = new double[_ns];
        _lnK = new double[_ns];
        _z = new double[_nt];
        _proton = new double[_nc + _ns];
        var counts = new int[_nc + 1];
        var at = 0;
        for (var a = 0; a < _nc; a++) _z[a] = Components.Charge(_component[a]);
        _proton[0] = 1;
        if (_gasComponent >= 0) _proton[_gasComponent] = _z[_gasComponent];
        for (var i = 0; i < _ns; i++)
        {
            var s = _species[i];
            _start[i] = at;
            _lnK[i] = Ln10 * ConstantSet.LogK(set.SpeciesLogK.AsSpan(6 * s, 6), _kelvin, _log10Kelvin);
            _z[_nc + i] = ThermoTables.SpeciesCharges[s];
            for (int t = ThermoTables.SpeciesStart[s]; t < ThermoTables.SpeciesStart[s + 1]; t++)
            {
                int c = ThermoTables.SpeciesTerms[t];
                var v = ThermoTables.SpeciesCoefficients[t];
                if (c == Components.Water) { _water[i] = v; continue; }
                var a = _local[c];
                // By component number, so that the products of two have one half to fill.
                var slot = at++;
                for (; slot > _start[i] && _term[slot - 1] > a; slot--) (_term[slot], _coefficient[slot]) = (_term[slot - 1], _coefficient[slot - 1]);
                (_term[slot], _coefficient[slot]) = (a, v);
                counts[a + 1]++;
                if (a == 0) _proton[_nc + i] += v;
                else if (a == _gasComponent) _proton[_nc + i] += v * _z[a];
            }
        }
        _start[_ns] = at;

        for (var a = 0; a < _nc; a++) counts[a + 1] += counts[a];
        _incidenceStart = counts;
        _incidence = new int[at];
        _incidenceCoefficient = new double[at];
        Span<int> next = stackalloc int[_nc];
        _incidenceStart.AsSpan(0, _nc).CopyTo(next);
        for (var i = 0; i < _ns; i++)
            for (var t = _start[i]; t < _start[i + 1]; t++)
            {
                var slot = next[_term[t]]++;
                _incidence[slot] = i;
                _incidenceCoefficient[slot] = _coefficient[t];
            }

        _inertMol = new double[input.InertIons.Count];
        double inertCharge = 0;
        for (var i = 0; i < _inertMol.Length; i++)
        {
            var ion = input.InertIons[i];
            _inertMol[i] = ion.MolPerKg;
            _z[_nc + _ns + i] = ion.Charge;
            inertCharge += ion.Charge * ion.MolPerKg;
        }
        for (var a = 1; a < _nc; a++) if (a != _gasComponent) _protonTotal -= _z[a] * _total[a];
        _protonTotal -= inertCharge;
        _fixedPh = input.FixedPh;
        if (_gasComponent >= 0)
            _gasLnTarget = Ln10 * ConstantSet.LogK(set.GasLogK, _kelvin, _log10Kelvin) + Math.Log(input.CarbonDioxideAtm!.Value);

        (_pairA, _pairB, _pairE1, _pairE2) = SelectPairs(present);
        _pairedRow = new int[_nc + _ns];
        for (var a = 0; a < _nc; a++) _pairedRow[a] = a;
        _pairedRow.AsSpan(_nc).Fill(-1);
        _pairedCount = _nc;
        for (var p = 0; p < _pairA.Length; p++)
        {
            if (_pairedRow[_pairA[p]] < 0) _pairedRow[_pairA[p]] = _pairedCount++;
            if (_pairedRow[_pairB[p]] < 0) _pairedRow[_pairB[p]] = _pairedCount++;
        }

        _x = new double[_nc];
        _m = new double[_nt];
        _lnM = new double[_nt];
        _lnGamma = new double[_nt];
        _gammaI = new double[_nt];
        _gammaUsed = new bool[_pairedCount];
        _gammaRows = new double[_pairedCount * _nc];
        _weighted = new double[(_nc + 1) * _nc];
        _sum = new double[_nc];
        _waterSlope = new double[_nc];
        _columnI = new double[_nc + 1];
        _columnWater = new double[_nc + 1];
    }

    private (int[], int[], double[], double[]) SelectPairs(ulong present)
    {
        Span<int> place = stackalloc int[Components.Count + SpeciesMask.Length];
        place.Fill(-1);
        for (var a = 0; a < _nc; a++) place[_component[a]] = a;
        for (var i = 0; i < _ns; i++) place[Components.Count + _species[i]] = _nc + i;
        var pairs = _set.Pairs;
        var n = 0;
        for (var p = 0; p < pairs.First.Length; p++) if (place[pairs.First[p]] >= 0 && place[pairs.Second[p]] >= 0) n++;
        var result = (new int[n], new int[n], new double[n], new double[n]);
        n = 0;
        for (var p = 0; p < pairs.First.Length; p++)
        {
            int a = place[pairs.First[p]], b = place[pairs.Second[p]];
            if (a < 0 || b < 0) continue;
            (result.Item1[n], result.Item2[n]) = (a, b);
            result.Item3[n] = pairs.Epsilon(p, _kelvin) * Ln10;
            result.Item4[n++] = pairs.EpsilonLogI[p];
        }
        return result;
    }

    internal static ulong[] Masks(ReadOnlySpan<ushort> start, ReadOnlySpan<byte> terms)
    {
        var masks = new ulong[start.Length - 1];
        for (var i = 0; i < masks.Length; i++)
            for (int t = start[i]; t < start[i + 1]; t++) masks[i] |= 1UL << terms[t];
        return masks;
    }
}

/// <summary>The Debye-Hueckel constant over temperature.</summary>
internal static class DebyeHueckel
{
    /// <summary>A on the log10 scale, molal, at a temperature in °C between 0 and 50: the tabulated values, joined by cubic arcs.</summary>
    public static double A(double celsius)
    {
        var t = ThermoTables.DebyeHueckelCelsius;
        var a = ThermoTables.DebyeHueckelA;
        var step = t[1] - t[0];
        var i = Math.Clamp((int)((celsius - t[0]) / step), 0, t.Length - 2);
        double Slope(ReadOnlySpan<double> v, int k) => k == 0 ? v[1] - v[0] : k == v.Length - 1 ? v[k] - v[k - 1] : (v[k + 1] - v[k - 1]) / 2;
        double s0 = Slope(a, i), s1 = Slope(a, i + 1), u = (celsius - t[i]) / step;
        double u2 = u * u, u3 = u2 * u;
        return (2 * u3 - 3 * u2 + 1) * a[i] + (u3 - 2 * u2 + u) * s0 + (-2 * u3 + 3 * u2) * a[i + 1] + (u3 - u2) * s1;
    }
}
