using System.Globalization;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Analysis.Judgement;

/// <summary>A temperature at which a solid appears.</summary>
public sealed record CrystalPoint(Temperature At, Solid Solid);

/// <summary>At which temperatures between 0 and 45 °C the first solid appears.</summary>
/// <param name="AtBench">Solids already there at 20 °C; then neither point is given.</param>
/// <param name="OnCooling">Null when it stays clear down to 0 °C; when it is not known, <paramref name="Failure"/> says so.</param>
/// <param name="OnWarming">Null when it stays clear up to 45 °C (gypsum and carbonates dissolve less when warm); when it is not known,
/// <paramref name="Failure"/> says so.</param>
/// <param name="Failure">Why there is no answer, or none beyond some temperature, in full sentences; null when there is one for all of 0 to
/// 45 °C.</param>
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

        if (!bench.IsClear)
        {
            return new FirstCrystals(bench.Against, null, null, null);
        }

        var cold = Search(At, Bench, SolutionInput.LowestCelsius);
        var warm = Search(At, Bench, SolutionInput.HighestCelsius);
        var reasons = new[] { cold.Unknown, warm.Unknown }.OfType<string>().ToList();
        return new FirstCrystals([], cold.Point, warm.Point, reasons.Count == 0 ? null : string.Join(' ', reasons));

        DepositJudgement At(double celsius) => DepositJudgement.Of(StateSolver.Solve(mix, celsius), limits);
    }

    /// <summary>The first temperature at which something counts; no point and nothing unknown where it stays clear all the way.</summary>
    private static (CrystalPoint? Point, string? Unknown) Search(Func<double, DepositJudgement> at, double from, double to)
    {
        var step = to < from ? -StepCelsius : StepCelsius;
        double clear = from, cloudy = from;
        DepositJudgement? found = null;
        while (found is null)
        {
            if (clear == to)
            {
                return (null, null);
            }

            cloudy = step < 0 ? Math.Max(clear + step, to) : Math.Min(clear + step, to);
            var next = at(cloudy);
            if (next.Failure is { } why)
            {
                return (null, Untold(step, clear, why));
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

        var solid = found.Against[0];
        return found.Deposits.Select(d => d.UntoldHolder).FirstOrDefault(a => a is not null) is { } agent
            ? (null, Untold(step, clear, $"How firmly {agent} holds metals is known at 25 °C only."))
            : solid.TemperatureKnown
            ? (new CrystalPoint(new Temperature(cloudy), solid), null)
            : (null, Untold(step, clear, $"How {solid.Called} changes with temperature is not known."));
    }

    private static string Untold(double step, double clear, string why) =>
        string.Create(CultureInfo.InvariantCulture, $"What falls out {(step < 0 ? "below" : "above")} {clear:0.#} °C is not known. {why}");
}
