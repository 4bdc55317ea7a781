using RecipeLint.Analysis.Judgement;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Analysis.Uncertainty;
using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Analysis.Trials;

/// <summary>What kept some of the mixings from being clear.</summary>
/// <param name="Count">Mixings in which it falls out, comes too close or cannot be told.</param>
public sealed record TrialCause(Solid Solid, int Count);

/// <summary>
/// The same stock mixed many times over, each time as far off as the shop's scales, measures and bags allow (JCGM 101:2008), and each
/// judged by the one judgement of what falls out, at the temperatures it is kept at.
/// </summary>
/// <param name="Clear">Mixings that stay clear, of all that could be computed.</param>
/// <param name="NotComputed">Mixings that could not be computed.</param>
/// <param name="Causes">The most frequent first.</param>
/// <param name="Seed">The same seed draws the same mixings, on every machine.</param>
public sealed record MixingTrials(Proportion Clear, int NotComputed, IReadOnlyList<TrialCause> Causes, int Seed)
{
    /// <summary>Mixings where nobody says how many.</summary>
    public const int Usual = 100;

    /// <summary>More take minutes and say hardly more.</summary>
    public const int Most = 1000;

    public const int UsualSeed = 1;

    /// <summary>An amount or a volume is never less than this part of what is written, however large its error.</summary>
    private const double Least = 1e-6;

    /// <param name="findStock">Facts of a stock by its file, for pre-stocks.</param>
    /// <param name="limits">From where on deposits count in this shop.</param>
    /// <param name="count">1 to <see cref="Most"/>; time grows with it.</param>
    public static MixingTrials Of(
        StockFacts stock, Func<string, StockFacts?> findStock, DepositLimits limits, int count = Usual, int seed = UsualSeed)
    {
        var (additions, volume) = MixingErrors.Of(stock, findStock);
        var causes = new Dictionary<Solid, int>();
        var (clear, failed) = (0, 0);
        for (var trial = 0; trial < count; trial++)
        {
            var judged = DepositJudgement.Of(Mixed(stock, additions, volume, SeededDraws.OfTrial(seed, trial)), limits);
            if (judged.Failure is not null)
            {
                failed++;
                continue;
            }

            clear += judged.IsClear ? 1 : 0;
            foreach (var solid in judged.Against)
            {
                causes[solid] = causes.GetValueOrDefault(solid) + 1;
            }
        }

        return new MixingTrials(
            new Proportion(clear, count - failed),
            failed,
            [
                .. causes.Select(c => new TrialCause(c.Key, c.Value))
                    .OrderByDescending(c => c.Count)
                    .ThenBy(c => c.Solid.Name, StringComparer.Ordinal),
            ],
            seed);
    }

    /// <summary>The stock as it came out once.</summary>
    private static StockFacts Mixed(
        StockFacts stock, Dictionary<string, List<FactorError>> additions, List<FactorError> volume, SeededDraws draws)
    {
        var drawn = new Dictionary<string, double>(StringComparer.Ordinal);
        var mixed = stock.Additions.Select(a =>
        {
            var factor = Factor(additions.GetValueOrDefault(a.Id) ?? []);
            return a with
            {
                Mass = a.Mass * factor,
                Elements = a.Elements.Times(factor),
                ComponentMoles = a.ComponentMoles.Times(factor),
            };
        }).ToList();
        return stock with
        {
            Additions = mixed,
            ComponentMoles = ComponentMoles.Sum(
                [
                    .. mixed.Select(a => a.ComponentMoles), .. stock.Waters.Select(w => w.ComponentMoles),
                    .. stock.Adjustments.Select(a => a.ComponentMoles),
                ]),
            Totals = ElementTotals.Sum(
                [.. mixed.Select(a => a.Elements), .. stock.Waters.Select(w => w.Elements), .. stock.Adjustments.Select(a => a.Elements)]),
            Volume = stock.Volume * Factor(volume),
        };

        double Factor(List<FactorError> errors)
        {
            var factor = 1.0;
            foreach (var (error, divides) in errors)
            {
                if (!drawn.TryGetValue(error.Source.Id, out var deviation))
                {
                    drawn[error.Source.Id] = deviation = draws.Next(error.Shape);
                }

                var one = Math.Max(Least, 1 + (error.Standard * deviation));
                factor *= divides ? 1 / one : one;
            }

            return factor;
        }
    }
}
