using System.Collections.Concurrent;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Analysis.Judgement;

/// <summary>How strong a stock can be made before something falls out at its coldest storage temperature.</summary>
/// <param name="Factor">On the present strength: 0.5 is half as strong; null when none was found.</param>
/// <param name="Dilution">N of the dose 1:N such a stock is made for; null when the stock states no dose.</param>
/// <param name="StoppedBy">What falls out, or comes close, just above; empty when nothing does up to <see cref="MostFactor"/>.</param>
/// <param name="Failure">Why there is no answer; null when there is one.</param>
/// <param name="IsUntold">True where just above nothing is known to fall out, but the solution is too strong to tell.</param>
public sealed record HighestConcentration(
    double? Factor, double? Dilution, IReadOnlyList<Solid> StoppedBy, string? Failure, bool IsUntold = false)
{
    /// <summary>Stocks are not looked at above this many times their strength.</summary>
    public const double MostFactor = 8;

    /// <summary>Nor below this part of it.</summary>
    public const double LeastFactor = 1.0 / 64;

    private const double RelativeWidth = 0.003, Step = 1.5;

    /// <summary>Searches up from a clear stock and down from a cloudy one. A pure function of the stock.</summary>
    public static HighestConcentration Of(StockFacts stock, DepositLimits limits) =>
        stock.Derived.Of(stock, static _ => new ConcurrentDictionary<DepositLimits, HighestConcentration>())
            .GetOrAdd(limits, static (l, s) => Of(s.Chemistry.Mix, s.StorageTemperature.Low, s.Stock.Dose?.Value, l), stock);

    /// <param name="at">Temperature looked at.</param>
    /// <param name="dose">The dose the stock is made for now.</param>
    /// <param name="only">Looks at this solid alone; null for all.</param>
    public static HighestConcentration Of(SolutionMix mix, Temperature at, Dose? dose, DepositLimits limits, Solid? only = null)
    {
        if (mix.Failure is { } failure)
        {
            return new HighestConcentration(null, null, [], failure);
        }

        var state = StateSolver.Solve(mix, at.Celsius);
        var now = DepositJudgement.Of(state, limits, only);
        if (now.Failure is { } lost)
        {
            return new HighestConcentration(null, null, [], lost);
        }

        var search = new Search(mix, at, limits, only, now, state.Clear);
        if (search.Bracket() is not var (clear, cloudy))
        {
            return Found(null);
        }

        return clear >= MostFactor
            ? new HighestConcentration(MostFactor, DilutionOf(dose, MostFactor), [], null)
            : Found(search.Narrow(clear, cloudy));

        HighestConcentration Found(double? factor)
        {
            var stops = search.Stops;
            return new(
                factor,
                factor is { } most ? DilutionOf(dose, most) : null,
                stops.Against,
                null,
                stops is { Deposits.Count: 0, Untold.Count: > 0 });
        }
    }

    private static double? DilutionOf(Dose? dose, double factor) => dose is { LitresPerLitre: > 0 } now ? now.Dilution * factor : null;

    /// <summary>Tries strengths and remembers what stood against the last one that was not clear.</summary>
    private sealed class Search(
        SolutionMix mix, Temperature at, DepositLimits limits, Solid? only, DepositJudgement now, Equilibrium? clear)
    {
        private Equilibrium? _beside = clear;

        public DepositJudgement Stops { get; private set; } = now;

        /// <summary>
        /// A clear strength with a cloudy one close above it; null when none is clear. Both are the most when that is clear.
        /// </summary>
        public (double Clear, double Cloudy)? Bracket()
        {
            double clear = 1, cloudy = 1;
            if (!Stops.IsClear)
            {
                do
                {
                    cloudy = clear;
                    clear = cloudy / Step;
                    if (clear < LeastFactor)
                    {
                        return null;
                    }
                }
                while (!IsClear(clear));
                return (clear, cloudy);
            }

            while (clear < MostFactor)
            {
                cloudy = Math.Min(clear * Step, MostFactor);
                if (!IsClear(cloudy))
                {
                    return (clear, cloudy);
                }

                clear = cloudy;
            }

            return (MostFactor, MostFactor);
        }

        /// <summary>The strongest clear one between them, to within the width asked for.</summary>
        public double Narrow(double clear, double cloudy)
        {
            while (cloudy / clear > 1 + RelativeWidth)
            {
                var middle = Math.Sqrt(clear * cloudy);
                if (IsClear(middle))
                {
                    clear = middle;
                }
                else
                {
                    cloudy = middle;
                }
            }

            return clear;
        }

        private bool IsClear(double factor)
        {
            var state = StateSolver.Solve(mix.Times(factor), at.Celsius, _beside);
            _beside = state.Clear is { Converged: true } found ? found : _beside;
            var next = DepositJudgement.Of(state, limits, only);
            Stops = next.IsClear || next.Failure is not null ? Stops : next;
            return next.IsClear;
        }
    }
}
