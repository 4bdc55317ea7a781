using System.Globalization;

namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>Turns a solved state into an immutable result.</summary>
internal sealed class ResultWriter(SolverRun solve, SolutionInput input)
{
    private static readonly ulong[] SolidMask = Stoichiometry.Masks(ThermoTables.SolidStart, ThermoTables.SolidTerms);

    /// <summary>
    /// Uncharged molecules, mol/kg, from which the answer is an estimate and beyond which it is a guess: nothing here tells how they act on
    /// each other. Held against Robinson and Stokes, Electrolyte Solutions (recalled), the osmotic coefficient of sucrose is 23 % too low
    /// at 3 mol/kg and that of urea 22 % too high at 8.
    /// </summary>
    private const double ManyUncharged = 2, MostUncharged = 8;

    /// <summary>
    /// Silicate, mol/kg, from which it joins to larger anions than the constants know. Potassium silicate of 29 °Bé stands at about pH 11.3
    /// (safety data sheets, recalled), where they give 9.3.
    /// </summary>
    private const double MostSilicate = 0.5;

    private static readonly Validity _inRange = new(Trust.InRange, []);

    private readonly Problem _problem = solve.Problem;
    private readonly Stoichiometry _s = solve.Problem.S;
    private readonly Iterate _at = solve.At;

    public Equilibrium Result()
    {
        var (charge, magnitude) = ChargeSums();
        var (uncharged, acids) = Uncharged();
        return new Equilibrium(Species(), SolidIndices(), Judge(uncharged), solve.Iterations)
        {
            Celsius = input.Celsius,
            Effort = solve.Effort,
            Ph = -_at.LnActivity(0) / Problem.Ln10,
            IonicStrength = _at.Ionic,
            WaterActivity = Math.Exp(_at.LnAw),
            UnchargedMolPerKg = uncharged,
            UnchargedAcidMolPerKg = acids,
            MassResidual = MassResidual(),
            ChargeResidual = input.FixedPh is null ? charge / Math.Max(magnitude, 1e-300) : 0,
            ChargeGapEquivalentsPerKg = charge,
            LogProtonated = LogProtonated(),
        };
    }

    /// <summary>mol per kg of the water left, by component.</summary>
    public ComponentTotals Remaining()
    {
        Span<double> totals = stackalloc double[Components.Count];
        for (var a = 1; a < _s.ComponentCount; a++) totals[_s.TableComponent[a]] = solve.Dissolved(a);
        return ComponentTotals.Of(totals);
    }

    private double[] LogProtonated()
    {
        Span<double> lost = stackalloc double[_s.ComponentCount];
        var log = new double[Components.Count];
        for (var i = 0; i < _s.ComplexCount; i++)
        {
            if (_s.AcidOf(i) is > 0 and var acid) lost[acid] += _at.M[_s.ComponentCount + i];
        }

        for (var a = 1; a < lost.Length; a++)
        {
            if (lost[a] == 0) continue;
            var kept = 1 - lost[a] / _s.Sum(a, _at.M);
            log[_s.TableComponent[a]] = Math.Log10(Math.Clamp(kept / ProtonShare.KeptByPureSalts, 1e-12, 1));
        }

        return log;
    }

    private SpeciesAmount[] Species()
    {
        var species = new SpeciesAmount[_s.Count];
        int free = _s.ComponentCount, inert = free + _s.ComplexCount;
        for (var i = 0; i < species.Length; i++)
        {
            var name = i < free ? Components.Names[_s.TableComponent[i]]
                : i < inert ? ThermoTables.SpeciesNames[_s.TableSpecies[i - free]] : input.InertIons[i - inert].Name;
            var ln = i < inert ? _at.LnM[i] + _at.LnGamma[i] : Math.Log(Math.Max(_at.M[i], 1e-300)) + _at.LnGamma[i];
            species[i] = new SpeciesAmount(name, (int)_s.Charge[i], _at.M[i], ln / Problem.Ln10);
        }
        return species;
    }

    private SolidIndex[] SolidIndices()
    {
        Span<double> activity = stackalloc double[Components.Count];
        for (var a = 0; a < _s.ComponentCount; a++) activity[_s.TableComponent[a]] = _at.LnActivity(a);
        activity[Components.Water] = _at.LnAw;
        var solids = _problem.Set.All;
        var count = 0;
        for (var k = 0; k < solids.Length; k++) if ((SolidMask[solids[k].Table] & ~_s.Present) == 0) count++;
        var result = new SolidIndex[count];
        count = 0;
        for (var k = 0; k < solids.Length; k++)
        {
            var table = solids[k].Table;
            if ((SolidMask[table] & ~_s.Present) != 0) continue;
            double ln = 0;
            for (int t = ThermoTables.SolidStart[table]; t < ThermoTables.SolidStart[table + 1]; t++)
                ln += ThermoTables.SolidCoefficients[t] * activity[ThermoTables.SolidTerms[t]];
            result[count++] = new SolidIndex(solids[k], ln / Problem.Ln10 - _problem.SolidLogK(k));
        }
        return result;
    }

