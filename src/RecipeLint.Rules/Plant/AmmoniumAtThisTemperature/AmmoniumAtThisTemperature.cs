using RecipeLint.Analysis;
using RecipeLint.Analysis.Profiles;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Plant;

/// <summary>A share of ammonium that the crop bears at ordinary temperature and not in the heat or cold that the recipe states.</summary>
internal sealed class AmmoniumAtThisTemperature : RecipeRule<AmmoniumAtThisTemperature.Share>
{
    public const string RuleName = "ammonium-at-this-temperature";

    public override string Name => RuleName;

    protected override bool OnlyForRoots => true;

    protected override IEnumerable<Share> Judge(RecipeFacts recipe, RuleContext context)
    {
        var options = context.Options<AmmoniumAtThisTemperatureOptions>();
        var (ammonium, all) = (recipe.MilligramsPerLitre("NH4-N"), recipe.MilligramsPerLitre("N"));
        var usual = recipe.Profile.Ratios.FirstOrDefault(r => r is { Numerator: "NH4-N", Denominator: "N" });
        if (recipe.Recipe.At is not { } at || usual is null || ammonium <= 0 || all <= 0)
        {
            yield return new Share(recipe, null, false, 0, 0, 0, 0, 0)
            {
                Checks = [Check.That("it says how warm it stands, holds ammonium, and the profile bounds its share", false)],
            };
            yield break;
        }

        // Nitrogen against nitrogen: the share by mass is the share by moles.
        var percent = Rounding.SixDigits(100 * ammonium / all);
        var bound = Rounding.SixDigits(usual.High * options.Part);
        var isWarm = at.Value.High.Celsius > options.WarmFrom;
        var outside = isWarm
            ? new Check("warmer than roots like with ammonium", at.Value.High.Celsius, Relation.Over, options.WarmFrom, "°C")
            : new Check("colder than roots like with ammonium", at.Value.Low.Celsius, Relation.Under, options.ColdUnder, "°C");
        var over = new Check("more than is left of the crop's bound", percent, Relation.Over, bound, "%");

        // Beyond the bound itself it is too much at any temperature, which the rule on ratios says.
        var within = new Check(
            "within the crop's bound at ordinary temperature", percent, Relation.AtMost, Rounding.SixDigits(100 * usual.High), "%");
        yield return new Share(recipe, usual, isWarm, isWarm ? at.Value.High.Celsius : at.Value.Low.Celsius, ammonium, all, percent, bound)
        {
            Checks = recipe.IsComplete
                ? [outside, over, within]
                : [outside, over, within, Check.That("the recipe could be read whole", false)],
        };
    }

    protected override Finding Describe(Share verdict, RuleContext context)
    {
        var why = verdict.IsWarm
            ? "Warm roots lack the sugar and oxygen to bind it, and what they cannot bind poisons them."
            : "In the cold nothing turns it into nitrate and roots bind it slowly, so that it piles up.";
        var message =
            $"{Say.Percent(verdict.Percent / 100)} of the nitrogen is ammonium, and the solution gets to {Say.Number(verdict.Celsius)} °C: "
            + $"the '{verdict.Recipe.Profile.Name}' profile takes up to {Say.Percent(verdict.Usual!.High)} at ordinary temperature, and "
                + $"about half of that is safe here. {why} "
            + "Bring the ammonium part as calcium or potassium nitrate for this season.";
        var place = verdict.Recipe.Recipe.At!.Place;
        return context.Find(place, message, Harm.Damage, Odds.Certain) with
        {
            Related = [.. ElementRatio.LargestSources(verdict.Recipe, "NH4-N").Take(2)],
            Measured = new Measured("ammonium among the nitrogen", verdict.Percent, verdict.Bound, "%"),
            Values = [new NamedValue("NH4-N", verdict.Ammonium, "mg/L"), new NamedValue(
                "N", verdict.All, "mg/L"), new NamedValue("temperature", verdict.Celsius, "°C")],
        };
    }

    protected override Working Work(Share verdict, RuleContext context)
    {
        if (verdict.Usual is not { } ratio)
        {
            return new WorkingBuilder($"ammonium in '{verdict.Recipe.Recipe.Name}'").Statements(verdict).Done();
        }

        var work = new WorkingBuilder($"ammonium in '{verdict.Recipe.Recipe.Name}' at {Say.Number(verdict.Celsius)} °C");
        var reached = work.Given("temperature it gets to", verdict.Celsius, "°C", "file");
        work.Check(verdict.Checks[0], reached, verdict.IsWarm
            ? work.Option("warm from", context.Options<AmmoniumAtThisTemperatureOptions>().WarmFrom)
            : work.Option("cold under", context.Options<AmmoniumAtThisTemperatureOptions>().ColdUnder));
        var ammonium = work.Given("nitrogen as ammonium", verdict.Ammonium, "mg/L", "amounts in the file");
        var all = work.Given("nitrogen in all", verdict.All, "mg/L", "amounts in the file");
        var share = work.Result("share of ammonium", "100 × ammonium / all", 100 * ammonium / all, "%");
        var usual = work.Given("most at ordinary temperature", 100 * ratio.High, "%", $"'{verdict.Recipe.Profile.Name}' profile");
        var part = work.Option("part of it that is left", context.Options<AmmoniumAtThisTemperatureOptions>().Part);
        var bound = work.Result("left", "most × part / 100", usual * part / 100, "%");
        return work.Check(verdict.Checks[1], share, bound).Check(verdict.Checks[2], share, usual).Statements(verdict).Done(share);
    }

    /// <summary>The share of ammonium and what is left of the bound.</summary>
    /// <param name="Celsius">The temperature that is farthest out.</param>
    /// <param name="Percent">Of the nitrogen.</param>
    /// <param name="Bound">Per cent that are left at this temperature.</param>
    internal sealed record Share(
        RecipeFacts Recipe, RatioRange? Usual, bool IsWarm, double Celsius, double Ammonium, double All, double Percent,
        double Bound) : Verdict;
}
