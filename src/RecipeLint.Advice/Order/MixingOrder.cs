using RecipeLint.Analysis;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Mixing;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Physical;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Advice.Order;

/// <summary>One addition in its place.</summary>
/// <param name="After">The vessel once it is in.</param>
/// <param name="Heat">What dissolving it does to the temperature; null where no heat of solution is known.</param>
/// <param name="Solids">What it brings about beyond what the finished stock drops anyway.</param>
/// <param name="Reasons">Why it stands here, at least one.</param>
public sealed record OrderPlace(
    OrderUnit Unit, VesselContents After, MixingState State, BatchTemperature? Heat, IReadOnlyList<OrderSolid> Solids,
    IReadOnlyList<OrderReason> Reasons);

/// <summary>
/// The best order to mix a stock in: all water but the last first, so that acid always goes into water, then the additions, then up to the
/// mark. Computed, not looked up; where chemistry does not decide, habits of the bench do, and then the file.
/// </summary>
public sealed record MixingOrder
{
    /// <summary>Part of the finished volume to start with where the file does not say (common practice, no source: 70 to 80 %).</summary>
    private const double UsualStart = 0.75;

    /// <summary>Part of the finished volume kept free for the last of the water (common practice, no source).</summary>
    private const double RoomToTopUp = 0.03;

    public required StockFacts Stock { get; init; }

    /// <summary>In the proposed order; empty when <see cref="NothingToOrder"/> says why.</summary>
    public IReadOnlyList<OrderPlace> Places { get; init; } = [];

    /// <summary>Why there is nothing to order; null when there is.</summary>
    public string? NothingToOrder { get; init; }

    /// <summary>Why no order is proposed: what the vessel would hold can hurt somebody; null when one may be.</summary>
    public Refusal? Refused { get; init; }

    /// <summary>What goes in and nobody can tell more of: the order is worked out without it; null where all can be named.</summary>
    public UnknownContents? Unknown => UnknownContents.Of(Stock);

    /// <summary>Where what cannot be named is all, or leaves nothing to order: then there is no answer but that.</summary>
    public UnknownContents? NothingButUnknown => Unknown is { } unknown && (unknown.IsAll || NothingToOrder is not null) ? unknown : null;

    /// <summary>Hazards that do not forbid the order and have to be said with it.</summary>
    public IReadOnlyList<Hazard> Hazards { get; init; } = [];

    /// <summary>What makes the file's own way of mixing it dangerous, and this one not; null when nothing does.</summary>
    public Hazard? Mended { get; init; }

    /// <summary>Water to start with.</summary>
    public Volume Start { get; init; }

    /// <summary>What the file starts with; null when it does not say.</summary>
    public Volume? StartInFile { get; init; }

    /// <summary>
    /// Least water to start with in which everything dissolves step by step in this order; null when not even a vessel filled almost to its
    /// mark does it.
    /// </summary>
    public Volume? SmallestStart { get; init; }

    /// <summary>How warm the vessel is kept while the additions go in: 20 °C, or what the file warms it to.</summary>
    public Temperature At { get; init; }

    /// <summary>The mark the vessel is topped up to.</summary>
    public Volume Mark { get; init; }

    /// <summary>The finished stock, as it comes out in any order that leaves nothing behind.</summary>
    public MixingState Finished { get; init; } = new() { At = new Temperature(VesselContents.BenchCelsius) };

    /// <summary>True when no order is better than the file's.</summary>
    public bool IsPresentOrder { get; init; }

    /// <summary>What this order costs.</summary>
    public OrderCost Cost { get; init; }

    /// <summary>What the file's order costs with the same water to start with.</summary>
    public OrderCost PresentCost { get; init; }

    /// <summary>What the file's order brings about, worst first, with the addition that does.</summary>
    public IReadOnlyList<(OrderSolid Solid, OrderUnit At)> PresentSolids { get; init; } = [];

    /// <summary>True when every possible order was weighed; false for a bounded search, which makes no promise.</summary>
    public bool IsExact { get; init; }

    /// <summary>Errors that a check finds in the stock mixed in this order; empty until it was asked.</summary>
    public IReadOnlyList<Finding> Objections { get; init; } = [];

    /// <summary>What a check says of the stock in this order, which an order alone does not mend. Pure.</summary>
    /// <param name="today">The day suppressions are held against.</param>
    public IReadOnlyList<Finding> ObjectedIn(Workspace workspace, DateOnly today) =>
        Refused is not null || NothingButUnknown is not null ? []
            : CheckedStock.Errors(workspace, OrderedStock.Of(this) ?? Stock.Stock, today);

