namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>
/// What takes part in one solution: the components that are present and every species made of them, numbered for this solution alone,
/// components first, then complexes, then inert ions. Never changes.
/// </summary>
internal sealed class Stoichiometry
{
    private static readonly ulong[] SpeciesMask = Masks(ThermoTables.SpeciesStart, ThermoTables.SpeciesTerms);

    /// <summary>Numbers of components (H+ first, water not among them), of complexes, and of everything dissolved.</summary>
    public readonly int ComponentCount, ComplexCount, Count;

    /// <summary>Bits of the components that are present, H+ and water included.</summary>
    public readonly ulong Present;

    /// <summary>The table's number of each component here, and the number here (or -1) of each component of the table.</summary>
    public readonly int[] TableComponent, Local;

    /// <summary>The table's number of each complex.</summary>
    public readonly int[] TableSpecies;

    /// <summary>Where the terms of each complex begin; the components and their coefficients, by component number.</summary>
    public readonly int[] Start, Term;
    public readonly double[] Coefficient;

    /// <summary>Molecules of water a complex is formed from; negative when it sets some free.</summary>
    public readonly double[] Water;

    /// <summary>Charge number of everything dissolved, and its square.</summary>
    public readonly double[] Charge, ChargeSquared;

    /// <summary>What a component or complex counts in the proton condition.</summary>
    public readonly double[] Proton;

    /// <summary>The same terms by component: where its complexes begin, which they are, and with what coefficient it is in them.</summary>
    public readonly int[] IncidenceStart, Incidence;
    public readonly double[] IncidenceCoefficient;

    /// <summary>The component whose activity is set by a gas; -1 when the solution is closed.</summary>
    public readonly int Gas = -1;

    // Looked up when a salt asks; whoever comes first fills it in, and everyone would fill in the same.
    private readonly int[]?[] _withoutProtons;

    public Stoichiometry(ConstantSet set, SolutionInput input)
    {
        var totals = input.Totals.MolPerKg;
        Local = new int[Components.Count];
        Array.Fill(Local, -1);
        Present = 1UL << Components.Hydrogen | 1UL << Components.Water;
        Local[Components.Hydrogen] = 0;
        Span<int> present = stackalloc int[totals.Length];
        ComponentCount = 1;
        for (var i = 2; i < totals.Length; i++)
        {
            var open = i == Components.Carbonate && input.CarbonDioxideAtm is > 0;
            if (totals[i] <= 0 && !open) continue;
            if (open) Gas = ComponentCount;
            Present |= 1UL << i;
            present[ComponentCount] = i;
            Local[i] = ComponentCount++;
        }

        TableComponent = present[..ComponentCount].ToArray();
        _withoutProtons = new int[]?[ComponentCount];
        Span<int> chosen = stackalloc int[SpeciesMask.Length];
        var terms = 0;
        for (var i = 0; i < SpeciesMask.Length; i++)
        {
            if ((SpeciesMask[i] & ~Present) != 0 || double.IsNaN(set.SpeciesLogK[6 * i])) continue;
            chosen[ComplexCount++] = i;
            terms += ThermoTables.SpeciesStart[i + 1] - ThermoTables.SpeciesStart[i];
        }

        TableSpecies = chosen[..ComplexCount].ToArray();
        Count = ComponentCount + ComplexCount + input.InertIons.Count;
        (Start, Term, Coefficient, Water) = (new int[ComplexCount + 1], new int[terms], new double[terms], new double[ComplexCount]);
        (Charge, ChargeSquared, Proton) = (new double[Count], new double[Count], new double[ComponentCount + ComplexCount]);
        Describe(input);
        for (var i = 0; i < Count; i++) ChargeSquared[i] = Charge[i] * Charge[i];
        (IncidenceStart, Incidence, IncidenceCoefficient) =
            (new int[ComponentCount + 1], new int[Start[ComplexCount]], new double[Start[ComplexCount]]);
        Invert();
    }

