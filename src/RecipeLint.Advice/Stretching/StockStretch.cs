using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes;
using RecipeLint.Rules;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Advice.Stretching;

/// <summary>How strong a stock can be made at one temperature and stay clear.</summary>
/// <param name="InStorage">True for a temperature the stock is kept at.</param>
/// <param name="IsJudged">True for a temperature the rules judge it at: the coldest, the warmest and the bench.</param>
/// <param name="NoRoom">True when the salts leave no room for water before anything falls out.</param>
public sealed record StretchRow(Temperature At, bool InStorage, bool IsJudged, HighestConcentration Highest, bool NoRoom);

/// <summary>A rule that begins to object when a stock is made stronger or weaker.</summary>
/// <param name="Factor">The strength, on the present one, up to which it is silent.</param>
/// <param name="Finding">What it says just beyond; its numbers are those of the changed stock.</param>
public sealed record StretchObjection(double Factor, Finding Finding);

/// <summary>The strength, on the present one, above which somebody could be hurt.</summary>
public sealed record StretchDanger(double Factor, Hazard Hazard);

/// <summary>
/// How much stronger and how much weaker a stock can be made with the same final solution: the recipe of the solution stays, amounts and
/// dose change against each other.
/// </summary>
public sealed record StockStretch
{
    /// <summary>Nor is a stock looked at below this part of its strength.</summary>
    public const double LeastFactor = 1.0 / 64;

    /// <summary>Objections are found to within this.</summary>
    private const double RelativeWidth = 0.01;

    /// <summary>Temperatures of the table beside those of storage, °C.</summary>
    private static readonly double[] Grid = [0, 5, 10, 15, 20, 25, 30, 35, 40, 45];

    public required StockFacts Stock { get; init; }

    /// <summary>By rising temperature.</summary>
    public required IReadOnlyList<StretchRow> Rows { get; init; }

    /// <summary>The temperature of those it is judged at that allows least; null when no answer was found.</summary>
    public StretchRow? Binding { get; init; }

    /// <summary>Errors that a check finds in the stock as it is.</summary>
    public IReadOnlyList<Finding> Present { get; init; } = [];

    /// <summary>Rules that object on the way up, the first to come first.</summary>
    public IReadOnlyList<StretchObjection> Stronger { get; init; } = [];

    /// <summary>Rules that object on the way down, the first to come first.</summary>
    public IReadOnlyList<StretchObjection> Weaker { get; init; } = [];

    /// <summary>The strongest at which nothing objects, on the present strength; null when no answer was found.</summary>
    public double? Strongest => Binding?.Highest.Factor is { } clear
        ? Math.Min(Math.Min(clear, Stronger.Count > 0 ? Stronger[0].Factor : clear), Danger?.Factor ?? clear)
        : null;

    /// <summary>The weakest at which nothing objects; null when nothing does down to <see cref="LowestLooked"/>.</summary>
    public double? Weakest => Weaker.Count > 0 ? Weaker[0].Factor : null;

    /// <summary>The weakest that was looked at: the final solution itself, or a sixty-fourth.</summary>
    public double LowestLooked { get; init; }

    /// <summary>Why nothing is offered: what the stock holds can hurt somebody; null when something may be.</summary>
    public Refusal? Refused { get; init; }

    /// <summary>What stops it on the way up because somebody could be hurt; null when nothing does.</summary>
    public StretchDanger? Danger { get; init; }

    /// <summary>
    /// What the rule on iron(II) says of the stock as it is and at the highest strength, the strength first: the strengths hold only until
    /// the air has oxidised the iron. Empty where it is held, or used up before.
    /// </summary>
    public IReadOnlyList<StretchObjection> TakenByTheAir { get; init; } = [];

    /// <summary>What goes in and nobody can tell more of, so that nothing is offered; null where all can be named.</summary>
    public UnknownContents? Unknown { get; init; }

    /// <summary>Why there is no answer at all; null when there is one.</summary>
    public string? Failure { get; init; }

