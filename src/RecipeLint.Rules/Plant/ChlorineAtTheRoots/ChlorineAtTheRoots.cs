using RecipeLint.Analysis;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Plant;

/// <summary>Bleach in what the plants get: too little of it for gas, enough to harm roots.</summary>
internal sealed class ChlorineAtTheRoots : RecipeRule<ChlorineAtTheRoots.Dose>
{
    public const string RuleName = "chlorine-at-the-roots";

    public override string Name => RuleName;

    protected override bool OnlyForRoots => true;

    protected override IEnumerable<Dose> Judge(RecipeFacts recipe, RuleContext context)
    {
        var found = ChlorineInTank.MilligramsPerLitre(recipe);
        if (found <= 0)
        {
            yield return new Dose(recipe, null, 0, 0) { Checks = [Check.That("bleach goes into it", false)] };
            yield break;
        }

        var bleach = Holding.OfWhatIsRead(recipe).First(HazardRole.Hypochlorite);
        var over = new Check(
            "more than roots bear", found, Relation.AtLeast, context.Options<ChlorineAtTheRootsOptions>().NoteFrom, "mg/L");
        yield return new Dose(recipe, bleach, found, recipe.MilligramsPerLitre("NH4-N"))
        {
            Checks = ChlorineInTank.GivesGas(recipe)
                ? [over, Check.That("no gas comes of it (the rules on people speak of that)", false)]
                : [over],
        };
    }

    protected override Finding Describe(Dose verdict, RuleContext context)
    {
        var options = context.Options<ChlorineAtTheRootsOptions>();
        var place = verdict.Bleach?.Place is { } own && own.File == verdict.Recipe.Recipe.Place.File
            ? own
            : RecipePlaces.Doses(verdict.Recipe);
        var message = $"The final solution holds {Say.Number(verdict.Found)} mg/L of available chlorine from {verdict.Bleach!.Name}; "
            + $"lettuce in water culture suffered from {Say.Number(options.NoteFrom)} mg/L on and a crop was smaller by two fifths at "
            + $"{Say.Number(options.HarmFrom)} mg/L. "
            + (verdict.Ammonium > 0
                ? $"With the {Say.Number(verdict.Ammonium)} mg/L of ammonium nitrogen it turns into chloramine, which browns roots and "
                    + "stays for days. "
                : "It fades within hours to days, with light and organic matter the sooner. ")
            + "Disinfect the emptied system and rinse it, or let the water stand until a strip shows no chlorine, before plants get it.";
        var odds = verdict.Found >= options.HarmFrom ? Odds.Certain
            : verdict.Ammonium > 0 || verdict.Checks[0].IsTwice ? Odds.NearTheLimit
            : Odds.Possible;
        return context.Find(place, message, Harm.Loss, odds) with
        {
            Measured = new Measured("available chlorine", verdict.Found, options.NoteFrom, "mg/L"),
            Values =
            [
                new NamedValue("available chlorine", verdict.Found, "mg/L"),
                new NamedValue("NH4-N", verdict.Ammonium, "mg/L"),
            ],
            Related = verdict.Bleach.Place is { } from && from != place ? [new RelatedPlace(from, "brings the chlorine")] : [],
        };
    }

    protected override Working Work(Dose verdict, RuleContext context)
    {
        var work = new WorkingBuilder($"chlorine in '{verdict.Recipe.Recipe.Name}'");
        if (verdict.Bleach is null)
        {
            return work.Statements(verdict).Done();
        }

        var found = work.Given("available chlorine", verdict.Found, "mg/L", From.Amounts);
        return work.Check(verdict.Checks[0], found, work.Option("limit", context.Options<ChlorineAtTheRootsOptions>().NoteFrom))
            .Statements(verdict).Done(found);
    }

    /// <summary>The bleach of a recipe.</summary>
    /// <param name="Found">Available chlorine, mg/L.</param>
    /// <param name="Ammonium">mg/L of nitrogen.</param>
    internal sealed record Dose(RecipeFacts Recipe, Held? Bleach, double Found, double Ammonium) : Verdict;
}
