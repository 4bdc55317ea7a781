using RecipeLint.Analysis.Judgement;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Precipitation;

/// <summary>The calibrated index and the product of totals, side by side.</summary>
internal abstract partial class SaltRule
{
    private protected override Working Fallen(DepositVerdict verdict, RuleContext context)
    {
        var salt = verdict.Deposit;
        var work = new WorkingBuilder(
            $"{salt.Solid.Called} in '{verdict.Stock.Stock.Name}' {Wording.When(verdict.Stock, salt.State, salt.Solid)}");
        var mean = SaltSteps.Write(work, salt.State, salt.Solid, salt.Salt, salt.Tests[0].Bar);
        var decides = DepositSteps.Write(work, verdict, salt, mean, context);
        return work.Done(salt.Deposits.Count > 0 ? decides : mean);
    }

    private protected override Working Stays(NearestVerdict verdict)
    {
        var work = new WorkingBuilder(
            $"{verdict.Solid.Called} in '{verdict.Stock.Stock.Name}' {Wording.When(verdict.Stock, verdict.State, verdict.Solid)}");
        var mean = SaltSteps.Write(
            work,
            verdict.State,
            verdict.Solid,
            verdict.Salt,
            SaltJudgement.CloseTest(verdict.Solid, verdict.Salt?.Index ?? 0, verdict.Salt).Bar);
        return work.Check(verdict.Checks[0], mean, verdict.Checks[0].Limit).Statements(verdict).Done(mean);
    }
}
