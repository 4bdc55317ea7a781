using RecipeLint.Analysis;
using RecipeLint.Analysis.Profiles;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Plant;

/// <summary>More sodium or chloride than the crop takes up, from the water and the salts together.</summary>
internal sealed class SodiumOrChlorideLoad : RecipeRule<BallastLoad>, IProposesRepairs
{
    public const string RuleName = "sodium-or-chloride-load";

    private static readonly (string Key, string Word)[] _ballast = [("Na", "sodium"), ("Cl", "chloride")];

    public override string Name => RuleName;

    protected override bool OnlyForRoots => true;

    protected override IEnumerable<BallastLoad> Judge(RecipeFacts recipe, RuleContext context)
    {
        foreach (var (key, word) in _ballast)
        {
            if (recipe.Profile.Find(key) is not { SufficientHigh: { } high } range)
            {
                continue;
            }

            var found = Rounding.SixDigits(recipe.MilligramsPerLitre(key));
            var heavy = Bound.IsOver(found, Nutrients.Excessive(range));
            var bound = heavy ? Nutrients.Excessive(range)!.Value : high;
            var past = new Check("over the bound", found, Relation.Over, bound * Bound.Upper, "mg/L");
            var checks = new List<Check>(3) { past };
            if (!recipe.IsComplete)
            {
                checks.Add(Check.That("the recipe could be read whole", false));
            }

            if (Bound.IsOver(found, range.ToxicAbove))
            {
                checks.Add(Check.That("it is not so much that it harms (the rule on toxic amounts speaks of that)", false));
            }

            // A water that is unfit for that very reason is said once, at the water.
            if (!heavy && recipe.Water?.Water is { } water && WaterLimits.Breaches(water).Any(b => b.Limit.Key == key))
            {
                checks.Add(Check.That("the water is not reported as unfit for the same reason", false));
            }

            yield return new BallastLoad(recipe, range, word, found, bound, heavy, past) { Checks = checks };
        }
    }

    protected override Finding Describe(BallastLoad verdict, RuleContext context)
    {
        var (recipe, key, name, found, limit) = (verdict.Recipe, verdict.Range.Key, verdict.Word, verdict.Found, verdict.Bound);
        double Brought(bool byWater) => recipe.Elements[key].Contributions.Where(c => (c.Source == "water") == byWater)
            .Sum(c => c.Concentration.MilligramsPerLitre);
        var fromWater = Brought(byWater: true);
        var untold = fromWater > found / 2 && IsUntold(recipe, key);
        var message = $"The final solution holds {Say.Number(found)} mg/L {name}, over the {Say.Number(limit)} mg/L that the "
            + $"'{recipe.Profile.Name}' profile {(verdict.IsHeavy ? "bears" : "is usually given")}; "
            + $"{Say.Number(fromWater)} mg/L come with the water and {Say.Number(Brought(byWater: false))} mg/L with the doses. "
            + (verdict.IsTwice
                ? "That is twice what it bears or more: leaves burn from the edge, and yield is lost from the first weeks. "
                : "Roots take up little of it, so in a solution that is used again it piles up until it harms. ")
            + (untold ? $"The analysis states no {name}: it is the most that its other figures leave room for, and may be bicarbonate, "
                + "calcium or another ion instead. Have the water analysed. "
                : fromWater > found / 2 ? "Blend the water with rain or reverse-osmosis water, or drain more "
            + "often." : $"Replace the salt that brings it with one free of {name}.");
        var place = RecipePlaces.TargetOrDoses(recipe, key);
        return context.Find(
            place,
            $"{IdPath.Of(context.Facts.Workspace, place)}#{key}",
            message,
            verdict.IsTwice ? Harm.Loss : Harm.Damage,
            verdict.IsHeavy && !untold ? Odds.Certain : Odds.Possible,
            verdict.Range.IsPractice ? Certainty.Practice : Certainty.Computed) with
        {
            Related = [.. ElementRatio.LargestSources(recipe, key).Take(3)],
            Measured = new Measured(key, found, limit, "mg/L"),
            Values = [new NamedValue(key, found, "mg/L"), new NamedValue($"{key} from the water", fromWater, "mg/L"),
                new NamedValue("limit", limit, "mg/L")],
        };
    }

    /// <summary>True where the water states conductivity, hardness or alkalinity and the ion only fills what they leave.</summary>
    private static bool IsUntold(RecipeFacts recipe, string key) => recipe.Water?.Water is { } water
        && water.Values.Any(v => v.Key.Value == key
            && (v.Key.Place == water.Ec?.Place || v.Key.Place == water.Hardness?.Place || v.Key.Place == water.Alkalinity?.Place));

    protected override Working Work(BallastLoad verdict, RuleContext context)
    {
        var recipe = verdict.Recipe;
        var work = new WorkingBuilder($"{verdict.Range.Key} in '{recipe.Recipe.Name}' against the '{recipe.Profile.Name}' profile");
        var found = ElementSteps.Found(work, recipe, verdict.Range.Key);
        var stated = work.Given(verdict.IsHeavy ? "more than it bears" : "what it is usually given at most", verdict.Bound, "mg/L",
            From.Profile);
        return work.Check(verdict.Past, found, Bound.Edge(work, stated, "bound", true, "mg/L")).Statements(verdict).Done(found);
    }

    /// <summary>Purer water, or a salt without it.</summary>
    protected override IEnumerable<RepairProposal> Repair(BallastLoad verdict, Finding finding, RepairContext context)
    {
        if (context.RecipeOf(finding) is not { } recipe)
        {
            yield break;
        }

        foreach (var pure in Waters.Purer(recipe))
        {
            yield return pure;
        }

        foreach (var addition in finding.Related.Select(r => context.AdditionAt(r.Place)).OfType<AdditionFacts>())
        {
            foreach (var other in Additions.OtherSalts(context, addition))
            {
                yield return other;
            }
        }

        foreach (var less in Contributions.ToLimit(context, recipe, verdict.Range.Key, verdict.Bound))
        {
            yield return less;
        }
    }
}

/// <summary>Sodium or chloride of a final solution against its range.</summary>
/// <param name="Word">"sodium" or "chloride".</param>
/// <param name="Found">mg/L, to six digits.</param>
/// <param name="Bound">mg/L.</param>
/// <param name="IsHeavy">More than the crop bears.</param>
internal sealed record BallastLoad(
    RecipeFacts Recipe, ElementRange Range, string Word, double Found, double Bound, bool IsHeavy, Check Past) : Verdict
{
    /// <summary>At least twice what the crop bears.</summary>
    public bool IsTwice => IsHeavy && Found >= 2 * Bound;
}
