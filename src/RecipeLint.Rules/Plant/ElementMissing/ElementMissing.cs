using RecipeLint.Analysis;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Plant;

/// <summary>Essential nutrients that no dose and no water brings, all named at once.</summary>
internal sealed class ElementMissing : RecipeRule<MissingElements>
{
    public const string RuleName = "element-missing";

    public override string Name => RuleName;

    protected override bool OnlyForRoots => true;

    protected override IEnumerable<MissingElements> Judge(RecipeFacts recipe, RuleContext context)
    {
        var missing = Nutrients.Missing(recipe);
        var count = new Check("one is missing", missing.Count, Relation.Over, 0);
        yield return new MissingElements(recipe, missing, count)
        {
            Checks = [count, Check.That("the recipe could be read whole and doses something", recipe.IsComplete && recipe.Doses.Count > 0)],
        };
    }

    protected override Finding Describe(MissingElements verdict, RuleContext context)
    {
        var (recipe, missing) = (verdict.Recipe, verdict.Missing);
        var labels = Nutrients.KnownByLabel(recipe);
        var waterSaysLittle = recipe.Water?.Water is { Estimates.Count: > 0 };
        return context.Find(
            RecipePlaces.Doses(recipe),
            $"Nothing brings {Say.List(missing)} into '{recipe.Recipe.Name}': neither a dose nor the water '{recipe.Water?.Name}'. "
            + (labels.Count > 0 ? $"It may be there all the same, for no label declares all it holds: ask the maker of {Say.List(labels)}. "
                : "")
            + "Plants cannot finish their life without any one of them, and what is used up first stops growth. "
            + context.AdviceFor(recipe).Sentence(
                [new Way("add what carries them", Puts.Chelate), .. waterSaysLittle
                    ? [new Way("name a full analysis of the water if that brings them")] : Array.Empty<Way>()],
                waterSaysLittle ? "" : "a feed for one purpose only, such as a calcium supplement, can be accepted with a suppression"),
            labels.Count == 0 && Nutrients.IsForgotten(recipe, missing) ? Harm.Loss : Harm.Damage,
            Nutrients.IsForOnePurpose(recipe, missing) ? Odds.Possible : Odds.Certain) with
        {
            Measured = new Measured("missing nutrients", missing.Count, 0, ""),
            Values = [.. missing.Select(key => new NamedValue(key, 0, "mg/L"))],
        };
    }

    protected override Working Work(MissingElements verdict, RuleContext context)
    {
        var work = new WorkingBuilder($"essential nutrients of '{verdict.Recipe.Recipe.Name}'");
        foreach (var key in Nutrients.Essential)
        {
            work.Given(key, verdict.Recipe.MilligramsPerLitre(key), "mg/L", From.Amounts);
        }

        var missing = work.Given("of these that are 0", verdict.Missing.Count, "", From.Count);
        return work.Check(verdict.Count, missing, 0).Statements(verdict).Done(missing);
    }
}

/// <summary>Essential elements that neither a dose nor the water brings.</summary>
internal sealed record MissingElements(RecipeFacts Recipe, IReadOnlyList<string> Missing, Check Count) : Verdict;
