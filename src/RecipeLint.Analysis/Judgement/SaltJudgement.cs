using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Analysis.Judgement;

/// <summary>
/// Soluble salts: the calibrated index and the product of total molalities decide together whether one crystallises or comes close.
/// </summary>
public static class SaltJudgement
{
    /// <summary>Index of a salt whose constant is not fitted to a handbook from which it is said to be close.</summary>
    public const double UnfittedFrom = 0.3;

    /// <summary>Each salt of an owner that crystallises or comes close in one state.</summary>
    internal static IEnumerable<JudgedDeposit> In(SolutionState state, DepositOwner owner, OwnerLimits limits, Solid? only)
    {
        var judged = new HashSet<Solid>();
        foreach (var salt in state.Salts)
        {
            judged.Add(salt.Solid);
            var deposit = state.Deposit(salt.Solid.Name);
            if (!IsWanted(salt.Solid)
                || (salt.State == SaltState.Clear && deposit is null) || IsTakenByOthers(state, salt, deposit))
            {
                continue;
            }

            yield return Of(
                state, owner, limits, salt.Solid, salt.Index, deposit, salt, salt.IsSure ? Sureness.Clear : Sureness.NearTheLimit);
        }

        foreach (var deposit in state.Deposits.Where(d => IsWanted(d.Solid) && !judged.Contains(d.Solid)))
        {
            var sureness = JudgedDeposit.SurenessOf(
                Rounding.SixDigits(deposit.Index), deposit.Solid, JudgedDeposit.DoubtOf(state, deposit.Solid, limits.NearLimit));
            yield return Of(state, owner, limits, deposit.Solid, deposit.Index, deposit, null, sureness);
        }

        if (state.IsBeyondTheModel)
        {
            yield break;
        }

        // Salts without a handbook fit have a printed constant only: never more than close.
        foreach (var (solid, index) in state.Clear!.Solids.Where(s => s.Solid.Role == SolidRole.SolubleSalt
            && s.Index > UnfittedFrom
            && !judged.Contains(s.Solid)))
        {
            if (IsWanted(solid))
            {
                yield return Of(state, owner, limits, solid, index, null, null, Sureness.NearTheLimit);
            }
        }

        bool IsWanted(Solid solid) => (only is null || solid == only) && solid.Owner == owner.Name;
    }

    private static JudgedDeposit Of(
        SolutionState state, DepositOwner owner, OwnerLimits limits, Solid solid, double index, SolidDeposit? deposit, SaltVerdict? salt,
        Sureness sureness)
    {
        var rounded = Rounding.SixDigits(index);
        var grams = Rounding.SixDigits(deposit?.Mass.GramsPerLitre ?? 0);
        var close = -(salt?.CloseFrom ?? SaltVerdicts.CloseFromIndex(solid));
        return new JudgedDeposit
        {
            Owner = owner,
            State = state,
            Solid = solid,
            Index = rounded,
            Deposits = deposit is null ? [] : [deposit],
            Here = sureness,
            Doubt = close,
            FallsOut = deposit is not null || salt is { State: SaltState.Crystallises },
            Salt = salt,
            Tests = [.. Tests()],
        };

        IEnumerable<DepositTest> Tests()
        {
            // What the equilibrium gives of a salt needs no second measure.
            var test = CloseTest(solid, rounded, salt, deposit is not null);
            if (deposit is null || test.Holds)
            {
                yield return test;
            }

            if (grams > 0)
            {
                yield return new DepositTest(DepositBar.EnoughToSee, grams, limits.Visible);
            }
        }
    }

    /// <summary>The bar a salt has to pass to come close: the mean of its two measures, or one of them alone.</summary>
    /// <param name="mean">Of the two measures, or the one there is.</param>
    /// <param name="formed">True where the equilibrium gives some of it.</param>
    public static DepositTest CloseTest(Solid solid, double mean, SaltVerdict? salt, bool formed = false)
    {
        var from = salt is { } known ? known.CloseFrom : formed ? 0 : UnfittedFrom;
        var byMean = new DepositTest(DepositBar.CloseByTheMean, mean, from);
        if (byMean.Holds || formed || salt is not { } measures)
        {
            return byMean;
        }

        var highest =
            Math.Max(measures.CalibratedIndex ?? measures.ProductIndex ?? 0, measures.ProductIndex ?? measures.CalibratedIndex ?? 0);
        var byOne = new DepositTest(DepositBar.CloseByOneMeasure, highest, measures.CloseByEither);
        return byOne.Holds ? byOne
            : measures.Mixed is { } mixed ? new DepositTest(DepositBar.CloseAsMixedCrystals, Rounding.SixDigits(mixed.Index), 0)
            : byMean;
    }

    /// <summary>What other deposits take of its ions leaves it dissolved: it would be announced twice.</summary>
    private static bool IsTakenByOthers(SolutionState state, SaltVerdict salt, SolidDeposit? deposit) =>
        deposit is null
        && state.Deposits.Any(d => d.Solid != salt.Solid
            && salt.Solid.Composition.Any(c => c.Key != Component.Water && d.Solid.Composition.Any(o => o.Key == c.Key)))
        && (salt.State == SaltState.Crystallises || state.Deposits.Any(d => d.Solid.Owner == SolidOwner.DoubleSalt
            && salt.Solid.Composition.All(c => c.Key == Component.Water || d.Solid.Composition.Any(o => o.Key == c.Key))));
}
