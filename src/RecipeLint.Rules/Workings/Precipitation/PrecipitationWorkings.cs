using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Precipitation;

namespace RecipeLint.Rules.Workings.Precipitation;

/// <summary>The workings of the precipitation family.</summary>
internal static class PrecipitationWorkings
{
    public static IEnumerable<RuleWorkings> All { get; } =
    [
        .. RuleList.All.OfType<SolidRule>().Select(rule => RuleWorkings.OnStocks(
            rule.Name, (stock, context) => rule is SaltRule salts ? SaltWorkings.Of(salts, stock, context) : StockSolidWorkings.Of(rule, stock, context))),
        RuleWorkings.OnStocks("iron-with-benzoate", Benzoate),
        RuleWorkings.OnRecipes("tank-precipitate", Tank),
        new("solution-not-judged", (subject, _) =>
            subject.Stocks.SelectMany(s => NotJudged(s.Stock.Name, s.IsComplete, s.Chemistry.States))
                .Concat(subject.Recipes.SelectMany(r => NotJudged(r.Recipe.Name, r.IsComplete, r.Chemistry.States)))),
    ];

    private static IEnumerable<Working> Benzoate(StockFacts stock, RuleContext context)
    {
        var work = new WorkingBuilder($"iron benzoate in '{stock.Stock.Name}'");
        var total = stock.Concentration(IronWithBenzoate.Benzoate).MolesPerLitre;
        var least = context.Number("fromPh");
        SolutionState?[] states = [stock.Chemistry.Mixing, stock.Chemistry.Aged];
        var worst = states.OfType<SolutionState>().Where(s => s.IsSolved)
            .OrderByDescending(s => s.PhBeforeDeposit >= least)
            .ThenByDescending(s => Rounding.SixDigits(IronWithBenzoate.Unprotected(stock, s)))
            .FirstOrDefault();
        if (!(total > 0) || worst is null)
        {
            yield return work.Condition("it holds benzoate, and its equilibrium can be computed", false).Done();
            yield break;
        }

        var pH = work.Given($"pH {Wording.When(worst)}{(worst.Moment == StateMoment.Aged ? ", once the air has oxidised the iron" : "")}", worst.PhBeforeDeposit, "", Saturation.Engine);
        work.Test("the pH at which it separates", pH, Relation.AtLeast, work.Option("lowest pH", "fromPh", context));
        var iron = work.Given("iron(III) that no chelate holds", IronWithBenzoate.Unprotected(stock, worst), "mol/L", Saturation.Engine);
        var benzoate = work.Given("benzoate", total, "mol/L", "amounts in the file");
        var pairs = work.Result(
            "iron that finds enough benzoate", "the smaller of the iron and benzoate / 2", Term.Smaller(iron, benzoate / IronWithBenzoate.BenzoatesPerIron), "mol/L");
        var grams = work.Result("iron benzoate", "moles × molar mass of Fe(C7H5O2)2OH", pairs * IronWithBenzoate.GramsPerMoleIron, "g/L");
        work.Test("enough to see", grams, Relation.AtLeast, work.Option("deposit from which a finding is given", "visible", context), "g/L");
        yield return work.Done(grams);
    }

    private static IEnumerable<Working> Tank(RecipeFacts recipe, RuleContext context)
    {
        var states = TankPrecipitate.JudgedStates(recipe);
        var fallouts = states.SelectMany(s => s.Deposits).Select(d => SolidOwners.Of(d.Solid)?.Rule).OfType<string>().Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)
            .Select(owner => Fallout.Worst(states, d => SolidOwners.Of(d.Solid)?.Rule == owner, 0))
            .OfType<Fallout>()
            .ToList();
        foreach (var fallout in fallouts)
        {
            yield return Fallen(recipe, fallout, context);
        }

        if (fallouts.Count > 0)
        {
            yield break;
        }

        if (Deposits.Nearest(states, s => s.Role == SolidRole.FormsReadily && SolidOwners.Of(s) is not null) is var (state, solid, _))
        {
            var work = new WorkingBuilder($"{SolidOwners.Of(solid)!.Called} in the tank '{recipe.Recipe.Name}' {Wording.When(state)}, the solid that is nearest to falling out");
            var (times, _) = Saturation.Write(work, state.Clear!, solid);
            yield return work.Test("past the limit", times, Relation.Over, 1).Done();
        }
        else
        {
            yield return new WorkingBuilder($"the tank '{recipe.Recipe.Name}'").Condition("its equilibrium can be computed and holds ions of a solid", false).Done();
        }
    }

    private static Working Fallen(RecipeFacts recipe, Fallout fallout, RuleContext context)
    {
        var work = new WorkingBuilder($"{fallout.Owned.Called} in the tank '{recipe.Recipe.Name}' {Wording.When(fallout.State)}");
        var (times, _) = Saturation.Write(work, fallout.State.Clear!, fallout.Largest.Solid);
        work.Test("past the limit", times, Relation.Over, 1);
        var grams = Deposits.Weight(work, fallout);
        var loss = TankPrecipitate.Counts(recipe, fallout, context);
        var metal = TankPrecipitate.TraceMetals.MaxBy(fallout.ShareOf)!;
        if (!(fallout.ShareOf(metal) > 0))
        {
            work.Test("enough to see", grams, Relation.AtLeast, work.Option("deposit from which a finding is given", "visible", context), "g/L");
            return work.Done(grams);
        }

        var lost = Deposits.Lost(work, fallout, metal);
        work.Test("enough of the metal to matter", lost, Relation.AtLeast, work.Option("share that counts", "metalShare", context), "%");
        if (loss is null && fallout.ShareOf(metal) >= context.Number("metalShare") / 100)
        {
            work.Condition("no chelating agent was put in for this iron (why it lets go is a matter of the rules on chelates)", false);
        }

        return work.Done(lost);
    }

    private static IEnumerable<Working> NotJudged(string name, bool isComplete, IReadOnlyList<SolutionState> states)
    {
        var work = new WorkingBuilder($"whether '{name}' can be judged");
        var state = states.FirstOrDefault(s => !s.IsSolved)
            ?? states.Where(s => s.Validity.Trust == Trust.OutOfRange && SolutionNotJudged.Passed(s).Count > 0).FirstOrDefault()
            ?? states.MaxBy(s => s.IonicStrengthMolPerKg);
        if (state is { IsSolved: true })
        {
            var strength = work.Given($"ionic strength {Wording.When(state)}", state.IonicStrengthMolPerKg, "mol/kg", Saturation.Engine);
            work.Remark($"The model is good to {Say.Number(SaltVerdicts.HighestIonicStrength)} mol/kg.");
            if (state.Validity.Trust != Trust.OutOfRange)
            {
                yield return work.Test("outside the model", strength, Relation.Over, SaltVerdicts.HighestIonicStrength, "mol/kg").Done();
                yield break;
            }

            work.Condition("it is outside the range of the model", true)
                .Condition("a solid that is no plain salt comes near its limit there", SolutionNotJudged.Passed(state).Count > 0);
        }
        else
        {
            work.Condition("an equilibrium is not found", isComplete && state is not null);
        }

        yield return work.Done();
    }
}
