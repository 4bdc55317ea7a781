using RecipeLint.Analysis;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;
using Way = RecipeLint.Rules.Engine.Repair;

namespace RecipeLint.Rules.Chelation;

/// <summary>A nitrogen target that is only met when the nitrogen inside chelating agents is counted, which plants do not get.</summary>
internal sealed class ChelateNitrogenCounted : RecipeRule<ChelateNitrogenCounted.Count>, IProposesRepairs
{
    public const string RuleName = "chelate-nitrogen-counted";

    /// <summary>Nitrogen atoms in each agent, from their formulas.</summary>
    private static readonly (string Component, int Nitrogen)[] _agents =
        [(Component.Edta, 2), (Component.Dtpa, 3), (Component.Hedta, 2), (Component.Eddha, 2), (Component.Idha, 1),
            ("inert:FeHBED-1", 2)];

    public override string Name => RuleName;

    protected override IEnumerable<Count> Judge(RecipeFacts recipe, RuleContext context)
    {
        if (recipe.Recipe.Targets.FirstOrDefault(t => t.Key.Value == "N") is not { Concentration: { } wanted } target)
        {
            yield return new Count(recipe, null, 0, 0, 0, 0) { Checks = [Check.That("it states a target for N", false)] };
            yield break;
        }

        var locked = _agents.Sum(a => a.Nitrogen * recipe.ComponentMoles.GetValueOrDefault(a.Component))
            * AtomicWeights.Of(Element.N) * 1000 / recipe.FinalVolume.Litres;
        var found = recipe.MilligramsPerLitre("N");
        var asked = wanted.MilligramsPerLitre;
        var allowed = target.Tolerance?.HalfWidth(asked) ?? (asked * context.Options<ChelateNitrogenCountedOptions>().Tolerance / 100);
        var least = Rounding.SixDigits(asked - allowed);
        var counted = Rounding.SixDigits(found + locked);
        List<Check> checks =
        [
            new("short without the agents", Rounding.SixDigits(found), Relation.Under, least, "mg/L"),
            new("enough with them", counted, Relation.AtLeast, least, "mg/L"),
            new("and not too much", counted, Relation.AtMost, Rounding.SixDigits(asked + allowed), "mg/L"),
        ];
        if (!recipe.IsComplete)
        {
            checks.Add(Check.That("the recipe could be read whole", false));
        }

        yield return new Count(recipe, target, asked, found, locked, least) { Checks = checks };
    }

    protected override Finding Describe(Count verdict, RuleContext context)
    {
        var (target, asked, found, locked, least) = (verdict.Target!, verdict.Asked, verdict.Found, verdict.Locked, verdict.Least);
        var message =
            $"Nitrogen comes to {Say.Number(found)} mg/L where at least {Say.Number(least)} mg/L is wanted; the {Say.Number(locked)} mg/L "
                + "inside the chelating agents would make up the difference. "
            + "Plants do not get that nitrogen: it stays bound in the agent. "
            + $"Leave it out of the count and add {Say.Number(asked - found)} mg/L as nitrate, or lower the target to what is there.";
        return context.Find(target.Place, message, Harm.Damage, Odds.Possible) with
        {
            Measured = new Measured("nitrogen", found, least, "mg/L"),
            Values =
            [
                new NamedValue("nitrogen", found, "mg/L"),
                new NamedValue("nitrogen in chelating agents", locked, "mg/L"),
                new NamedValue("least wanted", least, "mg/L"),
            ],
        };
    }

    protected override Working Work(Count verdict, RuleContext context)
    {
        var recipe = verdict.Recipe;
        var work = new WorkingBuilder($"nitrogen inside the chelating agents of '{recipe.Recipe.Name}'");
        if (verdict.Target is not { } target)
        {
            return work.Statements(verdict).Done();
        }

        var final = work.Given("final volume", recipe.FinalVolume.Litres, "L", "file");
        var parts = new List<Term>();
        foreach (var (component, nitrogen) in _agents.Where(a => recipe.ComponentMoles.GetValueOrDefault(a.Component) > 0))
        {
            var moles = work.Given($"{component} in the tank", 1000 * recipe.ComponentMoles[component], "mmol", "amounts in the file");
            parts.Add(work.Result(
                $"its nitrogen, {nitrogen} atoms each",
                "mmol × atoms × 14.007 / volume",
                moles * nitrogen * AtomicWeights.Of(Element.N) / final,
                "mg/L"));
        }

        var locked = parts.Count switch
        {
            0 => work.Given("nitrogen in chelating agents", 0, "mg/L", "amounts in the file"),
            1 => parts[0],
            _ => work.Result("nitrogen in chelating agents", "sum", Term.Sum(parts), "mg/L"),
        };
        var found = work.Given("nitrogen that plants get", verdict.Found, "mg/L", "amounts in the file");
        var counted = work.Result("with what the agents hold", "sum", found + locked, "mg/L");
        var asked = work.Given("target", verdict.Asked, "mg/L", "file");
        var allowed = target.Tolerance?.HalfWidth(verdict.Asked) is { } stated
            ? work.Given("allowed, ±", stated, "mg/L", "file")
            : work.Result(
                "allowed, ±",
                "target × tolerance / 100",
                asked * work.Option("tolerance", context.Options<ChelateNitrogenCountedOptions>().Tolerance) / 100,
                "mg/L");
        var least = work.Result("least that is wanted", "target - allowed", asked - allowed, "mg/L");
        work.Check(verdict.Checks[0], found, least).Check(verdict.Checks[1], counted, least);
        work.Check(verdict.Checks[2], counted, work.Result("most that is wanted", "target + allowed", asked + allowed, "mg/L"));
        return work.Statements(verdict).Done(found);
    }

    /// <summary>The target as it is met without the agent's nitrogen.</summary>
    protected override IEnumerable<RepairProposal> Repair(Count verdict, Finding finding, RepairContext context)
    {
        if (context.Item(finding.Place)?.Text.Contains("mg/L", StringComparison.Ordinal) == true
            && Amounts.With(context, finding.Place, Math.Round(verdict.Found)) is var (edit, text))
        {
            yield return Way.Chemistry("lower-target", $"Ask for {text} of nitrogen, which is what the plants can get.", edit);
        }
    }

    /// <summary>The nitrogen of one final solution, mg/L.</summary>
    /// <param name="Target">Null where none is stated.</param>
    /// <param name="Found">What plants get.</param>
    /// <param name="Locked">Inside chelating agents.</param>
    /// <param name="Least">That is wanted, to six digits.</param>
    internal sealed record Count(RecipeFacts Recipe, Target? Target, double Asked, double Found, double Locked, double Least) : Verdict;
}
