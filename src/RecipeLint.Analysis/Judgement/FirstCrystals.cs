using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Analysis.Judgement;

/// <summary>A temperature at which a solid appears.</summary>
public sealed record CrystalPoint(Temperature At, Solid Solid);

/// <summary>At which temperatures between 0 and 45 °C the first solid appears.</summary>
/// <param name="AtBench">Solids already there at 20 °C; then neither point is given.</param>
/// <param name="OnCooling">Null when it stays clear down to 0 °C, or down to where the solver finds no answer.</param>
/// <param name="OnWarming">Null when it stays clear up to 45 °C (gypsum and carbonates dissolve less when warm).</param>
/// <param name="Failure">Why there is no answer; null when there is one.</param>
public sealed record FirstCrystals(IReadOnlyList<Solid> AtBench, CrystalPoint? OnCooling, CrystalPoint? OnWarming, string? Failure)
{
    private const double StepCelsius = 2.5, WidthCelsius = 0.1;

    /// <summary>Searches away from bench temperature both ways. A pure function of the mix.</summary>
    public static FirstCrystals Of(SolutionMix mix, DepositLimits limits)
    {
        const double Bench = SolutionMix.FilledAtCelsius;
        var bench = At(Bench);
        if (bench.Failure is { } failure)
        {
            return new FirstCrystals([], null, null, failure);
        }

        return bench.IsClear
            ? new FirstCrystals([], Search(At, Bench, SolutionInput.LowestCelsius), Search(At, Bench, SolutionInput.HighestCelsius), null)
            : new FirstCrystals(bench.Against, null, null, null);

        DepositJudgement At(double celsius) => DepositJudgement.Of(StateSolver.Solve(mix, celsius), limits);
    }

    private static CrystalPoint? Search(Func<double, DepositJudgement> at, double from, double to)
    {
        var step = to < from ? -StepCelsius : StepCelsius;
        double clear = from, cloudy = from;
        DepositJudgement? found = null;
        while (found is null)
        {
            if (clear == to)
            {
                return null;
            }

            cloudy = step < 0 ? Math.Max(clear + step, to) : Math.Min(clear + step, to);
            var next = at(cloudy);
            if (next.Failure is not null)
            {
                return null;
            }

            if (next.IsClear)
            {
                clear = cloudy;
            }
            else
            {
                found = next;
            }
        }

        while (Math.Abs(cloudy - clear) > WidthCelsius)
        {
            var middle = (clear + cloudy) / 2;
            var next = at(middle);
            if (next.IsClear || next.Failure is not null)
            {
                clear = middle;
            }
            else
            {
                (cloudy, found) = (middle, next);
            }
        }

        return new CrystalPoint(new Temperature(cloudy), found.Against[0]);
    }
}