    /// <summary>Computes how far a stock stretches. Pure; never throws on what a stock can hold.</summary>
    /// <param name="today">The day suppressions are held against.</param>
    public static StockStretch Of(Workspace workspace, StockFacts stock, DateOnly today)
    {
        var mix = stock.Chemistry.Mix;
        var lowest = Math.Max(LeastFactor, stock.Stock.Dose?.Value.LitresPerLitre ?? 0);
        if (HazardGate.Of(stock).Forbids(VesselAction.MakeStronger) is { } refusal)
        {
            return new StockStretch { Stock = stock, Rows = [], Refused = refusal, LowestLooked = lowest };
        }

        if (UnknownContents.Of(stock) is { } unknown)
        {
            return new StockStretch { Stock = stock, Rows = [], Unknown = unknown, LowestLooked = lowest };
        }

        if (mix.Failure is { } failure)
        {
            return new StockStretch { Stock = stock, Rows = [], Failure = failure, LowestLooked = lowest };
        }

        var (low, high) = (stock.StorageTemperature.Low.Celsius, stock.StorageTemperature.High.Celsius);
        var limits = DepositOptions.Of(stock.Settings);
        var judged = JudgedAt(stock);
        var rows = Grid.Append(Clamp(low)).Append(Clamp(high)).Distinct().Order()
            .Select(c => Row(stock, c, limits) with { InStorage = c >= Clamp(low) && c <= Clamp(high), IsJudged = judged.Contains(c) })
            .ToList();
        var binding = rows.Where(r => r.IsJudged && r.Highest.Factor is not null).MinBy(r => r.Highest.Factor);
        binding = rows.Any(r => r.IsJudged && r.Highest.Factor is null) ? null : binding;
        var judge = new Judge(workspace, stock, today);
        return new StockStretch
        {
            Stock = stock,
            Rows = rows,
            Binding = binding,
            LowestLooked = lowest,
            Danger = binding?.Highest.Factor is > 1 and var end ? judge.Danger(end) : null,
            Stronger = binding?.Highest.Factor is > 1 and var most ? judge.Objections(most) : [],
            TakenByTheAir = judge.OfTheAir(binding?.Highest.Factor ?? 1),
            Weaker = lowest < 1 ? judge.Objections(lowest) : [],
            Present = CheckedStock.Errors(workspace, stock.Stock, today),
        };
    }

    /// <summary>How strong it can be at the temperatures it is judged at: the coldest, the warmest and the bench.</summary>
    public static IReadOnlyList<StretchRow> Judged(StockFacts stock)
    {
        var limits = DepositOptions.Of(stock.Settings);
        return [.. JudgedAt(stock).Distinct().Order().Select(c => Row(stock, c, limits) with { IsJudged = true })];
    }

    private static double[] JudgedAt(StockFacts stock) =>
        [Clamp(stock.StorageTemperature.Low.Celsius), Clamp(stock.StorageTemperature.High.Celsius), SolutionMix.FilledAtCelsius];

    private static double Clamp(double celsius) => Math.Clamp(celsius, SolutionInput.LowestCelsius, SolutionInput.HighestCelsius);

    private static StretchRow Row(StockFacts stock, double celsius, DepositLimits limits)
    {
        var highest = Highest(stock.Chemistry.Mix);
        if (celsius == Clamp(stock.StorageTemperature.High.Celsius) && stock.Chemistry.State(StateMoment.Turned) is { } turned)
        {
            // At its warmest it is looked at once more, at the end of its time.
            var kept = Highest(turned.Mix);
            highest = highest.Factor is null || kept.Factor > highest.Factor ? highest : kept;
        }

        // What is poured has to find room in the vessel, whatever the chemistry says of a litre of it.
        if (Room(stock) is var room && highest.Factor > room)
        {
            highest = highest with { Factor = room, Dilution = stock.Stock.Dose?.Value.Dilution * room, StoppedBy = [] };
        }

        var full = highest is { Factor: { } factor, StoppedBy.Count: 0 } && factor < HighestConcentration.MostFactor;
        return new StretchRow(new Temperature(celsius), false, false, highest, full);

        HighestConcentration Highest(SolutionMix mix) =>
            HighestConcentration.Of(mix, new Temperature(celsius), stock.Stock.Dose?.Value, limits);
    }

    /// <summary>How many times the liquids that go in fit into the vessel; water can be left out, they cannot.</summary>
    private static double Room(StockFacts stock)
    {
        var liquids = stock.Additions.Where(a => !a.ThroughAliquot).Sum(a => a.Volume?.Litres ?? 0)
            + stock.Aliquots.Sum(a => a.Volume.Litres);
        return liquids > 0 ? stock.Volume.Litres / liquids : double.PositiveInfinity;
    }

