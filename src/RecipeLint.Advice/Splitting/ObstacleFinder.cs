using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Advice.Splitting;

/// <summary>Everything that stands against a part, from the whole analysis of the stock it would be.</summary>
internal static class ObstacleFinder
{
    /// <summary>The largest deposit first; empty for a fit part.</summary>
    public static IReadOnlyList<Obstacle> In(StockFacts stock, PartContent content, double dilution, PartFactory factory)
    {
        if (factory.DangerIn(content, dilution) is { } danger)
        {
            return [new Obstacle.Danger(danger)];
        }

        var chemistry = stock.Chemistry;
        var states = new[] { chemistry.Mixing, chemistry.Coldest, chemistry.Warmest };
        if (states.FirstOrDefault(s => !s.IsSolved) is { } lost)
        {
            return [new Obstacle.NotComputed(lost.Failure!)];
        }

        var found = new List<Obstacle>();
        var deposits = states
            .SelectMany(s => s.Deposits.Where(d => !d.IsTrace).Select(d => (Deposit: d, State: s)))
            .GroupBy(d => d.Deposit.Solid)
            .Select(g => g.MaxBy(d => d.Deposit.Mass))
            .OrderByDescending(d => d.Deposit.Mass)
            .ThenBy(d => d.Deposit.Solid.Name, StringComparer.Ordinal)
            .ToList();
        found.AddRange(deposits.Select(d => new Obstacle.Deposit(
            d.Deposit.Solid, d.Deposit.Mass, d.State.Temperature, Suppliers(stock, d.Deposit.Solid), Ions(d.Deposit.Solid))));
        var close = states
            .SelectMany(s => s.Salts.Where(v => v.Solid.Role == SolidRole.SolubleSalt && v.State != SaltState.Clear).Select(v => (Salt: v, State: s)))
            .Where(v => deposits.All(d => d.Deposit.Solid != v.Salt.Solid))
            .GroupBy(v => v.Salt.Solid)
            .Select(g => g.MaxBy(v => v.Salt.MeanIndex()))
            .OrderByDescending(v => v.Salt.MeanIndex())
            .ThenBy(v => v.Salt.Solid.Name, StringComparer.Ordinal);
        found.AddRange(close.Select(v => new Obstacle.TooClose(
            v.Salt.Solid, v.Salt.MeanIndex(), v.State.Temperature, Suppliers(stock, v.Salt.Solid), Ions(v.Salt.Solid))));
        if (factory.CanSpoil(content) && PartJudge.Spoils(stock, factory.Limits) is { } spoils)
        {
            found.Add(spoils);
        }

        if (!factory.IsTraceOnly(content) && factory.TooLittleToWeigh(content, dilution) is { } little)
        {
            found.Add(little);
        }

        return found;
    }

    private static IReadOnlyList<string> Suppliers(StockFacts stock, Solid solid) => [.. SuppliersOfSolid.In(stock, solid).Select(s => s.Name)];

    private static IReadOnlyList<string> Ions(Solid solid) =>
        [.. solid.Composition.Where(c => c.Value > 0 && c.Key is not ("H2O" or "H+")).Select(c => c.Key)];
}
