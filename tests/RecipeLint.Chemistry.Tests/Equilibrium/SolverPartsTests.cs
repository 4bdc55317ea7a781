using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Chemistry.Tests.Equilibrium;

/// <summary>The small parts that the solver is made of, by hand or against plain loops: its answers forgive them much, only slower.</summary>
public sealed class SolverPartsTests
{
    private static readonly Random Random = new(20261130);

    private static double[] Some(int n) => [.. Enumerable.Range(0, n).Select(_ => (2 * Random.NextDouble()) - 1)];

    /// <summary>Every size up to one that fills all lanes, with a first pivot of nought, so that rows have to change places.</summary>
    [Fact]
    public void EquationsAreSolved()
    {
        for (var n = 1; n <= 19; n++)
        {
            double[] a = Some(n * n), x = Some(n);
            if (n > 1) a[0] = 0;
            double[] b = [.. Enumerable.Range(0, n).Select(i => Enumerable.Range(0, n).Sum(j => a[(i * n) + j] * x[j]))];
            var (factors, solved) = ((double[])a.Clone(), (double[])b.Clone());
            Assert.True(DenseLu.Solve(factors, solved, n));
            Assert.All(x.Zip(solved), p => Assert.Equal(p.First, p.Second, 1e-8));

            var pivots = new int[n];
            factors = (double[])a.Clone();
            Assert.True(DenseLu.Factor(factors, pivots, n));
            for (var k = 0; k < n; k++) Assert.InRange(pivots[k], k, n - 1);
            for (var i = 0; i < n; i++)
                for (var j = 0; j < i; j++) Assert.InRange(factors[(i * n) + j], -1.0, 1.0);
        }
    }

    /// <summary>By hand: 0x + 2y = 4, 3x + 1y = 5.</summary>
    [Fact]
    public void RowsChangePlaces()
    {
        double[] a = [0, 2, 3, 1], b = [4, 5];
        var pivots = new int[2];
        Assert.True(DenseLu.Factor(a, pivots, 2));
        Assert.Equal([3, 1, 0, 2], a);
        Assert.Equal([1, 1], pivots);
        Assert.True(DenseLu.Substitute(a, pivots, b, 2));
        Assert.Equal([1.0, 2.0], b.Select(v => Math.Round(v, 12)));
    }

    [Fact]
    public void SingularEquationsAreNot()
    {
        Assert.False(DenseLu.Solve([0.0], [1.0], 1));
        Assert.False(DenseLu.Solve([1, 2, 2, 4.0], [1, 1.0], 2));
        Assert.False(DenseLu.Solve([double.NaN, 1, 1, 1.0], [1, 1.0], 2));
        Assert.False(DenseLu.Solve([1e-290], [1.0], 1));
        Assert.True(DenseLu.Solve([1e-270], [1e-270], 1));
        Assert.False(DenseLu.Substitute([1.0], [0], [double.PositiveInfinity], 1));
    }

    [Fact]
    public void LanesAreLoops()
    {
        for (var n = 0; n <= 21; n++)
        {
            double[] a = Some(n), b = Some(n);
            var target = Some(n);
            var before = (double[])target.Clone();
            DenseLu.AddScaled(target, a, 0.7);
            for (var i = 0; i < n; i++) Assert.Equal(before[i] + (0.7 * a[i]), target[i], 1e-15);
            Lanes.Scale(target, a, -3);
            for (var i = 0; i < n; i++) Assert.Equal(-3 * a[i], target[i]);
            Lanes.Clamp(target, 0.5);
            for (var i = 0; i < n; i++) Assert.Equal(Math.Clamp(-3 * a[i], -0.5, 0.5), target[i]);
            Assert.Equal(a.Sum(), Lanes.Sum(a), 1e-14);
            Assert.Equal(a.Zip(b).Sum(p => p.First * p.Second), Lanes.Dot(a, b), 1e-14);
            var products = a.Zip(b).Select(p => p.First * p.Second).ToList();
            var (positive, negative) = Lanes.Sides(a, b);
            Assert.Equal(products.Where(p => p > 0).Sum(), positive, 1e-14);
            Assert.Equal(-products.Where(p => p < 0).Sum(), negative, 1e-14);
        }
    }

