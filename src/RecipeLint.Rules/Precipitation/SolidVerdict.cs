using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Precipitation;

/// <summary>What a rule on solids found out about one stock.</summary>
internal abstract record SolidVerdict(StockFacts Stock) : Verdict;

/// <summary>Something falls out, or a salt comes close; too little of it is looked at and does not fire.</summary>
/// <param name="Limits">Of the rule.</param>
internal sealed record DepositVerdict(StockFacts Stock, JudgedDeposit Deposit, OwnerLimits Limits) : SolidVerdict(Stock)
{
    private readonly Memo _nearest = new();

    /// <summary>Every bar that the judgement set, and nothing of its own.</summary>
    public static DepositVerdict Of(StockFacts stock, JudgedDeposit deposit, OwnerLimits limits) =>
        new(stock, deposit, limits) { Checks = [.. deposit.Tests.Select(DepositChecks.Of)] };

    /// <summary>The nearest changes at which it would stay clear; searched when first asked for.</summary>
    public NearestClear Nearest => _nearest.Value ??= NearestClear.Of(
        Deposit,
        Deposit.Owner.IsOfSalts ? [] : DepositJudgement.MomentsOf(Stock),
        Stock.Stock.Dose?.Value,
        DepositLimits.Default.With(Deposit.Owner.Name, Limits));

    /// <summary>What was searched; no part of what the verdict says.</summary>
    private sealed class Memo
    {
        public NearestClear? Value { get; set; }

        public override bool Equals(object? obj) => obj is Memo;

        public override int GetHashCode() => 0;
    }
}

/// <summary>Something forms over weeks in a stock that is kept.</summary>
internal sealed record SlowVerdict(StockFacts Stock, SlowDeposit Deposit, OwnerLimits Limits) : SolidVerdict(Stock);

/// <summary>Nothing of its own falls out: the solid that is nearest to it, at the moment it is nearest.</summary>
/// <param name="Salt">The two measures of a soluble salt; null for any other solid.</param>
internal sealed record NearestVerdict(StockFacts Stock, SolutionState State, Solid Solid, SaltVerdict? Salt) : SolidVerdict(Stock);

/// <summary>There is nothing to work out: the ions are not there, or no state is.</summary>
internal sealed record SilentVerdict(StockFacts Stock) : SolidVerdict(Stock);

/// <summary>Phosphate that only a low pH keeps dissolved in a trace stock.</summary>
/// <param name="Grams">g/L that settle at the pH of the worst case.</param>
internal sealed record KeptByPhVerdict(StockFacts Stock, Solid Solid, double Grams) : SolidVerdict(Stock);

/// <summary>The bars of the judgement as checks of a verdict.</summary>
internal static class DepositChecks
{
    public static Check Of(DepositTest test) => test.Bar switch
    {
        DepositBar.PastTheLimit => new Check("past the limit", test.Value, Relation.Over, test.Limit),
        DepositBar.CloseByTheMean => new Check("at least close to the limit", test.Value, Relation.Over, test.Limit),
        DepositBar.CloseByOneMeasure => new Check("one of the two measures alone is near the limit", test.Value, Relation.Over, test.Limit),
        DepositBar.CloseAsMixedCrystals =>
            new Check("past the limit as mixed crystals with its kin", test.Value, Relation.Over, test.Limit),
        DepositBar.EnoughToSee => new Check("enough to see", test.Value, Relation.AtLeast, test.Limit, "g/L"),
        _ => new Check("enough of the metal to matter", test.Value, Relation.AtLeast, test.Limit, "%"),
    };
}
