namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>Where an iteration begins: from nothing, from far below, or from the state of a neighbour.</summary>
internal sealed class Beginning(Problem problem, Iterate at, Activity activity, Descent descent)
{
    private readonly Stoichiometry _s = problem.S;

    /// <summary>Everything free, at a pH, with the ionic strength of that.</summary>
    public void Anew(double startPh)
    {
        double strength = 0;
        at.LnW = 0;
        at.X[0] = -(problem.FixedPh ?? startPh) * Problem.Ln10;
        for (var a = 1; a < _s.ComponentCount; a++)
        {
            at.X[a] = a == _s.Gas ? -14 : Math.Log(problem.Total[a]);
            strength += _s.Charge[a] * _s.Charge[a] * problem.Total[a];
        }
        var inert = _s.ComponentCount + _s.ComplexCount;
        for (var i = 0; i < problem.InertMol.Length; i++) strength += _s.Charge[inert + i] * _s.Charge[inert + i] * problem.InertMol[i];
        at.LnI = Math.Log(Math.Clamp(strength / 2, 1e-6, 8));
        Array.Clear(at.M);
        for (var a = 0; a < _s.ComponentCount; a++) at.M[a] = Math.Exp(at.X[a]);
        for (var i = 0; i < problem.InertMol.Length; i++) at.M[inert + i] = problem.InertMol[i];
        activity.Coefficients();
    }

    /// <summary>
    /// Free molalities so low that no complex is more than a trace: below the answer Newton climbs, above it a polymer blinds it.
    /// </summary>
    public void Low()
    {
        for (var low = 0; low < 30; low++)
        {
            for (var a = 1; a < _s.ComponentCount; a++) if (a != _s.Gas) at.X[a] = Math.Log(problem.Total[a]) - 3 * low;
            at.TieGas();
            activity.Molalities();
            var highest = double.NegativeInfinity;
            for (var i = 0; i < _s.ComplexCount; i++)
                if (_s.Term.AsSpan(_s.Start[i], _s.Start[i + 1] - _s.Start[i]) is not [0])
                {
                    highest = Math.Max(highest, at.LnM[_s.ComponentCount + i]);
                }
            foreach (var s in descent.Soft) highest = Math.Max(highest, at.LnSaturation(s) - 3);
            if (highest < -3) break;
        }
        at.FreeMolalities();
    }

    /// <summary>Takes over the state of a neighbour; false when it has not all the components.</summary>
    public bool From(Equilibrium neighbour)
    {
        at.LnW = 0;
        // Both lists are in table order and share the tables' names.
        var found = 0;
        var species = neighbour.AllSpecies;
        for (var i = 0; i < _s.ComponentCount + _s.ComplexCount; i++)
        {
            var name = i < _s.ComponentCount
                ? Components.Names[_s.TableComponent[i]]
                : ThermoTables.SpeciesNames[_s.TableSpecies[i - _s.ComponentCount]];
            var next = found;
            while (next < species.Length && !ReferenceEquals(species[next].Name, name)) next++;
            var has = next < species.Length;
            at.M[i] = has ? species[next].MolPerKg : 0;
            if (has) found = next + 1;
            if (i >= _s.ComponentCount) continue;
            if (!(at.M[i] > 0)) return false;
            at.X[i] = Math.Log(at.M[i]);
        }
        at.LnI = Math.Log(Math.Clamp(neighbour.IonicStrength, Iterate.LowestI, Iterate.HighestI));
        return true;
    }
}