    /// <summary>The rules' opinion of the stock at other strengths, each asked once.</summary>
    private sealed class Judge(Workspace workspace, StockFacts stock, DateOnly today)
    {
        private readonly Dictionary<double, IReadOnlyList<Finding>> _asked = [];

        /// <summary>
        /// Every rule is asked, at the other end and then at each strength that would be offered: what speaks on the way there may be
        /// silent at the end, where a stronger word has taken its place.
        /// </summary>
        public List<StretchObjection> Objections(double end)
        {
            var now = At(1).Select(Key).ToHashSet();
            var nearest = new Dictionary<(string Rule, string Step), StretchObjection>();
            var asked = end;
            while (New(asked) is { Count: > 0 } more)
            {
                foreach (var finding in more)
                {
                    nearest.Add(Key(finding), First(finding, asked));
                }

                asked = nearest.Values.MinBy(o => Math.Abs(Math.Log(o.Factor)))!.Factor;
            }

            List<Finding> New(double factor) =>
                [.. At(factor).Where(f => !now.Contains(Key(f)) && !nearest.ContainsKey(Key(f))).DistinctBy(Key)];

            return
            [
                .. nearest.Values
                    .OrderBy(o => Math.Abs(Math.Log(o.Factor)))
                    .ThenBy(o => o.Finding.Rule.Name, StringComparer.Ordinal)
                    .ThenBy(o => o.Finding.Place.Pointer.Value, StringComparer.Ordinal),
            ];
        }

        /// <summary>What the air takes at the present strength, or at another where it does not at that.</summary>
        public List<StretchObjection> OfTheAir(double other) =>
        [
            .. new[] { 1, other }.Distinct()
                .SelectMany(f => At(f).Where(x => x.Rule.Name == RuleNames.UnprotectedFerrousIron).Select(x => new StretchObjection(f, x)))
                .Take(1),
        ];

        /// <summary>
        /// The last strength at which the hazard gate has nothing against it, by halving the way; null when it never objects.
        /// </summary>
        public StretchDanger? Danger(double end)
        {
            if (DangerAt(end) is not { } danger)
            {
                return null;
            }

            double safe = 1, harmful = end;
            while (Math.Log(harmful / safe) > RelativeWidth)
            {
                var middle = Math.Sqrt(safe * harmful);
                if (DangerAt(middle) is { } there)
                {
                    (harmful, danger) = (middle, there);
                }
                else
                {
                    safe = middle;
                }
            }

            return new StretchDanger(safe, danger);
        }

        private Hazard? DangerAt(double factor)
        {
            var changed = workspace.With(StretchedStock.Of(stock.Stock, factor));
            return Analyzer.AnalyseStock(changed, stock.Stock.File) is { } facts ? HazardGate.Of(facts)
                .Forbids(VesselAction.MakeStronger)?.Hazard : null;
        }

        /// <summary>The last strength at which it is silent, by halving the way on a logarithmic scale.</summary>
        private StretchObjection First(Finding finding, double end)
        {
            double silent = 1, loud = end;
            var said = finding;
            while (Math.Abs(Math.Log(loud / silent)) > RelativeWidth)
            {
                var middle = Math.Sqrt(silent * loud);
                if (At(middle).FirstOrDefault(f => Key(f) == Key(finding)) is { } there)
                {
                    (loud, said) = (middle, there);
                }
                else
                {
                    silent = middle;
                }
            }

            return new StretchObjection(silent, said);
        }

        private IReadOnlyList<Finding> At(double factor)
        {
            if (!_asked.TryGetValue(factor, out var findings))
            {
                var changed = workspace.With(StretchedStock.Of(stock.Stock, factor));
                findings = Analyzer.AnalyseStock(changed, stock.Stock.File) is { } facts
                    ? [.. LintEngine.Judge(
                        new Facts { Workspace = changed, Stocks = [facts], Recipes = [] },
                        new EngineOptions { Today = today, Rules = RuleList.All })
                        .Findings.Where(f => f.Place.File == stock.Stock.File)]
                    : [];
                _asked.Add(factor, findings);
            }

            return findings;
        }

        /// <summary>Scaled measures may move a finding within its step, so the step tells it.</summary>
        private static (string Rule, string Step) Key(Finding finding)
        {
            var parts = finding.Place.Pointer.Value.Split('/');
            return (finding.Rule.Name, parts.Length > 2 ? parts[2] : "");
        }
    }
}
