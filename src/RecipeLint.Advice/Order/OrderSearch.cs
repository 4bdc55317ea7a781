using RecipeLint.Analysis.Mixing;
using RecipeLint.Analysis.Solutions;

namespace RecipeLint.Advice.Order;

/// <summary>
/// Finds the order that costs least. Up to <see cref="MostExact"/> additions a shortest-path search over what is in the vessel (the set of
/// additions and the solids left behind) is exact: costs are never negative and add up. With n additions it looks at no more than n·2^(n-1)
/// moves as long as the best order leaves nothing behind, 1,024 for eight; where something is left behind in every order, sets multiply by
/// what lies in them. Above that, or when <see cref="MostMoves"/> or <see cref="MostEffort"/> are used up, it keeps the
/// <see cref="Width"/> best beginnings of each length, or one: at most n²·<see cref="Width"/>/2 moves, and no promise.
/// </summary>
internal static class OrderSearch
{
    /// <summary>Additions up to which the search is exact.</summary>
    public const int MostExact = 8;

    /// <summary>Additions beyond which there is no search: sets of additions are bits of a number.</summary>
    public const int Most = 30;

    private const int Width = 24, MostMoves = 40_000;

    /// <summary>
    /// Newton steps after which the search goes on with one beginning of each length; eight salts of a stock take some thousand.
    /// </summary>
    internal const int MostEffort = 30_000;

    public static (IReadOnlyList<OrderUnit> Order, bool IsExact) Best(OrderProblem problem) =>
        problem.Units.Count <= MostExact && Exact(problem) is { } order ? (order, true) : (Bounded(problem), false);

    private static List<OrderUnit>? Exact(OrderProblem problem)
    {
        var open = new PriorityQueue<Node, (OrderCost Cost, int Set, int Number)>();
        var best = new Dictionary<(int Set, string Locked), OrderCost>();
        var closed = new HashSet<(int Set, string Locked)>();
        var number = 0;
        Push(new Node(0, VesselSettling.NothingLocked, default, null, null));
        while (open.TryDequeue(out var node, out _))
        {
            if (!closed.Add((node.Set, OrderProblem.Key(node.Locked))))
            {
                continue;
            }

            if (node.Set == problem.All)
            {
                return node.Path();
            }

            foreach (var unit in problem.Next(node.Set))
            {
                var move = problem.Put(node.Set, node.Locked, unit);
                Push(new Node(node.Set | (1 << unit.Index), move.Locked, node.Cost + move.Cost, node, unit));
            }

            if (problem.Tried > MostMoves || problem.Effort > MostEffort)
            {
                return null;
            }
        }

        return null;

        void Push(Node node)
        {
            var key = (node.Set, OrderProblem.Key(node.Locked));
            if (!best.TryGetValue(key, out var known) || node.Cost < known)
            {
                best[key] = node.Cost;
                open.Enqueue(node, (node.Cost, node.Set, number++));
            }
        }
    }

    private static List<OrderUnit> Bounded(OrderProblem problem)
    {
        var level = new List<Node> { new(0, VesselSettling.NothingLocked, default, null, null) };
        for (var length = 0; length < problem.Units.Count; length++)
        {
            var next = new Dictionary<(int Set, string Locked), Node>();
            foreach (var node in level)
            {
                foreach (var unit in problem.Next(node.Set))
                {
                    var move = problem.Put(node.Set, node.Locked, unit);
                    var child = new Node(node.Set | (1 << unit.Index), move.Locked, node.Cost + move.Cost, node, unit);
                    var key = (child.Set, OrderProblem.Key(child.Locked));
                    if (!next.TryGetValue(key, out var known) || child.Cost < known.Cost)
                    {
                        next[key] = child;
                    }
                }
            }

            level = [.. next.Values
                .OrderBy(n => n.Cost)
                .ThenBy(n => n.Set)
                .ThenBy(n => OrderProblem.Key(n.Locked), StringComparer.Ordinal)
                .Take(problem.Effort > MostEffort ? 1 : Width)];
        }

        // The file's own order is always among those compared.
        var (_, present) = problem.Follow(problem.Units);
        return level[0].Cost < present ? level[0].Path() : [.. problem.Units];
    }

    private sealed record Node(int Set, ComponentMoles Locked, OrderCost Cost, Node? Before, OrderUnit? Last)
    {
        public List<OrderUnit> Path()
        {
            var path = new List<OrderUnit>();
            for (var node = this; node.Last is { } unit; node = node.Before!)
            {
                path.Add(unit);
            }

            path.Reverse();
            return path;
        }
    }
}
