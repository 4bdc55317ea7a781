namespace RecipeLint.Advice.Order;

/// <summary>Why an addition stands where it does.</summary>
public enum OrderReasonKind
{
    /// <summary>Ahead of the named one it would bring about a solid.</summary>
    NotBefore,

    /// <summary>Behind the named one it would bring about a solid.</summary>
    NotAfter,

    /// <summary>It dissolves slowly: early, while the water is empty.</summary>
    Slow,

    /// <summary>Acid or chelate ahead of the metals it holds, calcium ahead of phosphate and sulfate; no solid decides it here.</summary>
    Habit,

    /// <summary>How much it takes depends on what is in by then, so nothing is moved past it.</summary>
    Fixed,

    /// <summary>Nothing depends on it: it stays where the file has it.</summary>
    Free,
}

/// <summary>One reason for the place of an addition.</summary>
/// <param name="Other">The addition it must not be exchanged with; null where no single one decides.</param>
/// <param name="Solid">What would come about the other way round; null where no solid decides.</param>
/// <param name="At">The addition that would bring it about.</param>
/// <param name="Share">Of a slow salt: the part of what the water holds that it takes, 0 to 1.</param>
public sealed record OrderReason(OrderReasonKind Kind, OrderUnit? Other, OrderSolid? Solid, OrderUnit? At, double? Share = null);

/// <summary>Compares an order with the ones in which a single addition stands elsewhere.</summary>
internal static class OrderReasons
{
    /// <summary>The reasons of every place, at least one each.</summary>
    public static IReadOnlyList<IReadOnlyList<OrderReason>> Of(OrderProblem problem, IReadOnlyList<OrderUnit> order)
    {
        var best = problem.Follow(order);
        return [.. order.Select((_, place) => Reasons(problem, order, best, place))];
    }

    private static List<OrderReason> Reasons(
        OrderProblem problem, IReadOnlyList<OrderUnit> order, (IReadOnlyList<OrderMove> Moves, OrderCost Cost) best, int place)
    {
        var unit = order[place];
        if (unit.Additions.Count == 0)
        {
            return [new OrderReason(OrderReasonKind.Fixed, null, null, null)];
        }

        var reasons = new List<OrderReason>();
        if (Nearest(problem, order, best, place, -1, solids: true) is { } earlier)
        {
            reasons.Add(new OrderReason(OrderReasonKind.NotBefore, earlier.Other, earlier.Worse?.Solid, earlier.Worse?.At));
        }

        if (Nearest(problem, order, best, place, +1, solids: true) is { } later)
        {
            reasons.Add(new OrderReason(OrderReasonKind.NotAfter, later.Other, later.Worse?.Solid, later.Worse?.At));
        }

        if (reasons.Count == 0 && problem.SlowShare(unit) is { } share)
        {
            reasons.Add(new OrderReason(OrderReasonKind.Slow, null, null, null, share));
        }

        if (reasons.Count == 0 && (Nearest(problem, order, best, place, -1, solids: false)
            ?? Nearest(problem, order, best, place, +1, solids: false)) is { } habit)
        {
            reasons.Add(new OrderReason(OrderReasonKind.Habit, habit.Other, null, null));
        }

        return reasons.Count > 0 ? reasons : [new OrderReason(OrderReasonKind.Free, null, null, null)];
    }

    /// <summary>The nearest addition that must not be passed, and the solid that would come of it.</summary>
    private static (OrderUnit Other, (OrderSolid Solid, OrderUnit At)? Worse)? Nearest(
        OrderProblem problem,
        IReadOnlyList<OrderUnit> order,
        (IReadOnlyList<OrderMove> Moves, OrderCost Cost) best,
        int place,
        int step,
        bool solids)
    {
        for (var to = place + step; to >= 0 && to < order.Count && order[to].Stage == order[place].Stage; to += step)
        {
            var other = order.ToList();
            other.RemoveAt(place);
            other.Insert(to, order[place]);
            var run = problem.Follow(other);
            if (solids ? run.Cost.SolidsOnly() > best.Cost.SolidsOnly() : run.Cost.Practice > best.Cost.Practice)
            {
                return (order[to], solids ? Worse(best.Moves, run.Moves) : null);
            }
        }

        return null;
    }

    /// <summary>The solid that one order has more of than the other: a permanent one first, then the most of it.</summary>
    private static (OrderSolid Solid, OrderUnit At)? Worse(IReadOnlyList<OrderMove> best, IReadOnlyList<OrderMove> other)
    {
        var before = Sums(best);
        var worst = Sums(other)
            .Select(s => (s.Key, More: s.Value - before.GetValueOrDefault(s.Key)))
            .Where(s => s.More > 0)
            .OrderByDescending(s => s.Key.Permanent)
            .ThenByDescending(s => s.More)
            .ThenBy(s => s.Key.Name, StringComparer.Ordinal)
            .Select(s => s.Key)
            .FirstOrDefault();
        return worst.Name is null
            ? null
            : other.SelectMany(m => m.Solids.Where(s => (s.Name, s.Origin, s.Permanent) == worst).Select(s => (Solid: s, At: m.Unit)))
                .MaxBy(s => s.Solid.Milligrams);
    }

    private static Dictionary<(string Name, SolidOrigin Origin, bool Permanent), double> Sums(IReadOnlyList<OrderMove> moves) =>
        moves.SelectMany(m => m.Solids)
            .GroupBy(s => (s.Name, s.Origin, s.Permanent))
            .ToDictionary(g => g.Key, g => g.Sum(s => s.Milligrams));
}
