using System.Globalization;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Mixing;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Advice.Order;

/// <summary>
/// What can be put in, into which water, and what each addition brings about. The equilibrium after a set of additions depends on the set
/// and on the solids that earlier steps have left behind, so every state is solved once however many orders lead to it.
/// </summary>
internal sealed class OrderProblem
{
    /// <summary>
    /// Below this solubility in pure water a salt counts as slow, g/L (common practice, no source: as the rule on slow dissolvers).
    /// </summary>
    private const double SlowBelowGramsPerLitre = 150;

    /// <summary>
    /// Share of what the water can hold from which slowness matters (common practice, no source: as the rule on slow dissolvers).
    /// </summary>
    private const double SlowFromShare = 0.3;

    private readonly StockFacts _stock;
    private readonly MixingState _finished;
    private readonly double _litres;
    private readonly Dictionary<int, VesselContents> _contents = [];
    private readonly Dictionary<(int Set, string Locked), MixingState> _states = [];
    private readonly Dictionary<(int Set, string Locked, int Unit), OrderMove> _moves = [];

    public OrderProblem(StockFacts stock, IReadOnlyList<OrderUnit> units, VesselContents start, double celsius)
    {
        _stock = stock;
        Units = units;
        Start = start;
        Celsius = celsius;
        _finished = stock.Mixing.FinishedState;
        _litres = stock.Volume.Litres;
        _contents[0] = start;
    }

    public IReadOnlyList<OrderUnit> Units { get; }

    /// <summary>The vessel before the first addition.</summary>
    public VesselContents Start { get; }

    public double Celsius { get; }

    /// <summary>Additions tried so far; each costs a handful of equilibria.</summary>
    public int Tried => _moves.Count;

    /// <summary>Newton steps that were spent on all of them.</summary>
    public int Effort { get; private set; }

    public int All => (1 << Units.Count) - 1;

    /// <summary>Additions that may come next: those of the lowest stage that is not finished.</summary>
    public IEnumerable<OrderUnit> Next(int set)
    {
        var left = Units.Where(u => (set & (1 << u.Index)) == 0).ToList();
        return left.Where(u => u.Stage == left.Min(l => l.Stage));
    }

    /// <summary>Puts an addition to a set that is in the vessel, over the solids left behind.</summary>
    public OrderMove Put(int set, ComponentMoles locked, OrderUnit unit)
    {
        var key = (set, Key(locked), unit.Index);
        if (!_moves.TryGetValue(key, out var move))
        {
            move = Try(set, locked, unit);
            _moves.Add(key, move);
        }

        return move;
    }

    /// <summary>The moves of a whole order and what they cost.</summary>
    public (IReadOnlyList<OrderMove> Moves, OrderCost Cost) Follow(IEnumerable<OrderUnit> order)
    {
        var moves = new List<OrderMove>(Units.Count);
        var set = 0;
        var locked = VesselSettling.NothingLocked;
        var cost = default(OrderCost);
        foreach (var unit in order)
        {
            var move = Put(set, locked, unit);
            moves.Add(move);
            cost += move.Cost;
            set |= 1 << unit.Index;
            locked = move.Locked;
        }

        return (moves, cost);
    }

