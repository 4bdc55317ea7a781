using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;

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

        var judgement = DepositJudgement.Of(stock, factory.Limits.Deposits);
        if (judgement.Failure is { } failure)
        {
            return [stock is { ComponentMoles.Count: 0, Additions: [var only, ..] }
                ? new Obstacle.OnlyUntold(only.Substance.Name) : new Obstacle.NotComputed(failure)];
        }

        var found = new List<Obstacle>();
        found.AddRange(judgement.Deposits.Where(d => d.GramsPerLitre > 0).Select(d => new Obstacle.Deposit(
            d.Solid, new MassConcentration(d.GramsPerLitre), d.State.Temperature, Suppliers(stock, d.Solid), Ions(d.Solid))));
        found.AddRange(judgement.Deposits.Where(d => d.GramsPerLitre == 0).Select(d => new Obstacle.TooClose(
            d.Solid, d.Index, d.State.Temperature, Suppliers(stock, d.Solid), Ions(d.Solid))));
        found.AddRange(judgement.Untold.Select(s => new Obstacle.NotComputed(
            $"it is stronger than the model covers, so whether {s.Called} stays dissolved cannot be told")));
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

    private static IReadOnlyList<string> Suppliers(StockFacts stock, Solid solid) =>
        [.. SuppliersOfSolid.In(stock, solid).Select(s => s.Name)];

    private static IReadOnlyList<string> Ions(Solid solid) =>
        [.. solid.Composition.Where(c => c.Value > 0 && c.Key is not (Component.Water or Component.Hydrogen)).Select(c => c.Key)];
}
