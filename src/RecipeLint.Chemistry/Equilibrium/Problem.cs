namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>
/// The numeric problem for one solution: what takes part, its constants at the temperature, and what must be conserved. Everything here is
/// in natural logarithms, mol per kg of water and mol per kg of initial water. The equations are written out in method.md.
/// </summary>
internal sealed class Problem
{
    public const double Ln10 = 2.302585092994046;

    /// <summary>mol of water in a kilogram, the value of the reference calculations.</summary>
    public const double MolWater = 55.50837;

    private readonly double _kelvin, _log10Kelvin;

    public readonly ConstantSet Set;
    private readonly TakingPart _part;
    private Workplace? _work;

    public readonly Stoichiometry S;
    public readonly IonPairs Pairs;

    /// <summary>The coefficient of each pair in natural logarithms at ionic strength 1, kg/mol.</summary>
    public readonly double[] PairEpsilon;

    /// <summary>A of Debye and Hueckel, log10 scale, (kg/mol)^0.5.</summary>
    public readonly double LimitingSlope;

    /// <summary>ln K of formation of each complex.</summary>
    public readonly double[] LnK;

    /// <summary>Total of each component, mol/kg; 0 for H+ and for a component set by a gas.</summary>
    public readonly double[] Total;

    /// <summary>Inert ions, mol per kg of initial water.</summary>
    public readonly double[] InertMol;

    /// <summary>ln of what the gas sets: activity of carbonate times that of H+ squared over that of water.</summary>
    public readonly double GasLnTarget;

    public Problem(ConstantSet set, SolutionInput input)
    {
        Set = set;
        _kelvin = input.Celsius + 273.15;
        _log10Kelvin = Math.Log10(_kelvin);
        LimitingSlope = DebyeHueckel.A(input.Celsius);
        _part = set.TakingPartIn(input);
        (S, Pairs) = (_part.S, _part.Pairs);
        _work = _part.Lend();
        Total = _work.Total;
        var totals = input.Totals.MolPerKg;
        for (var a = 1; a < S.ComponentCount; a++) Total[a] = a == S.Gas ? 0 : totals[S.TableComponent[a]];
        LnK = _work.LnK;
        for (var i = 0; i < S.ComplexCount; i++) LnK[i] = LnKAt(set.SpeciesLogK.AsSpan(6 * S.TableSpecies[i], 6));
        InertMol = new double[input.InertIons.Count];
        double inertCharge = 0;
        for (var i = 0; i < InertMol.Length; i++)
        {
            var ion = input.InertIons[i];
            InertMol[i] = ion.MolPerKg;
            inertCharge += ion.Charge * ion.MolPerKg;
        }
        for (var a = 1; a < S.ComponentCount; a++) if (a != S.Gas) ProtonTotal -= S.Charge[a] * Total[a];
        ProtonTotal -= inertCharge;
        FixedPh = input.FixedPh;
        if (S.Gas >= 0)
        {
            var atm = input.CarbonDioxideAtm!.Value;
            GasLnTarget = LnKAt(set.GasLogK) + (set.CountsFugacity ? CarbonDioxideGas.LnFugacity(atm, _kelvin) : Math.Log(atm));
        }

        PairEpsilon = _work.PairEpsilon;
        Pairs.EpsilonAt(set.Pairs, _kelvin, PairEpsilon);
    }

    /// <summary>What the solve works in.</summary>
    public Workplace Work => _work!;

    /// <summary>Gives the arrays back; nothing of this solve may be asked any more.</summary>
    public void Release()
    {
        if (Interlocked.Exchange(ref _work, null) is { } work) _part.TakeBack(work);
    }

    /// <summary>
    /// Protons to be accounted for, mol/kg: what charge balance asks for, or what a solution had before anything fell out.
    /// </summary>
    public double ProtonTotal { get; private set; }

    /// <summary>Water to be accounted for, mol per kg of initial water.</summary>
    public double WaterTotal { get; private set; } = MolWater;

    /// <summary>The pH when it is given.</summary>
    public double? FixedPh { get; private set; }

    /// <summary>Takes the protons and the water of a state as what must be conserved while solids form.</summary>
    /// <param name="at">The state.</param>
    /// <param name="holdPh">A given pH stays given: then it decides the protons, not their balance.</param>
    public void ConserveProtonsAndWater(Iterate at, bool holdPh)
    {
        double protons = 0;
        for (var i = 0; i < S.ComponentCount + S.ComplexCount; i++) protons += S.Proton[i] * at.M[i];
        ProtonTotal = protons;
        WaterTotal = S.WaterIn(at.M);
        FixedPh = holdPh ? FixedPh : null;
    }

    /// <summary>ln of the kg of water a solution without solids has; 0 but while it is thought to be thinner.</summary>
    public double LnThinned { get; private set; }

