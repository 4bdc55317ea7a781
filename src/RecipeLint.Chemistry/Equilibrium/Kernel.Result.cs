using System.Globalization;

namespace RecipeLint.Chemistry.Equilibrium;

internal sealed partial class Kernel
{
    private static readonly ulong[] SolidMask = Masks(ThermoTables.SolidStart, ThermoTables.SolidTerms);

    /// <summary>The state at hand as an immutable result.</summary>
    public Equilibrium Result(SolutionInput input)
    {
        var species = new SpeciesAmount[_nt];
        for (var i = 0; i < _nt; i++)
        {
            var name = i < _nc ? Components.Names[_component[i]]
                : i < _nc + _ns ? ThermoTables.SpeciesNames[_species[i - _nc]] : input.InertIons[i - _nc - _ns].Name;
            var ln = i < _nc + _ns ? _lnM[i] + _lnGamma[i] : Math.Log(Math.Max(_m[i], 1e-300)) + _lnGamma[i];
            species[i] = new SpeciesAmount(name, (int)_z[i], _m[i], ln / Ln10);
        }
        var (charge, magnitude) = ChargeSums();
        return new Equilibrium(species, SolidIndices(), Judge(), Iterations)
        {
            Celsius = input.Celsius,
            Ph = -(_x[0] + _lnGamma[0]) / Ln10,
            IonicStrength = Ionic,
            WaterActivity = Math.Exp(_lnAw),
            MassResidual = MassResidual(),
            ChargeResidual = _fixedPh is null ? charge / Math.Max(magnitude, 1e-300) : 0,
            ChargeGapEquivalentsPerKg = charge,
        };
    }

    /// <summary>pH of the state at hand.</summary>
    public double Ph => -(_x[0] + _lnGamma[0]) / Ln10;

    private SolidIndex[] SolidIndices()
    {
        ulong present = 1UL << Components.Hydrogen | 1UL << Components.Water;
        for (var a = 1; a < _nc; a++) present |= 1UL << _component[a];
        Span<double> activity = stackalloc double[Components.Count];
        for (var a = 0; a < _nc; a++) activity[_component[a]] = _x[a] + _lnGamma[a];
        activity[Components.Water] = _lnAw;
        var solids = _set.Solids;
        var count = 0;
        for (var k = 0; k < solids.Count; k++) if ((SolidMask[solids[k].Table] & ~present) == 0) count++;
        var result = new SolidIndex[count];
        count = 0;
        for (var k = 0; k < solids.Count; k++)
        {
            var table = solids[k].Table;
            if ((SolidMask[table] & ~present) != 0) continue;
            double ln = 0;
            for (int t = ThermoTables.SolidStart[table]; t < ThermoTables.SolidStart[table + 1]; t++)
                ln += ThermoTables.SolidCoefficients[t] * activity[ThermoTables.SolidTerms[t]];
            var logK = ConstantSet.LogK(_set.SolidLogK.AsSpan(6 * k, 6), _kelvin, _log10Kelvin);
            result[count++] = new SolidIndex(solids[k], ln / Ln10 - logK);
        }
        return result;
    }

    private (double Sum, double Magnitude) ChargeSums()
    {
        double charge = 0, magnitude = 0;
        for (var i = 0; i < _nt; i++)
        {
            charge += _z[i] * _m[i];
            magnitude += Math.Abs(_z[i]) * _m[i];
        }
        return (charge, magnitude);
    }

    private double MassResidual()
    {
        double worst = 0, water = Math.Exp(_lnW);
        for (var a = 1; a < _nc; a++)
        {
            if (a == _gasComponent) continue;
            var sum = _m[a];
            for (var q = _incidenceStart[a]; q < _incidenceStart[a + 1]; q++) sum += _incidenceCoefficient[q] * _m[_nc + _incidence[q]];
            sum *= water;
            foreach (var s in ActiveSolids)
                for (var t = 0; t < s.Term.Length; t++) if (s.Term[t] == a) sum += s.Coefficient[t] * s.Amount;
            worst = Math.Max(worst, Math.Abs(sum / _total[a] - 1));
        }
        return worst;
    }

    private Validity Judge()
    {
        var reasons = new List<string>();
        var trust = Trust.InRange;
        var ionic = Ionic;
        if (ionic > 6)
        {
            trust = Trust.OutOfRange;
            reasons.Add(string.Create(CultureInfo.InvariantCulture,
                $"The ionic strength, {ionic:0.0} mol/kg, is above 6 mol/kg, where activity coefficients of the model are a guess."));
        }
        else if (ionic > 3)
        {
            trust = Trust.Estimate;
            reasons.Add(string.Create(CultureInfo.InvariantCulture,
                $"The ionic strength, {ionic:0.0} mol/kg, is above 3 mol/kg: saturation indices are good to about 0.3."));
        }
        double inert = 0;
        for (var i = _nc + _ns; i < _nt; i++) inert += _z[i] * _z[i] * _m[i] / 2;
        if (inert > 0.01 * ionic && inert > 1e-9)
        {
            if (trust == Trust.InRange) trust = Trust.Estimate;
            reasons.Add(string.Create(CultureInfo.InvariantCulture,
                $"Ions without constants make {100 * inert / ionic:0.#} % of the ionic strength."));
        }
        if (_lnAw > 0)
        {
            trust = Trust.OutOfRange;
            reasons.Add("The model's water activity is above 1, which no solution has.");
        }
        return new Validity(trust, reasons);
    }
}