    /// <summary>Against the library's own, and nought below what counts for nothing.</summary>
    [Fact]
    public void MolalitiesAreExponentials()
    {
        double[] ln = [-800, -74.001, -74, -73.9, -40, -1, -0.3, 0, 1e-9, 0.3, 1, 2.5, 40, 199, 200, 201, 5000];
        for (var from = 0; from < ln.Length; from++)
        {
            var m = new double[ln.Length - from];
            Lanes.Molalities(m, ln.AsSpan(from));
            for (var i = 0; i < m.Length; i++)
            {
                var expected = Activity.Exp(ln[from + i]);
                Assert.Equal(ln[from + i] < -74 ? 0 : Math.Exp(Math.Min(ln[from + i], 200)), expected);
                Assert.Equal(expected, m[i], 4e-16 * expected);
            }
        }
    }

    /// <summary>Every tenth step has to halve the sum of squares, unless it is next to nothing.</summary>
    [Fact]
    public void CreepIsNoticedEveryTenthStep()
    {
        static IEnumerable<int> Noticed(double first, Func<int, double> merit)
        {
            var creep = new Creep(first);
            var at = new List<int>();
            for (var step = 0; step < 40; step++)
                if (creep.Goes(step, merit(step))) at.Add(step);
            return at;
        }

        Assert.Equal([9, 19, 29, 39], Noticed(1, _ => 1));
        Assert.Empty(Noticed(1, step => Math.Pow(0.4, (step + 1) / 10)));
        Assert.Equal([9, 19, 29, 39], Noticed(1, step => Math.Pow(0.6, (step + 1) / 10)));
        Assert.Empty(Noticed(1, step => Math.Pow(0.5, (step + 1) / 10)));
        Assert.Empty(Noticed(1e-7, _ => 1e-7));
        Assert.Equal([29, 39], Noticed(10, step => step < 15 ? 2 : 0.5));
    }

    /// <summary>One half up to 4 mol/kg, none from 6 on, a quarter half way, and the slope between is its derivative.</summary>
    [Theory]
    [InlineData(0, 0.5)]
    [InlineData(4, 0.5)]
    [InlineData(4.5, 0.421875)]
    [InlineData(5, 0.25)]
    [InlineData(5.5, 0.078125)]
    [InlineData(6, 0)]
    [InlineData(9, 0)]
    public void TheCalibratedIndexLosesWeight(double ionic, double share)
    {
        Assert.Equal(share, SaltVerdicts.CalibratedShare(ionic), 1e-12);
        var slope = (SaltVerdicts.CalibratedShare(ionic + 1e-6) - SaltVerdicts.CalibratedShare(ionic - 1e-6)) / 2e-6;
        Assert.Equal(slope, SaltVerdicts.CalibratedShareSlope(ionic), 2e-6);
    }

    /// <summary>At its points the table, between them a curve without a corner.</summary>
    [Fact]
    public void TheLimitingSlopeIsThatOfTheTable()
    {
        var (t, a) = (ThermoTables.DebyeHueckelCelsius.ToArray(), ThermoTables.DebyeHueckelA.ToArray());
        for (var i = 0; i < t.Length; i++)
        {
            Assert.Equal(a[i], DebyeHueckel.A(t[i]), 1e-12);
            if (i + 1 == t.Length) break;
            var middle = DebyeHueckel.A((t[i] + t[i + 1]) / 2);
            double s0 = i == 0 ? a[1] - a[0] : (a[i + 1] - a[i - 1]) / 2, s1 = i + 2 == t.Length ? a[^1] - a[^2] : (a[i + 2] - a[i]) / 2;
            Assert.Equal(((a[i] + a[i + 1]) / 2) + ((s0 - s1) / 8), middle, 1e-12);
        }
    }

