using RecipeLint.Analysis;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Workings;

/// <summary>Nitrogen that chelating agents hold.</summary>
internal static class ElementWorkings
{
    public static IEnumerable<RuleWorkings> All { get; } =
    [
        RuleWorkings.OnRecipes("chelate-nitrogen-counted", ChelateNitrogen),
    ];

    private static IEnumerable<Working> ChelateNitrogen(RecipeFacts recipe, RuleContext context)
    {
        var work = new WorkingBuilder($"nitrogen inside the chelating agents of '{recipe.Recipe.Name}'");
        if (recipe.Recipe.Targets.FirstOrDefault(t => t.Key.Value == "N") is not { Concentration: { } wanted } target)
        {
            yield return work.Condition("it states a target for N", false).Done();
            yield break;
        }

        var final = work.Given("final volume", recipe.FinalVolume.Litres, "L", "file");
        var parts = new List<Term>();
        foreach (var (component, nitrogen) in Rules.Chelation.ChelateNitrogenCounted.Agents.Where(a => recipe.ComponentMoles.GetValueOrDefault(a.Component) > 0))
        {
            var moles = work.Given($"{component} in the tank", 1000 * recipe.ComponentMoles[component], "mmol", "amounts in the file");
            parts.Add(work.Result($"its nitrogen, {nitrogen} atoms each", "mmol × atoms × 14.007 / volume", moles * nitrogen * Chemistry.Composition.AtomicWeights.Of(Chemistry.Composition.Element.N) / final, "mg/L"));
        }

        var locked = parts.Count switch
        {
            0 => work.Given("nitrogen in chelating agents", 0, "mg/L", "amounts in the file"),
            1 => parts[0],
            _ => work.Result("nitrogen in chelating agents", "sum", Term.Sum(parts), "mg/L"),
        };
        var found = work.Given("nitrogen that plants get", recipe.MilligramsPerLitre("N"), "mg/L", "amounts in the file");
        var counted = work.Result("with what the agents hold", "sum", found + locked, "mg/L");
        var asked = work.Given("target", wanted.MilligramsPerLitre, "mg/L", "file");
        var allowed = target.Tolerance?.HalfWidth(wanted.MilligramsPerLitre) is { } stated
            ? work.Given("allowed, ±", stated, "mg/L", "file")
            : work.Result("allowed, ±", "target × tolerance / 100", asked * work.Option("tolerance", "tolerance", context) / 100, "mg/L");
        var least = work.Result("least that is wanted", "target - allowed", asked - allowed, "mg/L");
        work.Test("short without the agents", found, Relation.Under, least, "mg/L")
            .Test("enough with them", counted, Relation.AtLeast, least, "mg/L")
            .Test("and not too much", counted, Relation.AtMost, work.Result("most that is wanted", "target + allowed", asked + allowed, "mg/L"), "mg/L");
        yield return (recipe.IsComplete ? work : work.Condition("the recipe could be read whole", false)).Done(found);
    }
}
