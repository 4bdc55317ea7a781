using RecipeLint.Analysis;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Plant;

/// <summary>Nitrogen that comes as urea, which roots without soil can hardly use and which turns into ammonium later.</summary>
internal sealed class UreaAsMainNitrogen : RecipeRule<UreaAsMainNitrogen.Share>
{
    public const string RuleName = "urea-as-main-nitrogen";

    private const string File = "amounts in the file";

    public override string Name => RuleName;

    protected override bool OnlyForRoots => true;

    protected override IEnumerable<Share> Judge(RecipeFacts recipe, RuleContext context)
    {
        var (urea, all) = (recipe.MilligramsPerLitre("urea-N"), recipe.MilligramsPerLitre("N"));
        if (urea <= 0 || all <= 0)
        {
            yield return new Share(recipe, 0, 0, 0, 0) { Checks = [Check.That("urea brings a part of its nitrogen", false)] };
            yield break;
        }

        var percent = Rounding.SixDigits(100 * urea / all);
        var over = new Check(
            "more than roots can use as it comes", percent, Relation.Over, context.Options<UreaAsMainNitrogenOptions>().MostUrea, "%");
        yield return new Share(recipe, urea, recipe.MilligramsPerLitre("NH4-N"), all, percent)
        {
            Checks = recipe.IsComplete ? [over] : [over, Check.That("the recipe could be read whole", false)],
        };
    }

    protected override Finding Describe(Share verdict, RuleContext context)
    {
        var place = RecipePlaces.Doses(verdict.Recipe);
        var untold = Untold(verdict.Recipe);
        var message = $"{Say.Percent(verdict.Percent / 100)} of the {Say.Number(verdict.All)} mg/L nitrogen "
            + (untold.Count == 0 ? "comes as urea. "
                : $"is taken to come as urea, for the label of {Say.List(untold)} does not say in which forms it is: write them from the "
                    + "bag or ask its maker. ")
            + "Roots take up little urea as it is, and a conductivity meter does not see it; microbes turn it into ammonium within days "
                + "to weeks, the warmer the sooner, "
            + $"and then {Say.Percent((verdict.Urea + verdict.Ammonium) / verdict.All)} of the nitrogen would be ammonium. Bring it as "
                + "calcium, potassium or magnesium nitrate instead.";
        return context.Find(place, message, Harm.Damage, untold.Count == 0 ? Odds.Certain : Odds.Possible) with
        {
            Related = [.. ElementRatio.LargestSources(verdict.Recipe, "urea-N").Take(2)],
            Measured = new Measured("nitrogen as urea", verdict.Percent, context.Options<UreaAsMainNitrogenOptions>().MostUrea, "%"),
            Values = [new NamedValue("urea-N", verdict.Urea, "mg/L"), new NamedValue(
                "NH4-N", verdict.Ammonium, "mg/L"), new NamedValue("N", verdict.All, "mg/L")],
        };
    }

    /// <summary>Products whose label leaves the forms of the nitrogen open, where one of them brings the urea.</summary>
    private static List<string> Untold(RecipeFacts recipe) =>
    [
        .. recipe.Doses
            .SelectMany(d => d.Direct is { } direct ? [direct] : d.Stock?.Additions ?? [])
            .Where(a => a.Substance.IsUreaTaken)
            .Select(a => a.Substance.Name)
            .Distinct(StringComparer.Ordinal),
    ];

    protected override Working Work(Share verdict, RuleContext context)
    {
        var work = new WorkingBuilder($"urea in '{verdict.Recipe.Recipe.Name}'");
        if (verdict.All <= 0)
        {
            return work.Statements(verdict).Done();
        }

        var urea = work.Given("nitrogen of urea", verdict.Urea, "mg/L", File);
        var all = work.Given("nitrogen in all", verdict.All, "mg/L", File);
        var share = work.Result("share of urea", "100 × urea / all", 100 * urea / all, "%");
        return work.Check(verdict.Checks[0], share, work.Option(
            "most that may come as urea", context.Options<UreaAsMainNitrogenOptions>().MostUrea)).Statements(verdict).Done(share);
    }

    /// <summary>The nitrogen of a recipe by form, mg/L.</summary>
    internal sealed record Share(RecipeFacts Recipe, double Urea, double Ammonium, double All, double Percent) : Verdict;
}
