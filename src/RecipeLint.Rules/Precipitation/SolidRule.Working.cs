using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Precipitation;

/// <summary>How the verdicts follow from the activities of the ions.</summary>
internal abstract partial class SolidRule
{
    protected override Working? Work(SolidVerdict verdict, RuleContext context) => verdict switch
    {
        DepositVerdict fallen => Fallen(fallen, context),
        SlowVerdict slow => Slow(slow, context),
        NearestVerdict nearest => Stays(nearest),
        _ => new WorkingBuilder($"'{verdict.Stock.Stock.Name}'").Statements(verdict).Done(),
    };

    private protected virtual Working Fallen(DepositVerdict verdict, RuleContext context)
    {
        var deposit = verdict.Deposit;
        var work = new WorkingBuilder($"{deposit.Solid.Called} in '{verdict.Stock.Stock.Name}' {Wording.When(verdict.Stock, deposit)}");
        var (times, _) = Write(work, deposit.State, deposit.Solid);
        var decides = DepositSteps.Write(work, verdict, deposit, times, context);
        return work.Remark(DepositSteps.Doubt(deposit)).Done(decides);
    }

    /// <summary>Nothing of its own falls out: the solid that is nearest to it.</summary>
    private protected virtual Working Stays(NearestVerdict verdict)
    {
        var called = verdict.Solid.Called;
        var work = new WorkingBuilder(
            $"{called} in '{verdict.Stock.Stock.Name}' {Wording.When(verdict.Stock, verdict.State, verdict.Solid)}, "
                + "where it is nearest to falling out");
        var (times, _) = Write(work, verdict.State, verdict.Solid);
        return work.Check(verdict.Checks[0], times, 1).Statements(verdict).Done();
    }

    private static Working Slow(SlowVerdict verdict, RuleContext context)
    {
        var slow = verdict.Deposit;
        var work = new WorkingBuilder(
            $"{slow.Solid.Called} in '{verdict.Stock.Stock.Name}' {Wording.When(verdict.Stock, slow.State, slow.Solid)}; "
                + "it forms over weeks");
        var (_, index) = Write(work, slow.State, slow.Solid);
        work.Check(verdict.Checks[0], index, verdict.Checks[0].Limit);
        if (verdict.Checks.Count > 2)
        {
            var kept = verdict.Checks[1];
            work.Check(kept, work.Given("time it is kept", kept.Value, "days", "file"), kept.Limit);
        }

        var most = work.Given("most of it that can settle", slow.GramsPerLitre, "g/L", Saturation.Engine);
        return work.Check(verdict.Checks[^1], most, work.Option("deposit from which a finding is given", DepositOptions.Visible, context))
            .Done(most);
    }

    /// <summary>The totals that are weighed in, then the ion product.</summary>
    private protected static (Term Times, Term Index) Write(WorkingBuilder work, SolutionState state, Solid solid)
    {
        foreach (var component in solid.Composition
            .Where(c => c.Key is not (Component.Water or Component.Hydrogen) && c.Value > 0)
            .Select(c => c.Key))
        {
            if (state.Mix.Totals[component] is > 0 and var total)
            {
                work.Given($"{IonWords.Of(component)} in all, in any form", total, "mol/kg", "amounts in the file");
            }
        }

        return Saturation.Write(work, state.Clear!, solid);
    }
}
