using RecipeLint.Analysis;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Plant;

/// <summary>The reagent that sets the pH brings so much of its own nutrient that the feed is no longer what its salts say.</summary>
internal sealed class AcidBringsTooMuch : RecipeRule<NutrientOfReagent>, IProposesRepairs
{
    public const string RuleName = "acid-brings-too-much";

    public override string Name => RuleName;

    protected override bool OnlyForRoots => true;

    protected override IEnumerable<NutrientOfReagent> Judge(RecipeFacts recipe, RuleContext context)
    {
        if (!recipe.IsComplete || recipe.Adjustment is not { Amount: not null, Reagent: not null })
        {
            yield return new NutrientOfReagent(recipe, "", 0, 0, null, null, null)
            {
                Checks = [Check.That("it adjusts its pH with a reagent whose amount is known", false)],
            };
            yield break;
        }

        var most = context.Options<AcidBringsTooMuchOptions>().Share;
        foreach (var key in ReagentShare.Keys)
        {
            var all = Rounding.SixDigits(recipe.MilligramsPerLitre(key));
            var brought = Rounding.SixDigits(ReagentShare.MilligramsPerLitre(recipe, key));
            if (brought <= 0)
            {
                continue;
            }

            Check[] judged = RecipePlaces.Target(recipe, key) is null ? []
                : [Check.That("no target of the recipe judges this nutrient already", false)];
            if (recipe.Profile.Find(key)?.SufficientHigh is { } high && ReagentShare.PushesOverTheRange(recipe, key))
            {
                var over = new Check("over the range with the reagent", all, Relation.Over, high * Bound.Upper, "mg/L");
                var without = new Check("not over it without", Rounding.SixDigits(all - brought), Relation.AtMost, high * Bound.Upper,
                    "mg/L");
                yield return new NutrientOfReagent(recipe, key, all, brought, high, over, without) { Checks = [over, without, .. judged] };
                continue;
            }

            var share = new Check("more than a side effect", Rounding.SixDigits(100 * brought / all), Relation.Over, most, "%");
            yield return new NutrientOfReagent(recipe, key, all, brought, null, share, null) { Checks = [share, .. judged] };
        }
    }

    protected override Finding Describe(NutrientOfReagent verdict, RuleContext context)
    {
        var (recipe, key, all, brought) = (verdict.Recipe, verdict.Key, verdict.All, verdict.Brought);
        var (adjustment, check) = (recipe.Adjustment!, verdict.Off!);
        var start = $"Bringing the pH to {Say.Number(adjustment.TargetPh ?? 0)} with {adjustment.Reagent!.Name} adds "
            + $"{Say.Number(brought)} mg/L {key}";
        var message = verdict.High is { } high
            ? $"{start} and lifts it to {Say.Number(all)} mg/L, over the {Say.Number(high)} mg/L where the usual range of the "
                + $"'{recipe.Profile.Name}' profile ends. "
                + "The water takes so much reagent that it feeds the crop as well. "
                + context.AdviceFor(recipe).Sentence(
                    new Way("split the demand between two reagents"), new Way($"take that much {key} out of the salts"))
            : $"{start}, {Say.Percent(check.Value / 100)} of all the {key} in the feed. "
                + $"The amount follows the alkalinity of the water, so {key} drifts whenever the water does. Count it in the recipe "
                + "and check it against the water of each season.";
        return context.Find(
            adjustment.Place,
            $"{IdPath.Of(context.Facts.Workspace, adjustment.Place)}#{key}",
            message,
            Harm.Damage,
            verdict.High is null ? Odds.Possible : Odds.Certain,
            verdict.High is not null && recipe.Profile.Find(key) is { IsPractice: false } ? Certainty.Computed : Certainty.Practice) with
        {
            Measured = verdict.High is { } end ? new Measured(key, all, end, "mg/L")
                : new Measured($"share of {key} from the reagent", check.Value, check.Limit, "%"),
            Values = [new NamedValue(key, all, "mg/L"), new NamedValue($"{key} from the reagent", brought, "mg/L")],
            Related = recipe.Water?.Water is { Alkalinity: { } alkalinity }
                ? [new RelatedPlace(alkalinity.Place, "this alkalinity is what the reagent works against")] : [],
        };
    }

    protected override Working Work(NutrientOfReagent verdict, RuleContext context)
    {
        var (recipe, key) = (verdict.Recipe, verdict.Key);
        if (verdict.Off is not { } check || recipe.Adjustment is not { Amount: { } amount, Reagent: { } reagent } adjustment)
        {
            return new WorkingBuilder($"the reagent of '{recipe.Recipe.Name}'").Statements(verdict).Done();
        }

        var work = new WorkingBuilder($"{key} that {reagent.Name} brings to '{recipe.Recipe.Name}'");
        var mass = work.Given($"{reagent.Name} needed for pH {Say.Number(adjustment.TargetPh ?? 0)}", amount.Grams, "g", From.Engine);
        var content = work.Given($"{key} in a gram of it", verdict.Brought * recipe.FinalVolume.Litres / 1000 / amount.Grams, "g/g",
            "formula and strength");
        var brought = work.Result(
            $"{key} from it", "1000 × mass × share / final volume",
                1000 * mass * content / work.Given("final volume", recipe.FinalVolume.Litres, "L", From.File), "mg/L");
        var all = work.Given($"{key} in the solution", verdict.All, "mg/L", From.Amounts);
        if (verdict is { High: { } high, Without: { } without })
        {
            var edge = Bound.Edge(work, work.Given("upper end of the usual range", high, "mg/L", From.Profile), "end", true, "mg/L");
            var rest = work.Result("without the reagent", "all - from it", all - brought, "mg/L");
            return work.Check(check, all, edge).Check(without, rest, edge).Statements(verdict).Done(all);
        }

        var percent = work.Result("share of the reagent", "100 × from it / all", 100 * brought / all, "%");
        return work.Check(check, percent, work.Option("limit",
            context.Options<AcidBringsTooMuchOptions>().Share)).Statements(verdict).Done(percent);
    }

    /// <summary>Another acid, or purer water.</summary>
    protected override IEnumerable<RepairProposal> Repair(NutrientOfReagent verdict, Finding finding, RepairContext context)
    {
        if (context.RecipeOf(finding) is not { Recipe.Adjust.Target: { } target } recipe)
        {
            yield break;
        }

        foreach (var acid in new[] { "nitric-38", "phosphoric-59", "sulfuric-37", "hydrochloric-10" })
        {
            yield return Waters.Adjust(context, recipe, target.Value, acid);
        }

        foreach (var pure in Waters.Purer(recipe))
        {
            yield return pure;
        }
    }
}

/// <summary>A nutrient that the pH reagent brings.</summary>
/// <param name="All">mg/L in the solution, to six digits.</param>
/// <param name="Brought">mg/L from the reagent, to six digits.</param>
/// <param name="High">Where the usual range ends that the reagent pushes it over, mg/L; null where it does not.</param>
/// <param name="Off">Null where no reagent is dosed.</param>
/// <param name="Without">The amount without the reagent, where it pushes it over.</param>
internal sealed record NutrientOfReagent(
    RecipeFacts Recipe, string Key, double All, double Brought, double? High, Check? Off, Check? Without) : Verdict;
