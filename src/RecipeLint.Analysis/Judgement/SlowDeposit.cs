using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Analysis.Judgement;

/// <summary>A solid that forms over weeks: worth a remark about storage, never more.</summary>
/// <param name="State">The moment at which most of it can form.</param>
/// <param name="Index">Saturation index.</param>
/// <param name="GramsPerLitre">At equilibrium beside everything that forms readily, six digits.</param>
public sealed record SlowDeposit(SolutionState State, Solid Solid, double Index, double GramsPerLitre)
{
    /// <summary>Stocks used up sooner give no remark on solids that form slowly, days.</summary>
    public const double KeptDays = StockChemistry.AgedAfterDays;

    /// <summary>The largest slow deposit of an owner worth a remark; null when there is none or the stock is used up before.</summary>
    public static SlowDeposit? Worst(StockFacts stock, DepositOwner owner, OwnerLimits limits)
    {
        if (stock.Stock.Keep?.For is { } shelf && shelf.Value.Days <= KeptDays)
        {
            return null;
        }

        // Asked by every rule on solids of every stock, and hardly ever is there one.
        if (!stock.Chemistry.States.Any(s => MayBeIn(s, owner, limits)))
        {
            return null;
        }

        return DepositJudgement.MomentsOf(stock)
            .Where(s => s.IsSolved && s.Moment is StateMoment.Coldest or StateMoment.Warmest)
            .SelectMany(s => s.NearSaturation
                .Where(n => n.Solid.Role == SolidRole.FormsSlowly && n.Solid.Owner == owner.Name && n.Index > Beyond(n.Solid, limits))
                .Select(n => new SlowDeposit(s, n.Solid, n.Index, Amount(s, n.Solid))))
            .Where(c => c.GramsPerLitre >= limits.Visible)
            .OrderByDescending(c => c.GramsPerLitre)
            .FirstOrDefault();
    }

    private static bool MayBeIn(SolutionState state, DepositOwner owner, OwnerLimits limits)
    {
        foreach (var (solid, index) in state.Clear is { } clear ? clear.AllSolids : default)
        {
            if (solid.Role == SolidRole.FormsSlowly && index > Beyond(solid, limits) && solid.Owner == owner.Name)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Saturation index by which a slow solid has to be past its limit: more than the doubt.</summary>
    public static double Beyond(Solid solid, OwnerLimits limits) => Math.Max(limits.NearLimit, solid.Spread);

    /// <summary>g/L at equilibrium beside everything that forms readily.</summary>
    private static double Amount(SolutionState state, Solid solid)
    {
        var settled = StateSolver.Solve(
            state.Mix, new StateRequest(state.Moment, state.Temperature, false, []) { Besides = solid, StartFrom = state.Clear });
        return Rounding.SixDigits(settled.Deposit(solid.Name)?.Mass.GramsPerLitre ?? 0);
    }
}
