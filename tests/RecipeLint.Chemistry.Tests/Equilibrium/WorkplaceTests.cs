using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Chemistry.Tests.Equilibrium;

/// <summary>Solves of one kind share their arrays: what a solution comes to must not depend on what was solved before or beside it.</summary>
public sealed class WorkplaceTests
{
    private static readonly SolutionInput[] _inputs =
    [
        .. Enumerable.Range(0, 24).Select(i => Stock(0.02 + (0.07 * i), celsius: 5 + (i % 4 * 10), ph: i % 5 == 4 ? 5.5 : null)),
    ];

    [Fact]
    public void WhatWasSolvedBeforeLeavesNoTrace()
    {
        // Backwards and forwards: each is solved with other neighbours before it.
        var forwards = _inputs.Select(Digits).ToList();
        var backwards = _inputs.Reverse().Select(Digits).Reverse().ToList();
        Assert.Equal(forwards, backwards);
        Assert.Equal(_inputs.Length, forwards.Distinct().Count());
    }

    [Fact]
    public void WhatIsSolvedBesideLeavesNoTrace()
    {
        var alone = _inputs.Select(Digits).ToList();
        for (var round = 0; round < 5; round++)
        {
            var together = new string[_inputs.Length];
            Parallel.For(0, _inputs.Length, new ParallelOptions { MaxDegreeOfParallelism = 4 }, i => together[i] = Digits(_inputs[i]));
            Assert.Equal(alone, together);
        }
    }

    /// <summary>Everything of both answers, to the last digit.</summary>
    private static string Digits(SolutionInput input)
    {
        var clear = EquilibriumSolver.Product.Solve(input);
        var settled = EquilibriumSolver.Product.Precipitate(input, SolidRole.FormsReadily, SolidRole.SolubleSalt);
        return string.Join(
            ';',
            clear.Species.Concat(settled.Final.Species).Select(s => BitConverter.DoubleToInt64Bits(s.MolPerKg))
                .Concat(clear.Solids.Select(s => BitConverter.DoubleToInt64Bits(s.Index)))
                .Concat(settled.Deposits.Select(d => BitConverter.DoubleToInt64Bits(d.MolPerKgInitialWater))));
    }

    private static SolutionInput Stock(double strength, double celsius, double? ph) => new()
    {
        Totals = new ComponentTotals(new Dictionary<string, double>
        {
            ["Ca+2"] = 0.3 * strength,
            ["K+"] = strength,
            ["Mg+2"] = 0.4 * strength,
            ["Fe+3"] = 0.002,
            ["DTPA-5"] = 0.0021,
            ["NO3-"] = 1.2 * strength,
            ["SO4-2"] = 0.5 * strength,
            ["H2PO4-"] = 0.15 * strength,
            ["CO3-2"] = 0.001,
        }),
        Celsius = celsius,
        FixedPh = ph,
    };
}
