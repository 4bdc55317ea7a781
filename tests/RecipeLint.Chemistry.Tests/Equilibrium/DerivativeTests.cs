using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Chemistry.Tests.Equilibrium;

/// <summary>
/// The derivatives that Newton steps by, against differences of the residuals they are derivatives of. Pairs of ions with a complex are followed to
/// first order only, so they agree to a few hundredths: a wrong sign, factor or place is ten times that, and costs steps and not the answer.
/// </summary>
public sealed class DerivativeTests
{
    private const double Step = 1e-5;

    [Theory]
    [InlineData(1e-4, "K+ 0.01, NO3- 0.01", "")]
    [InlineData(1e-4, "K+ 0.01, NO3- 0.01", "pH")]
    [InlineData(1e-3, "K+ 0.01, Ca+2 0.004, Mg+2 0.002, NO3- 0.016, SO4-2 0.002, H2PO4- 0.001", "")]
    [InlineData(1e-3, "K+ 0.01, Ca+2 0.002, CO3-2 0.004, NO3- 0.01", "air")]
    [InlineData(1e-3, "Na+ 0.02, Fe+3 0.001, EDTA-4 0.001, Zn+2 0.0005, SO4-2 0.008", "")]
    [InlineData(0.02, "K+ 1, H2PO4- 0.4, Mg+2 0.3, SO4-2 0.6", "")]
    [InlineData(0.02, "Na+ 0.6, B(OH)3 0.4, Ca+2 0.1, Cl- 0.7", "inert")]
    public void OfTheClearSolution(double within, string totals, string how)
    {
        var input = Input(totals, how);
        using var run = new SolverRun(ConstantSet.Product, input);
        Assert.True(run.Clear(input));
        Hold(run, within);
    }

    [Theory]
    [InlineData(1e-3, "Ca+2 0.04, SO4-2 0.04", "", "Gypsum")]
    [InlineData(1e-3, "Ca+2 0.04, SO4-2 0.02, CO3-2 0.02", "", "Gypsum, Calcite")]
    [InlineData(0.1, "K+ 4.3, NO3- 4.3", "", "Niter")]
    [InlineData(0.02, "K+ 2.8, NH4+ 0.2, H2PO4- 2.8", "inert", "MKP")]
    [InlineData(0.02, "K+ 2.2, NO3- 0.4, SO4-2 0.9", "", "Arcanite")]
    public void OfASolutionOverSolids(double within, string totals, string how, string solids)
    {
        var input = Input(totals, how);
        using var run = new SolverRun(ConstantSet.Product, input);
        Assert.True(run.Clear(input));
        var set = ConstantSet.Product;
        var candidates = solids.Split(", ").Select(s => run.Problem.Describe(set.PlaceOf(set.FindSolid(s)!), input)!).ToList();
        Assert.True(run.WithSolids(candidates, holdPh: false));
        Assert.Equal(candidates.Count, run.Solids.Present.Count);
        Hold(run, within);
    }

    private static void Hold(SolverRun run, double within)
    {
        var (problem, at) = (run.Problem, run.At);
        var activity = new Activity(problem, at);
        var work = new NewtonWork(problem.S, problem.Work);
        var solids = new SolidEquations(problem, at, activity, work);
        solids.Present.AddRange(run.Solids.Present);
        var equations = new NewtonEquations(problem, at, activity, solids, work);
        work.Prepare(solids.Present.Count);
        var n = work.Size;
        double[] Residuals()
        {
            activity.Evaluate(40);
            equations.Residuals();
            return work.F[..n];
        }

        // A little beside the answer, where nothing is nought by chance.
        for (var a = 0; a < at.X.Length; a++) at.X[a] += 0.001 * (a % 3 - 1);
        Residuals();
        equations.Jacobian();
        var jacobian = work.Jacobian[..(n * n)];
        for (var column = 0; column < n; column++)
        {
            // Of an amount so little that what is left of a component hardly changes.
            var isAmount = column > problem.S.ComponentCount && column < n - 1;
            var step = isAmount ? Step / 1000 : Step;
            Move(at, solids, problem.S.ComponentCount, column, step);
            var above = Residuals();
            Move(at, solids, problem.S.ComponentCount, column, -2 * step);
            var below = Residuals();
            Move(at, solids, problem.S.ComponentCount, column, step);
            for (var row = 0; row < n; row++)
            {
                var difference = (above[row] - below[row]) / (2 * step);
                var derivative = jacobian[(row * n) + column];
                Assert.True(
                    Math.Abs(difference - derivative) <= within * Math.Max(1, Math.Abs(derivative)),
                    $"row {row}, column {column} of {n}: {derivative} for {difference}");
            }
        }
    }

    /// <summary>Unknowns in the order of the columns: ln m of the components, ln I, the solids' amounts, ln of the water.</summary>
    private static void Move(Iterate at, SolidEquations solids, int free, int column, double by)
    {
        if (column < free) at.X[column] += by;
        else if (column == free) at.LnI += by;
        else if (column < free + 1 + solids.Present.Count) solids.Present[column - free - 1].Amount += by;
        else at.LnW += by;
    }

    private static SolutionInput Input(string totals, string how) => new()
    {
        Totals = new ComponentTotals(totals.Split(", ").Select(t => t.Split(' '))
            .Select(t => KeyValuePair.Create(t[0], double.Parse(t[1], System.Globalization.CultureInfo.InvariantCulture)))),
        FixedPh = how == "pH" ? 6.5 : null,
        CarbonDioxideAtm = how == "air" ? 4.2e-4 : null,
        InertIons = how == "inert" ? [new InertIon("X", 2, 0.02), new InertIon("urea", 0, 0.3)] : [],
    };
}