    /// <summary>Computes the best order of a stock. Pure; never throws on what a stock can hold.</summary>
    public static MixingOrder Of(StockFacts stock)
    {
        var units = OrderUnit.Of(stock);
        var empty = new MixingOrder { Stock = stock, Finished = stock.Mixing.FinishedState };
        var (atRest, asWritten) = (HazardGate.Of(Holding.Of(stock)), HazardGate.Of(stock));
        var written = asWritten.Forbids(VesselAction.Order);
        if (WithoutSearch(empty, units, Parted(stock, atRest, asWritten), written) is { } told)
        {
            return told;
        }

        var celsius =
            Math.Min(SolutionInput.HighestCelsius, stock.Stock.Steps.Select(MixingStep.WarmsTo).Max() ?? VesselContents.BenchCelsius);
        var water = new StartWater(stock, units);
        var start = Math.Min(water.InFile ?? (UsualStart * water.Mark), water.Most(RoomToTopUp));
        var problem = new OrderProblem(stock, units, water.Pour(start), celsius);
        var (order, exact) = OrderSearch.Best(problem);
        var smallest = water.Smallest(stock, order, celsius, RoomToTopUp);
        if (smallest > start)
        {
            // What decides an order with too little water need not decide one with enough.
            start = smallest.Value;
            problem = new OrderProblem(stock, units, water.Pour(start), celsius);
            (order, exact) = OrderSearch.Best(problem);
            smallest = water.Smallest(stock, order, celsius, RoomToTopUp);
        }

        var (moves, cost) = problem.Follow(order);
        var onTheWay = OnTheWay(water.Pour(start), moves);
        if (onTheWay.FirstOrDefault(h => h.Forbids(VesselAction.Order)) is { } danger)
        {
            return empty with { Refused = new Refusal(danger, VesselAction.Order, null, false) };
        }

        var (present, presentCost) = problem.Follow(units);
        return empty with
        {
            Places = PlacesOf(moves, OrderReasons.Of(problem, order), celsius),
            Hazards = HazardGate.Gravest([.. atRest.Hazards, .. onTheWay]),
            Mended = written?.Hazard,
            Start = new Volume(start),
            StartInFile = water.InFile is { } litres ? new Volume(litres) : null,
            SmallestStart = smallest is { } least ? new Volume(least) : null,
            At = new Temperature(celsius),
            Mark = new Volume(water.Mark),
            IsPresentOrder = order.Select(u => u.Index).SequenceEqual(Enumerable.Range(0, units.Count)),
            Cost = cost,
            PresentCost = presentCost,
            PresentSolids = SolidsOf(present),
            IsExact = exact,
        };
    }

    /// <summary>What is said where no order is looked for; null where one is.</summary>
    private static MixingOrder? WithoutSearch(MixingOrder empty, IReadOnlyList<OrderUnit> units, Hazard? parted, Refusal? written) =>
        parted is not null ? empty with { Refused = new Refusal(parted, VesselAction.Order, null, false) }
        : written is null && empty.Unknown is { IsAll: true } ? empty
        : Obstacle(empty.Stock, units) is not { } obstacle ? null
        : written is null ? empty with { NothingToOrder = obstacle }
        : empty with { Refused = written };

    /// <summary>What only water and order can mend is left to the order; what has to be parted is not, nor what has no water.</summary>
    private static Hazard? Parted(StockFacts stock, HazardReport atRest, HazardReport asWritten) =>
        atRest.Hazards.Where(h => h.Forbids(VesselAction.Order)).Select(h => asWritten.Find(h.Kind) ?? h).FirstOrDefault()
            ?? asWritten.Present.FirstOrDefault(h => (h.NeedsParting || IsDry(stock)) && h.Forbids(VesselAction.Order));

    private static IReadOnlyList<OrderPlace> PlacesOf(
        IReadOnlyList<OrderMove> moves, IReadOnlyList<IReadOnlyList<OrderReason>> reasons, double celsius) =>
    [
        .. moves.Select((m, i) => new OrderPlace(
            m.Unit,
            m.After,
            m.State,
            DissolvingHeat.Change(m.Unit.Additions, m.After.FreeWaterGrams, celsius),
            [.. m.Solids.Where(s => s.Milligrams >= OrderSolid.CountedFromMilligrams)],
            reasons[i])),
    ];

    private static IReadOnlyList<(OrderSolid Solid, OrderUnit At)> SolidsOf(IReadOnlyList<OrderMove> moves) =>
    [
        .. moves.SelectMany(m => m.Solids.Select(s => (Solid: s, At: m.Unit)))
            .OrderByDescending(s => s.Solid.Permanent)
            .ThenByDescending(s => s.Solid.Milligrams)
            .ThenBy(s => s.Solid.Name, StringComparer.Ordinal),
    ];

    /// <summary>True when no step of the file brings water: what is no stock but a dry mixture.</summary>
    private static bool IsDry(StockFacts stock) => stock.Mixing.Steps.All(s => s.After.FreeWaterGrams <= 0);

    /// <summary>Where each addition enters, before it is mixed in, and once it is.</summary>
    private static List<Hazard> OnTheWay(VesselContents start, IReadOnlyList<OrderMove> moves) =>
    [
        .. moves.SelectMany((m, i) => HazardGate.Meeting(i == 0 ? start : moves[i - 1].After, m.After)
            .Concat(HazardGate.Of(Holding.Of(m.After.Additions.Select(Held.Of), m.After.Litres)).Present)),
    ];

    private static string? Obstacle(StockFacts stock, IReadOnlyList<OrderUnit> units) => units.Count switch
    {
        0 => "Nothing goes in that could be ordered.",
        1 => $"Only {units[0].Name} goes in: there is nothing to order.",
        > OrderSearch.Most => $"More than {OrderSearch.Most} things go in; no order is looked for.",
        _ when stock.Mixing.FinishedState.Failure is { } failure =>
            $"The finished stock cannot be computed, so no order can be judged. {failure}",
        _ => null,
    };
}