    /// <summary>Half way between two temperatures of the table, below its first and above its last; grows between its ends and no more.</summary>
    [Theory]
    [InlineData("Niter", "NH4+", "NO3-", 5, 0.0819, 0.05, 8)]
    [InlineData("Niter", "NH4+", "NO3-", -3, 0.0968, 0, 8)]
    [InlineData("Niter", "NH4+", "NO3-", 60, 0.0088, 7, 8)]
    [InlineData("Niter", "Na+", "NO3-", 25, 0.05895, 0.25, 8)]
    [InlineData("Arcanite", "Mg+2", "SO4-2", 5, 0.3, 0, 1.5)]
    [InlineData("Arcanite", "K+", "Cl-", 22.5, 0.0587, 1.45, 4)]
    [InlineData("Salammoniac", "NH4+", "NO3-", 25, 0.0226, 0, 15)]
    [InlineData("Nitratine", "Na+", "Cl-", 22.5, -0.043, 0, 8)]
    [InlineData("MAP", "NH4+", "Cl-", 10, -0.041, 0, 8)]
    public void SaltsHoldEachOtherAsMeasured(string solid, string first, string second, double celsius, double perMol, double from, double most)
    {
        var pair = SaltsInCompany.HeldByPairs(ConstantSet.Product.FindSolid(solid)!, celsius)
            .Single(p => p.First == Components.Find(first) && p.Second == Components.Find(second));
        Assert.Equal((perMol, from, most), (Math.Round(pair.PerMol, 9), Math.Round(pair.From, 9), pair.Most));
        Assert.Equal(0, pair.Log10(from));
        Assert.Equal(perMol, pair.Log10(from + 1) / Math.Min(1, most - from), 1e-9);
        Assert.Equal(perMol * (most - from), pair.Log10(100), 1e-9);
        Assert.Equal((false, true, false), (pair.GrowsAt(pair.From), pair.GrowsAt((pair.From + most) / 2), pair.GrowsAt(most)));
    }

    [Fact]
    public void OfASaltInNoCompanyNothingIsKnown() => Assert.Empty(SaltsInCompany.HeldByPairs(ConstantSet.Product.FindSolid("Gypsum")!, 20));

    /// <summary>By hand: half ammonium and half potassium count 2.75 times more, beside as much sodium half of it; others not at all.</summary>
    [Theory]
    [InlineData("MAP", 1, 0, 0, 3)]
    [InlineData("MKP", 0, 1, 0, 2.5)]
    [InlineData("MKP", 1, 1, 0, 2.75)]
    [InlineData("MAP", 1, 1, 2, 1.375)]
    [InlineData("Niter", 1, 1, 0, 0)]
    public void DihydrogenPhosphateCountsSoOften(string solid, double ammonium, double potassium, double sodium, double powers)
    {
        var totals = new ComponentTotals([new("NH4+", ammonium), new("K+", potassium), new("Na+", sodium), new("H2PO4-", 1)]);
        var salt = ConstantSet.Product.FindSolid(solid)!;
        Assert.Equal(powers, SaltsInCompany.PowersOfProtonShare(salt, Components.Find("H2PO4-"), totals), 1e-12);
        Assert.Equal(0, SaltsInCompany.PowersOfProtonShare(salt, Components.Find("K+"), totals));
    }

    [Theory]
    [InlineData(-1, -1, 1, -0.69897)]
    [InlineData(-0.30103, -0.30103, 1, 0)]
    [InlineData(-0.60206, -0.60206, 2, 0)]
    [InlineData(0, -2, 1, 0.00432)]
    public void MixedCrystalsAddUp(double first, double second, double exchanged, double index) =>
        Assert.Equal(index, MixedCrystals.Index(first, second, exchanged), 1e-5);

    [Fact]
    public void KinAreCountedInPairs()
    {
        Assert.Equal((0, 1, 4, 5, -1), (MixedCrystals.KinOf("Niter"), MixedCrystals.KinOf("Ammonium nitrate"), MixedCrystals.KinOf("MKP"),
            MixedCrystals.KinOf("MAP"), MixedCrystals.KinOf("Gypsum")));
    }

    [Fact]
    public void TotalsAreScaledAndReplaced()
    {
        var totals = new ComponentTotals([new("K+", 1), new("Cl-", 2), new("K+", 3)]);
        Assert.Equal((4.0, 2.0, 0.0), (totals["K+"], totals["Cl-"], totals["Na+"]));
        Assert.Equal([new("K+", 4.0), new KeyValuePair<string, double>("Cl-", 2)], totals.Present);
        Assert.Equal((2.0, 1.0), (totals.Scale(0.5)["K+"], totals.Scale(0.5)["Cl-"]));
        Assert.Equal((7.0, 2.0, 4.0), (totals.With("K+", 7)["K+"], totals.With("K+", 7)["Cl-"], totals["K+"]));
        Assert.Equal(
            "'I-' is not a component of the equilibrium model. (Parameter 'name')",
            Assert.Throws<ArgumentException>(() => totals["I-"]).Message);
        foreach (var name in (string[])["H+", "H2O"])
            Assert.Equal(
                $"'{name}' is not given as an amount: it follows from charge balance or pH and from the solvent. (Parameter 'name')",
                Assert.Throws<ArgumentException>(() => totals.With(name, 1)).Message);
    }
}
