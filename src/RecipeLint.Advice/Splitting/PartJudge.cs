using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Analysis.Preservation;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Advice.Splitting;

/// <summary>What the search needs to know of one part at one strength.</summary>
/// <param name="IsFit">Clear when mixed, at its coldest and at its warmest; weighable; its preservative works.</param>
/// <param name="HighestIndex">How near the nearest solid is: 0 saturated. Positive infinity when it is not fit.</param>
/// <param name="Mixed">The solution at the bench; null when it is not fit.</param>
internal sealed record PartVerdict(bool IsFit, double HighestIndex, Equilibrium? Mixed)
{
    public static PartVerdict Unfit { get; } = new(false, double.PositiveInfinity, null);
}

/// <summary>
/// Judges parts with the equilibrium engine and remembers every answer. Each part is judged for what it holds: none is rejected because a
/// smaller one was, since an acid or a chelate more can clear what was cloudy.
/// </summary>
internal sealed class PartJudge(PartFactory factory)
{
    private readonly Dictionary<(PartContent Content, double Dilution), PartVerdict> _known = [];
    private readonly Dictionary<(PartContent Content, double Dilution), PartRisk> _risks = [];
    private readonly Dictionary<(PartContent Content, double Dilution), Obstacle.Wrong?> _wrong = [];
    private readonly Dictionary<double, Equilibrium> _neighbours = [];

    /// <summary>How many parts were computed.</summary>
    public int Computed => _known.Count;

    /// <summary>How many parts went through a whole check.</summary>
    public int Checked => _wrong.Count;

    /// <summary>Whole-unit parts found unfit at a strength, small ones first.</summary>
    public IEnumerable<PartContent> Unfit(double dilution) =>
        _known.Where(k => k.Key.Dilution == dilution && k.Key.Content.Divided < 0 && !k.Value.IsFit)
            .Select(k => k.Key.Content)
            .OrderBy(c => System.Numerics.BitOperations.PopCount((uint)c.Whole))
            .ThenBy(c => c.Whole);

    public PartVerdict Judge(PartContent content, double dilution)
    {
        if (!_known.TryGetValue((content, dilution), out var verdict))
        {
            _known[(content, dilution)] = verdict = Compute(content, dilution);
        }

        return verdict;
    }

    /// <summary>What would become of a fit part that is not kept as it was made.</summary>
    public PartRisk Risk(PartContent content, double dilution)
    {
        if (!_risks.TryGetValue((content, dilution), out var risk))
        {
            _risks[(content, dilution)] = risk = PartRisk.Of(factory.Mix(content, dilution), Judge(content, dilution).Mixed!);
        }

        return risk;
    }

    /// <summary>What a check calls wrong in a part, the first of it; null for nothing.</summary>
    public Obstacle.Wrong? Wrong(PartContent content, double dilution, DateOnly? today)
    {
        if (!_wrong.TryGetValue((content, dilution), out var wrong))
        {
            wrong = factory.Errors(content, dilution, today).Select(f => new Obstacle.Wrong(f)).FirstOrDefault();
            _wrong[(content, dilution)] = wrong;
        }

        return wrong;
    }

    private PartVerdict Compute(PartContent content, double dilution)
    {
        // What can hurt somebody is no part, however clear it stays.
        if (factory.DangerIn(content, dilution) is not null)
        {
            return PartVerdict.Unfit;
        }

        // Weights need no chemistry, so they come next.
        if (!factory.IsTraceOnly(content) && factory.TooLittleToWeigh(content, dilution) is not null)
        {
            return PartVerdict.Unfit;
        }

        var mix = factory.Mix(content, dilution);
        var highest = double.NegativeInfinity;
        Equilibrium? mixed = null;
        var span = factory.Storage;

        // Most groupings fail in the cold, so the cold comes first.
        foreach (var celsius in new[] { span.Low.Celsius, span.High.Celsius, SolutionMix.FilledAtCelsius })
        {
            var at = Math.Clamp(celsius, SolutionInput.LowestCelsius, SolutionInput.HighestCelsius);
            var state = StateSolver.Solve(mix, at, _neighbours.GetValueOrDefault(at));
            if (!DepositJudgement.Of(state, factory.Limits.Deposits).IsClear)
            {
                return PartVerdict.Unfit;
            }

            _neighbours[at] = state.Clear!;
            highest = Math.Max(highest, DepositJudgement.HighestIndex(state));
            mixed = state.Clear;
        }

        // What changes while it is kept is judged where a stock is.
        if (mix.Totals[Component.Pyrophosphate] > 0
            && !DepositJudgement.Of(factory.Stock(content, dilution), factory.Limits.Deposits).IsClear)
        {
            return PartVerdict.Unfit;
        }

        return factory.CanSpoil(content) && Spoils(factory.Stock(content, dilution), factory.Limits) is not null
            ? PartVerdict.Unfit
            : new PartVerdict(true, highest, mixed);
    }

    /// <summary>Whether organic matter is left without a working preservative; null when it is not.</summary>
    public static Obstacle.Unpreserved? Spoils(StockFacts stock, SplitLimits limits)
    {
        var judged = PreservativeJudgement.Of(stock, limits.Preserving);
        return judged is { IsComputed: true, HasFood: true, Standing: PreservativeStanding.Missing or PreservativeStanding.Weak }
            ? new Obstacle.Unpreserved(
                judged.Strength, stock.Chemistry.Mixing.Ph, new MassConcentration(judged.FoodGramsPerLitre), judged.FoodCalled)
            : null;
    }
}