    /// <summary>Thinks of the same amounts in so many times the water; 1 is the solution itself.</summary>
    public void Thin(double times)
    {
        WaterTotal += (times - Math.Exp(LnThinned)) * MolWater;
        LnThinned = Math.Log(times);
    }

    /// <summary>Whether a component's molality follows from a balance, and not from a given pH or gas.</summary>
    public bool IsBalanced(int component) => component == 0 ? FixedPh is null : component != S.Gas;

    /// <summary>A solid of the constant set as this problem sees it; null when a component is missing.</summary>
    /// <param name="index">Its place in the constant set.</param>
    /// <param name="input">The solution as given.</param>
    public ActiveSolid? Describe(int index, SolutionInput input)
    {
        // Most solids lack something here, and lists for them would be made in vain.
        foreach (var (component, _) in Set.Solids[index].Terms)
            if (component != Components.Water && S.Local[component] < 0) return null;
        var terms = new List<int>();
        var coefficients = new List<double>();
        double water = 0, proton = 0;
        foreach (var (component, v) in Set.Solids[index].Terms)
        {
            if (component == Components.Water) { water = v; continue; }
            var a = S.Local[component];
            if (a == 0) proton += v;
            else if (a == S.Gas) proton += v * S.Charge[a];
            terms.Add(a);
            coefficients.Add(v);
        }
        var pure = LnPure(Set.Solids[index], terms, coefficients, input);
        return new ActiveSolid
        {
            Index = index,
            Term = [.. terms],
            Coefficient = [.. coefficients],
            Water = water,
            Proton = proton,
            LnK = LnKAt(Set.SolidLogK.AsSpan(6 * index, 6)),
            LnPure = pure,
            HeldBy = pure is null ? [] : HeldBy(Set.Solids[index], input.Celsius),
            Protonated = pure is null ? [] : Protonated(Set.Solids[index], terms, coefficients, input.Totals),
        };
    }

    /// <summary>
    /// The second measure of a soluble salt; only the product set has it, and none where the air decides how much there is of an ion.
    /// </summary>
    private double? LnPure(Solid solid, List<int> terms, List<double> coefficients, SolutionInput input)
    {
        if (!Set.HasHandbook || !SaltVerdicts.IsOfTotals(solid) || terms.Contains(S.Gas)
            || SaltVerdicts.Solubility(solid, _kelvin - 273.15) is not { } handbook)
        {
            return null;
        }

        var sum = Ln10 * SaltsInCompany.LogHeldByUrea(solid, input);
        for (var t = 0; t < terms.Count; t++) sum += coefficients[t] * Math.Log(coefficients[t] * handbook);
        return sum;
    }

    private SaltsInCompany.Pair[] HeldBy(Solid solid, double celsius)
    {
        var pairs = SaltsInCompany.HeldByPairs(solid, celsius);
        if (pairs.Length == 0) return pairs;
        var here = new List<SaltsInCompany.Pair>(pairs.Length);
        foreach (var pair in pairs)
        {
            if (S.Local[pair.First] is >= 0 and var first && S.Local[pair.Second] is >= 0 and var second)
                here.Add(pair with { First = first, Second = second });
        }

        return [.. here];
    }

    /// <summary>
    /// Of the totals only what still has its protons can crystallise as the salt; it becomes less while an acid salt falls out, so it is
    /// read from the state and not from the clear solution.
    /// </summary>
    private ProtonShare[] Protonated(Solid solid, List<int> terms, List<double> coefficients, ComponentTotals totals)
    {
        List<ProtonShare>? shares = null;
        for (var t = 0; t < terms.Count; t++)
        {
            var powers = coefficients[t] + SaltsInCompany.PowersOfProtonShare(solid, S.TableComponent[terms[t]], totals);
            if (ProtonShare.Of(S, terms[t], powers) is { } share) (shares ??= []).Add(share);
        }

        return shares is null ? [] : [.. shares];
    }

    /// <summary>log10 K of a solid of the set at the temperature of the solution.</summary>
    public double SolidLogK(int index) => ConstantSet.LogK(Set.SolidLogK.AsSpan(6 * index, 6), _kelvin, _log10Kelvin);

    private double LnKAt(ReadOnlySpan<double> coefficients) => Ln10 * ConstantSet.LogK(coefficients, _kelvin, _log10Kelvin);
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
        double Slope(
            ReadOnlySpan<double> v, int k) => k == 0 ? v[1] - v[0] : k == v.Length - 1 ? v[k] - v[k - 1] : (v[k + 1] - v[k - 1]) / 2;
        double s0 = Slope(a, i), s1 = Slope(a, i + 1), u = (celsius - t[i]) / step;
        double u2 = u * u, u3 = u2 * u;
        return (2 * u3 - 3 * u2 + 1) * a[i] + (u3 - 2 * u2 + u) * s0 + (-2 * u3 + 3 * u2) * a[i + 1] + (u3 - u2) * s1;
    }
}
