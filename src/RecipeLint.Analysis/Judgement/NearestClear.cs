using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Analysis.Judgement;

/// <summary>The nearest change at which one solid would not fall out; each part is null where no such change was found.</summary>
/// <param name="Factor">On the present strength, 0.5 for half as strong; below 1.</param>
/// <param name="Dilution">The next usual dose 1:N at which the weaker stock stays clear (50 for 1:50); null when the stock states no
/// dose.</param>
/// <param name="Temperature">Nearest to the one looked at, between 0 and 45 °C; null too where nothing tells how the solid changes with
/// it, and where something else falls out there.</param>
/// <param name="Ph">Nearest to the present pH, between 2 and 9, at which nothing else falls out instead.</param>
public sealed record NearestClear(double? Factor, int? Dilution, Temperature? Temperature, double? Ph)
{
    /// <summary>Doses stocks are commonly made for, 1:N, the weakest dose first (common practice, no source).</summary>
    public static IReadOnlyList<int> UsualDilutions { get; } =
        [1000, 500, 400, 300, 250, 200, 150, 128, 100, 80, 64, 50, 40, 30, 25, 20, 15, 10, 5, 2];

    /// <summary>A usual dose below this part of the highest one that would do is not told (common practice, no source).</summary>
    private const double UsualWithin = 0.6;

    /// <summary>
    /// An acid or alkali that makes a strong solution so many times stronger is no adjustment: nobody would look further.
    /// </summary>
    private const double MostTimesStronger = 2;

    /// <summary>
    /// Temperatures are tried so far apart, K: a window of a few degrees between two cloudy ones is no advice on where to keep a bottle.
    /// </summary>
    private const double StepCelsius = 5;

    private const double LowestPh = 2, HighestPh = 9, PhStep = 0.25, PhWidth = 0.02, WidthCelsius = 0.1;

    /// <summary>For a solid that falls out of a stock at its coldest storage temperature. A pure function of the stock.</summary>
    public static NearestClear Of(StockFacts stock, Solid solid, DepositLimits limits) =>
        Of(stock.Chemistry.Mix, stock.StorageTemperature.Low, solid, stock.Stock.Dose?.Value, limits);

    /// <summary>
    /// For a deposit of a stock: the way out must hold at every moment at which the solid falls out, not at the worst alone.
    /// </summary>
    /// <param name="states">The moments that were judged.</param>
    public static NearestClear Of(JudgedDeposit deposit, IReadOnlyList<SolutionState> states, Dose? dose, DepositLimits limits)
    {
        var solid = deposit.Solid;
        var nearest = Of(deposit.State.Mix, deposit.State.Temperature, solid, dose, limits);
        var ph = deposit.State.PhBeforeDeposit;
        foreach (var other in states.Where(s => s.Temperature != deposit.State.Temperature && s.Deposit(solid.Name) is not null))
        {
            var there = Of(other.Mix, other.Temperature, solid, dose, limits);
            if (there.Factor < nearest.Factor)
            {
                nearest = nearest with { Factor = there.Factor, Dilution = there.Dilution };
            }

            if (Math.Abs((there.Ph ?? other.PhBeforeDeposit) - other.PhBeforeDeposit) > Math.Abs((nearest.Ph ?? ph) - ph))
            {
                nearest = nearest with { Ph = there.Ph };
            }
        }

        // What is said of the temperature is said of all that falls out together.
        return deposit.Untold is null && deposit.UntoldHolder is null ? nearest : nearest with { Temperature = null };
    }

    /// <param name="at">Temperature at which the solid falls out.</param>
    /// <param name="dose">The dose the stock is made for now; null when it has none.</param>
    public static NearestClear Of(SolutionMix mix, Temperature at, Solid solid, Dose? dose, DepositLimits limits)
    {
        if (mix.Failure is not null)
        {
            return new NearestClear(null, null, null, null);
        }

        var celsius = Math.Clamp(at.Celsius, SolutionInput.LowestCelsius, SolutionInput.HighestCelsius);
        var now = StateSolver.At(mix, celsius, null);
        var highest = HighestConcentration.Of(mix, at, dose, limits, solid);
        if (highest.Factor is { } thinner and < 1 && Brings(now, StateSolver.At(mix.Times(thinner), celsius, now.Clear), solid, limits))
        {
            // Thinner, it makes room for something else: then only where nothing at all falls out.
            highest = HighestConcentration.Of(mix, at, dose, limits);
        }

        var factor = highest.Factor is < 1 ? highest.Factor : null;
        return new NearestClear(
            factor,
            factor is null ? null : Usual(highest.Dilution),
            solid.TemperatureKnown && UntoldHold.Of(mix, celsius, solid) is null
                && NearestTemperature(mix, celsius, solid, limits) is { } there
                && !Brings(now, StateSolver.At(mix, there.Celsius, now.Clear), solid, limits) ? there : null,
            NearestPh(mix, celsius, solid));
    }