    /// <summary>Charges, proton numbers and terms.</summary>
    private void Describe(SolutionInput input)
    {
        for (var a = 0; a < ComponentCount; a++) Charge[a] = Components.Charge(TableComponent[a]);
        for (var i = 0; i < input.InertIons.Count; i++) Charge[ComponentCount + ComplexCount + i] = input.InertIons[i].Charge;
        Proton[0] = 1;
        if (Gas >= 0) Proton[Gas] = Charge[Gas];
        var at = 0;
        for (var i = 0; i < ComplexCount; i++)
        {
            var s = TableSpecies[i];
            Start[i] = at;
            Charge[ComponentCount + i] = ThermoTables.SpeciesCharges[s];
            for (int t = ThermoTables.SpeciesStart[s]; t < ThermoTables.SpeciesStart[s + 1]; t++)
            {
                int c = ThermoTables.SpeciesTerms[t];
                var v = ThermoTables.SpeciesCoefficients[t];
                if (c == Components.Water) { Water[i] = v; continue; }
                var a = Local[c];
                // By component number, so that the products of two have one half to fill.
                var slot = at++;
                for (; slot > Start[i]
                    && Term[slot - 1] > a; slot--) (Term[slot], Coefficient[slot]) = (Term[slot - 1], Coefficient[slot - 1]);
                (Term[slot], Coefficient[slot]) = (a, v);
                if (a == 0) Proton[ComponentCount + i] += v;
                else if (a == Gas) Proton[ComponentCount + i] += v * Charge[a];
            }
        }
        Start[ComplexCount] = at;
    }

    private void Invert()
    {
        for (var t = 0; t < Start[ComplexCount]; t++) IncidenceStart[Term[t] + 1]++;
        for (var a = 0; a < ComponentCount; a++) IncidenceStart[a + 1] += IncidenceStart[a];
        Span<int> next = stackalloc int[ComponentCount];
        IncidenceStart.AsSpan(0, ComponentCount).CopyTo(next);
        for (var i = 0; i < ComplexCount; i++)
            for (var t = Start[i]; t < Start[i + 1]; t++)
            {
                var slot = next[Term[t]]++;
                Incidence[slot] = i;
                IncidenceCoefficient[slot] = Coefficient[t];
            }
    }

    /// <summary>A component's own molality and what its complexes hold of it, mol per kg of water.</summary>
    public double Sum(int component, double[] molality)
    {
        var sum = molality[component];
        for (var q = IncidenceStart[component]; q < IncidenceStart[component + 1]; q++)
            sum += IncidenceCoefficient[q] * molality[ComponentCount + Incidence[q]];
        return sum;
    }

    /// <summary>The component that a complex is made of by losing protons and nothing else, such as H2PO4- of HPO4-2; else 0.</summary>
    public int AcidOf(int complex)
    {
        if (Start[complex + 1] - Start[complex] != 2 || Water[complex] != 0) return 0;
        int first = Start[complex], proton = Term[first] == 0 ? first : first + 1;
        return Term[proton] == 0 && Coefficient[proton] < 0 ? Term[first == proton ? first + 1 : first] : 0;
    }

    /// <summary>The complexes that are a component without some of its protons; empty where it cannot lose any.</summary>
    public int[] WithoutProtons(int component)
    {
        if (_withoutProtons[component] is { } known) return known;
        List<int>? found = null;
        for (var q = IncidenceStart[component]; q < IncidenceStart[component + 1]; q++)
            if (AcidOf(Incidence[q]) == component) (found ??= []).Add(Incidence[q]);
        return _withoutProtons[component] = found is null ? [] : [.. found];
    }

    /// <summary>Molecules of water in a kilogram of it and in the complexes, mol per kg.</summary>
    public double WaterIn(double[] molality)
    {
        var sum = Problem.MolWater;
        for (var i = 0; i < ComplexCount; i++) sum += Water[i] * molality[ComponentCount + i];
        return sum;
    }

    /// <summary>For every two components the sum over complexes of molality times both numbers: symmetric, row by row.</summary>
    public void Products(Span<double> products, double[] molalities)
    {
        var n = ComponentCount;
        products = products[..(n * n)];
        products.Clear();
        ReadOnlySpan<double> molality = molalities.AsSpan(ComponentCount, ComplexCount), coefficient = Coefficient;
        ReadOnlySpan<int> term = Term, start = Start;
        for (var i = 0; i < molality.Length; i++)
        {
            var m = molality[i];
            if (m == 0) continue;
            int from = start[i], to = start[i + 1];
            for (var t = from; t < to; t++)
            {
                var w = coefficient[t] * m;
                var row = products.Slice(term[t] * n, n);
                for (var u = from; u <= t; u++) row[term[u]] += w * coefficient[u];
            }
        }
        for (var a = 1; a < n; a++) for (var b = 0; b < a; b++) products[b * n + a] = products[a * n + b];
    }

    internal static ulong[] Masks(ReadOnlySpan<ushort> start, ReadOnlySpan<byte> terms)
    {
        var masks = new ulong[start.Length - 1];
        for (var i = 0; i < masks.Length; i++)
            for (int t = start[i]; t < start[i + 1]; t++) masks[i] |= 1UL << terms[t];
        return masks;
    }
}
