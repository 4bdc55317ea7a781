using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Analysis.Judgement;

/// <summary>How much pure water takes up a deposit of a stock, computed before it is advised. Pure; never throws.</summary>
/// <param name="LitresPerLitre">
/// Water to each litre of the stock, two digits rounded up; null where no amount up to <see cref="MostLitres"/> does it.
/// </param>
/// <param name="Instead">What falls out of the thinner stock instead; null when nothing does.</param>
/// <param name="Mass">How much of it, in a litre of the stock before the water.</param>
/// <param name="Diluted">The stock with the water in it and the dose that it then takes; null where water is of no use.</param>
public sealed record WaterTrial(double? LitresPerLitre, Solid? Instead, MassConcentration Mass, StockFacts? Diluted)
{
    /// <summary>L of water per litre of stock: weaker than a tenth nobody would keep it as a stock (common practice, no source).</summary>
    public const double MostLitres = 9;

    /// <summary>Each time it is not clear yet, so many times as much water.</summary>
    private const double Step = 1.25;

    /// <summary>True when the deposit goes and nothing else of weight comes, now and as the stock is kept.</summary>
    public bool Helps => Diluted is not null;

    /// <summary>What falls out before and after, beside what was to go.</summary>
    public IReadOnlyList<Solid> Stays { get; init; } = [];

    /// <param name="state">The moment at which it falls out.</param>
    /// <param name="wanted">What falls out and has to go.</param>
    public static WaterTrial Of(StockFacts stock, SolutionState state, IReadOnlyList<Solid> wanted, DepositLimits limits)
    {
        var least = wanted.Select(s => HighestConcentration.Of(state.Mix, state.Temperature, null, limits, s).Factor).ToList();
        if (least.Count == 0 || least.Exists(f => f is null))
        {
            return new WaterTrial(null, null, default, null);
        }

        StateTrial? last = null;
        for (var water = Math.Max(0.01, 1 / least.Min()!.Value - 1); Up(water) <= MostLitres; water *= Step)
        {
            last = StateTrial.WithWater(state, Up(water), wanted, limits);
            if (last is { Helps: true } && With(stock, Up(water)) is var diluted && StaysClear(diluted, wanted, limits))
            {
                return new WaterTrial(Up(water), null, default, diluted) { Stays = last.Stays };
            }
        }

        return new WaterTrial(null, last?.Instead, last?.Mass ?? default, null);
    }

    /// <summary>The stock with so much pure water more, dosed by that much more.</summary>
    /// <param name="litresPerLitre">Above 0.</param>
    public static StockFacts With(StockFacts stock, double litresPerLitre)
    {
        var times = 1 + litresPerLitre;
        return stock with
        {
            Volume = new Volume(times * stock.Volume.Litres),
            Stock = stock.Stock with
            {
                Dose = stock.Stock.Dose is { } dose
                    ? dose with { Value = dose.Value with { LitresPerLitre = times * dose.Value.LitresPerLitre } } : null,
            },
        };
    }

    private static bool StaysClear(StockFacts diluted, IReadOnlyList<Solid> wanted, DepositLimits limits) =>
        DepositJudgement.Of(diluted, limits).Deposits.All(d => !wanted.Contains(d.Solid) && !d.Deposits.Any(s => wanted.Contains(s.Solid)));

    /// <summary>Two digits, rounded up: what is told is what was tried.</summary>
    private static double Up(double litres)
    {
        var step = Math.Pow(10, Math.Floor(Math.Log10(litres)) - 1);
        return Rounding.SixDigits(Math.Ceiling(litres / step - 1e-9) * step);
    }
}