    private (double Sum, double Magnitude) ChargeSums()
    {
        double charge = 0, magnitude = 0;
        for (var i = 0; i < _s.Count; i++)
        {
            charge += _s.Charge[i] * _at.M[i];
            magnitude += Math.Abs(_s.Charge[i]) * _at.M[i];
        }
        return (charge, magnitude);
    }

    private double MassResidual()
    {
        double worst = 0, water = _at.WaterKg;
        for (var a = 1; a < _s.ComponentCount; a++)
        {
            if (a == _s.Gas) continue;
            var sum = _s.Sum(a, _at.M);
            sum *= water;
            foreach (var s in solve.Solids.Present)
                for (var t = 0; t < s.Term.Length; t++) if (s.Term[t] == a) sum += s.Coefficient[t] * s.Amount;
            worst = Math.Max(worst, Math.Abs(sum / _problem.Total[a] - 1));
        }
        return worst;
    }

    /// <summary>Molecules without a charge that are no pairs of ions, and the acids among them, mol/kg.</summary>
    private (double All, double Acids) Uncharged()
    {
        double all = 0, acids = 0;
        for (var i = 1; i < _s.Count; i++)
        {
            if (_s.Charge[i] != 0) continue;
            var complex = i - _s.ComponentCount;
            if (complex < 0 || complex >= _s.ComplexCount)
            {
                all += _at.M[i];
                continue;
            }

            double protons = 0, others = 0;
            for (var t = _s.Start[complex]; t < _s.Start[complex + 1]; t++)
            {
                if (_s.Term[t] == 0) protons += _s.Coefficient[t];
                else others++;
            }

            if (others > 1) continue;
            all += _at.M[i];
            acids += protons > 0 ? _at.M[i] : 0;
        }
        return (all, acids);
    }

    private Validity Judge(double uncharged)
    {
        List<string> reasons = [];
        var trust = Trust.InRange;
        var ionic = _at.Ionic;
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
        for (var i = _s.ComponentCount + _s.ComplexCount; i < _s.Count; i++) inert += _s.Charge[i] * _s.Charge[i] * _at.M[i] / 2;
        if (inert > 0.01 * ionic && inert > 1e-9)
        {
            if (trust == Trust.InRange) trust = Trust.Estimate;
            reasons.Add(string.Create(CultureInfo.InvariantCulture,
                $"Ions without constants make {100 * inert / ionic:0.#} % of the ionic strength."));
        }
        if (_at.LnAw > 0)
        {
            trust = Trust.OutOfRange;
            reasons.Add("The model's water activity is above 1, which no solution has.");
        }
        if (-_at.LnActivity(0) / Problem.Ln10 is < SolutionInput.LowestPh or > SolutionInput.HighestPh)
        {
            trust = Trust.OutOfRange;
            reasons.Add(_at.LnActivity(0) > 0
                ? "The acid is stronger than the model covers: its pH is not known, only that it lies below 0."
                : "The lye is stronger than the model covers: its pH is not known, only that it lies above 14.");
        }
        if (UreaPastItsSolubility() is { } urea)
        {
            trust = Trust.OutOfRange;
            reasons.Add(urea);
        }
        foreach (var (isBeyond, reason) in OfMolecules(uncharged))
        {
            trust = isBeyond ? Trust.OutOfRange : trust == Trust.InRange ? Trust.Estimate : trust;
            reasons.Add(reason);
        }
        return trust == Trust.InRange ? _inRange : new Validity(trust, reasons);
    }

    private IEnumerable<(bool IsBeyond, string Reason)> OfMolecules(double uncharged)
    {
        if (uncharged > ManyUncharged)
        {
            yield return (uncharged > MostUncharged, string.Create(CultureInfo.InvariantCulture,
                $"Molecules without a charge, {uncharged:0.0} mol/kg, are above "
                    + $"{(uncharged > MostUncharged ? MostUncharged : ManyUncharged):0} mol/kg: how they act on each other is "
                    + $"not in the model, and pH, indexes and the activity of the water are "
                    + $"{(uncharged > MostUncharged ? "a guess" : "good to about a quarter")}."));
        }

        for (var a = 1; a < _s.ComponentCount; a++)
        {
            if (Components.Names[_s.TableComponent[a]] == Component.Silicate && solve.Dissolved(a) is > MostSilicate and var silicate)
            {
                yield return (true, string.Create(CultureInfo.InvariantCulture,
                    $"Of silicate there are {silicate:0.0} mol/kg, above {MostSilicate:0.0} mol/kg: it joins to larger anions than "
                        + $"the model knows, and its pH is computed too low."));
            }
        }
    }

    private string? UreaPastItsSolubility()
    {
        for (var i = 0; i < input.InertIons.Count; i++)
        {
            if (input.InertIons[i].Name != UreaSolubility.Name) continue;
            var molality = _at.M[_s.ComponentCount + _s.ComplexCount + i];
            var holds = UreaSolubility.MolPerKg(input.Celsius, Remaining());
            if (molality > holds)
            {
                return string.Create(CultureInfo.InvariantCulture,
                    $"Of urea there are {molality:0.0} mol/kg and water holds {holds:0.0} beside what else is in it: "
                        + $"what is more may crystallise.");
            }
        }

        return null;
    }
}