    /// <summary>True when nothing that can be seen lies in the stirred vessel at any step beyond what the stock drops anyway.</summary>
    public bool StaysClear(IEnumerable<OrderUnit> order)
    {
        var set = 0;
        foreach (var unit in order)
        {
            set |= 1 << unit.Index;
            var contents = Contents(set);
            var state = State(set, VesselSettling.NothingLocked);
            if (state.Failure is not null || state.Solids.Any(s => Excess(s) / contents.Litres >= SolidDeposit.VisibleGramsPerLitre))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>A name for a set of solids, the same for amounts nobody could tell apart.</summary>
    public static string Key(ComponentMoles locked) =>
        string.Join(';', locked.Select(l => string.Create(CultureInfo.InvariantCulture, $"{l.Key}={l.Value:E4}")));

    /// <summary>Share of what the vessel's water holds of a slow salt that this one takes; null for one that is not slow.</summary>
    public double? SlowShare(OrderUnit unit) =>
        unit.Salt is { } salt
        && HandbookSolubility.GramsPer100GramsWater(salt.Substance, Celsius) is { } solubility
        && solubility * 10 < SlowBelowGramsPerLitre
        && VesselContents.PureGrams(salt) / (solubility * Start.FreeWaterGrams / 100) is >= SlowFromShare and var share
            ? share
            : null;

    private OrderMove Try(int set, ComponentMoles locked, OrderUnit unit)
    {
        var before = Contents(set);
        var after = before.After(unit.Step, _stock);
        var state = State(set | (1 << unit.Index), locked);
        var solids = new List<OrderSolid>();
        var kept = locked;
        foreach (var solid in state.Solids)
        {
            var excess = Excess(solid);
            var lockedBefore = solid.Solid is { } known ? locked.GetValueOrDefault(known.Name) * known.MolarMassGramsPerMole : 0;
            var lost = solid.Locked > Mass.Zero && !IsInFinished(solid);
            if (lost)
            {
                kept = kept.With(solid.Name, solid.Locked.Grams / solid.Solid!.MolarMassGramsPerMole);
            }

            var counted = lost ? Math.Max(0, solid.Locked.Grams - lockedBefore) : excess;
            if (counted > 0)
            {
                solids.Add(new OrderSolid(
                    solid.Undissolved is null ? SolidOrigin.FallsOut : SolidOrigin.Undissolved,
                    solid.Solid,
                    solid.Undissolved,
                    new MassConcentration(solid.Mass.Grams / after.Litres),
                    PerLitre(counted),
                    lost,
                    state.Ph));
            }
        }

        foreach (var local in WhereTheyMeet(before, after, locked, state)
            .Where(l => _finished.Solids.All(f => f.Solid?.Formula != l.Solid.Formula)))
        {
            solids.Add(new OrderSolid(
                SolidOrigin.WhereTheyMeet, local.Solid, null, local.Concentration, PerLitre(local.AtATime.Grams),
                Redissolving.Of(local.Solid).Slowly, local.Ph));
        }

        if (state.Rust > Mass.Zero && _finished.Solids.All(f => f.Solid?.Formula != "Fe(OH)3"))
        {
            solids.Add(new OrderSolid(
                SolidOrigin.Rust, null, null,
                new MassConcentration(state.Rust.Grams / after.Litres),
                PerLitre(state.Rust.Grams),
                true,
                state.PhInAir));
        }

        var permanent = solids.Where(s => s.Permanent).Sum(s => s.Milligrams);
        var cost = new OrderCost(
            state.Failure is null ? 0 : 1,
            (long)Math.Round(permanent),
            (long)Math.Round(solids.Where(s => !s.Permanent).Sum(s => s.Milligrams)),
            (long)Math.Round(100 * permanent),
            Practice(set, unit),
            Units.Count(u => u.Index > unit.Index && (set & (1 << u.Index)) != 0));
        return new OrderMove(unit, after, state, kept, solids, cost);
    }

    private IReadOnlyList<LocalExcess> WhereTheyMeet(VesselContents before, VesselContents after, ComponentMoles locked, MixingState state)
    {
        var (solids, effort) = LocalExcessLine.Of(before, after, locked, state, Celsius);
        Effort += effort;
        return solids;
    }

    /// <summary>Habits passed over when this addition comes now.</summary>
    private int Practice(int set, OrderUnit unit)
    {
        var later = Units.Where(u => u != unit && (set & (1 << u.Index)) == 0).ToList();
        var passed = (unit.BringsMetal ? later.Count(u => u.BringsAgent || u.IsAcid) : 0)
            + (unit.BringsCalciumsPartner ? later.Count(u => u.BringsCalcium) : 0);
        return passed
            + (SlowShare(unit) is null ? 0 : Units.Count(u => (set & (1 << u.Index)) != 0 && u.Salt is not null && SlowShare(u) is null));
    }

    private VesselContents Contents(int set)
    {
        if (!_contents.TryGetValue(set, out var contents))
        {
            var last = 31 - int.LeadingZeroCount(set);
            contents = Contents(set & ~(1 << last)).After(Units[last].Step, _stock);
            _contents.Add(set, contents);
        }

        return contents;
    }

    private MixingState State(int set, ComponentMoles locked)
    {
        var key = (set, Key(locked));
        if (!_states.TryGetValue(key, out var state))
        {
            state = VesselSettling.Settle(Contents(set), locked, Celsius);
            Effort += state.Effort;
            _states.Add(key, state);
        }

        return state;
    }

    private double Excess(VesselSolid solid) =>
        Math.Max(0, solid.Mass.Grams - _finished.Solids.Where(f => SameSolid(f, solid)).Sum(f => f.Mass.Grams));

    private bool IsInFinished(VesselSolid solid) => _finished.Solids.Any(f => SameSolid(f, solid));

    private static bool SameSolid(VesselSolid finished, VesselSolid solid) =>
        finished.Name == solid.Name || (finished.Solid is { } aged && aged.Formula == solid.Solid?.Formula);

    private double PerLitre(double grams) => 1000 * grams / _litres;
}