    /// <summary>
    /// N of the dose 1:N that is told and that a repair takes: the usual one where it is not far below, else two digits rounded down; null
    /// where no weaker stock was found.
    /// </summary>
    /// <param name="now">The dose the stock is made for now.</param>
    public double? ToldDilution(Dose now)
    {
        if (Factor is not { } factor)
        {
            return null;
        }

        var most = now.Dilution * factor;
        return Dilution is { } usual && usual >= UsualWithin * most ? usual : Rounding.TwoDigitsDown(most);
    }

    /// <summary>True where the change lets something fall out that did not before.</summary>
    private static bool Brings(SolutionState before, SolutionState after, Solid but, DepositLimits limits) =>
        StateTrial.Compare(before, after, [], limits) is { Instead: { } instead } && instead != but;

    private static int? Usual(double? dilution) =>
        dilution is { } most && UsualDilutions.FirstOrDefault(n => n <= most * (1 + 1e-9)) is > 0 and var n ? n : null;

    private static Temperature? NearestTemperature(SolutionMix mix, double celsius, Solid solid, DepositLimits limits)
    {
        Equilibrium? beside = null;
        for (var step = 1; (step - 1) * StepCelsius < SolutionInput.HighestCelsius - SolutionInput.LowestCelsius; step++)
        {
            foreach (var side in (ReadOnlySpan<double>)[StepCelsius, -StepCelsius])
            {
                double from = Within(celsius + (step - 1) * side), to = Within(celsius + step * side);
                if (from != to && IsClear(to))
                {
                    return new Temperature(Narrow(from, to, WidthCelsius, IsClear));
                }
            }
        }

        return null;

        static double Within(double there) => Math.Clamp(there, SolutionInput.LowestCelsius, SolutionInput.HighestCelsius);

        bool IsClear(double there)
        {
            var state = StateSolver.At(mix, there, beside);
            beside = state.Clear is { Converged: true } clear ? clear : beside;
            return DepositJudgement.Of(state, limits, solid).IsClear;
        }
    }

    private static double? NearestPh(SolutionMix mix, double celsius, Solid solid)
    {
        // Silicate gels when its alkali is taken away, which the constants do not follow: no acid is named for such a stock.
        if (mix.StandsInItsSilicateAlkali)
        {
            return null;
        }

        var request = new StateRequest(StateMoment.Mixing, new Temperature(celsius), false, []);
        var now = StateSolver.Clear(mix, request);
        if (!now.Converged)
        {
            return null;
        }

        var above = Oversaturated(now, solid);
        var strongest = Math.Max(MostTimesStronger * now.IonicStrength, SaltVerdicts.HighestIonicStrength);
        var beside = now;
        var open = new[] { true, true };
        for (var distance = PhStep; distance <= HighestPh - LowestPh && (open[0] || open[1]); distance += PhStep)
        {
            for (var side = 0; side < open.Length; side++)
            {
                var to = now.Ph + (side == 0 ? -distance : distance);
                if (open[side] && to is >= LowestPh and <= HighestPh && Fits(to, out open[side]))
                {
                    return Narrow(now.Ph, to, PhWidth, ph => Fits(ph, out _));
                }
            }
        }

        return null;

        bool Fits(double ph, out bool mayGoOn)
        {
            var state = StateSolver.Clear(mix, request with { SetPh = ph, StartFrom = beside });
            mayGoOn = state.Converged && state.IonicStrength < strongest;
            beside = state.Converged ? state : beside;
            return mayGoOn && state.SaturationIndex(solid.Name) is <= 0 && Oversaturated(state, solid).IsSubsetOf(above);
        }
    }

    /// <summary>Readily forming solids other than the one looked at that are above saturation.</summary>
    private static HashSet<string> Oversaturated(Equilibrium state, Solid but) =>
        [.. state.Solids.Where(s => s.Index > 0 && s.Solid != but && s.Solid.Role == SolidRole.FormsReadily).Select(s => s.Solid.Name)];

    /// <summary>The point nearest to <paramref name="cloudy"/> that is still clear.</summary>
    private static double Narrow(double cloudy, double clear, double width, Func<double, bool> isClear)
    {
        while (Math.Abs(cloudy - clear) > width)
        {
            var middle = (cloudy + clear) / 2;
            if (isClear(middle))
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
}
