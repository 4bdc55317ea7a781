using RecipeLint.Analysis;
using RecipeLint.Analysis.Profiles;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Plant;

namespace RecipeLint.Rules.Workings.Plant;

/// <summary>Elements, targets and ratios of the final solution.</summary>
internal static class ElementWorkings
{
    public static IEnumerable<RuleWorkings> All { get; } =
    [
        .. RuleList.All.OfType<ElementRangeRule>().Select(rule => RuleWorkings.OnRecipes(rule.Name, (recipe, _) => Range(rule, recipe))),
        RuleWorkings.OnRecipes("sodium-or-chloride-load", Ballast),
        RuleWorkings.OnRecipes("element-missing", Missing),
        RuleWorkings.OnRecipes("target-missed", Targets),
        RuleWorkings.OnRecipes("ratio-out-of-range", Ratios),
        RuleWorkings.OnRecipes("chelate-nitrogen-counted", ChelateNitrogen),
    ];

    private static IEnumerable<Working> Range(ElementRangeRule rule, RecipeFacts recipe)
    {
        foreach (var range in recipe.Profile.Elements)
        {
            var exact = Rounding.SixDigits(recipe.MilligramsPerLitre(range.Key));
            var passed = rule.PassedBound(exact, range, recipe.Profile.Name);
            var bound = passed ?? rule switch
            {
                ElementLow => range.SufficientLow ?? range.DeficientBelow,
                ElementHigh => range.SufficientHigh,
                _ => range.ToxicAbove,
            };
            if (bound is not { } limit)
            {
                continue;
            }

            var work = new WorkingBuilder($"{range.Key} in '{recipe.Recipe.Name}' against the '{recipe.Profile.Name}' profile{Stage(recipe)}");
            var found = ElementSteps.Found(work, recipe, range.Key);
            var low = rule is ElementLow;
            var stated = work.Given(low ? "bound below" : "bound above", limit, "mg/L", "profile");
            var margin = low ? 1 - Bound.HalfOfTheThirdDigit : 1 + Bound.HalfOfTheThirdDigit;
            var edge = work.Result("with half of its third digit", $"bound × {((Term)margin).Text}", stated * margin, "mg/L");
            work.Test(low ? "under the bound" : "over the bound", found, low ? Relation.Under : Relation.Over, edge, "mg/L");
            if (passed is null && rule is ElementHigh && Bound.IsOver(exact, range.ToxicAbove))
            {
                work.Condition("it is not so much that it harms (element-toxic speaks of that)", false);
            }

            if (!recipe.IsComplete)
            {
                work.Condition("the recipe could be read whole", false);
            }
            else if (rule.LeavesToOthers(recipe, range.Key))
            {
                work.Condition("no other rule has more to say of this element here", false);
            }

            yield return work.Done(found);
        }
    }

    private static string Stage(RecipeFacts recipe) => recipe.Profile.Stage == "any" ? "" : $", stage '{recipe.Profile.Stage}'";

    private static IEnumerable<Working> Ballast(RecipeFacts recipe, RuleContext context)
    {
        foreach (var key in new[] { "Na", "Cl" })
        {
            if (recipe.Profile.Find(key) is not { SufficientHigh: { } high } range)
            {
                continue;
            }

            var work = new WorkingBuilder($"{key} in '{recipe.Recipe.Name}' against the '{recipe.Profile.Name}' profile");
            var found = ElementSteps.Found(work, recipe, key);
            var exact = Rounding.SixDigits(recipe.MilligramsPerLitre(key));
            var heavy = Bound.IsOver(exact, Nutrients.Excessive(range));
            var stated = work.Given(heavy ? "more than it bears" : "what it is usually given at most", heavy ? Nutrients.Excessive(range)!.Value : high, "mg/L", "profile");
            var edge = work.Result("with half of its third digit", "bound × 1.005", stated * (1 + Bound.HalfOfTheThirdDigit), "mg/L");
            work.Test("over the bound", found, Relation.Over, edge, "mg/L");
            if (Bound.IsOver(exact, range.ToxicAbove))
            {
                work.Condition("it is not so much that it harms (element-toxic speaks of that)", false);
            }

            if (!heavy && recipe.Water?.Water is { } water && WaterLimits.Breaches(water).Any(b => b.Limit.Key == key))
            {
                work.Condition("the water is not reported as unfit for the same reason", false);
            }

            yield return (recipe.IsComplete ? work : work.Condition("the recipe could be read whole", false)).Done(found);
        }
    }

    private static IEnumerable<Working> Missing(RecipeFacts recipe, RuleContext context)
    {
        var work = new WorkingBuilder($"essential nutrients of '{recipe.Recipe.Name}'");
        foreach (var key in Nutrients.Essential)
        {
            work.Given(key, recipe.MilligramsPerLitre(key), "mg/L", "amounts in the file");
        }

        var missing = work.Given("of these that are 0", Nutrients.Missing(recipe).Count, "", "count");
        work.Test("one is missing", missing, Relation.Over, 0);
        yield return (recipe.IsComplete && recipe.Doses.Count > 0 ? work : work.Condition("the recipe could be read whole and doses something", false)).Done(missing);
    }

    private static IEnumerable<Working> Targets(RecipeFacts recipe, RuleContext context)
    {
        var any = false;
        foreach (var target in recipe.Recipe.Targets)
        {
            if (target.Concentration is not { GramsPerLitre: > 0 } wanted)
            {
                continue;
            }

            any = true;
            var key = target.Key.Value;
            var work = new WorkingBuilder($"{key} in '{recipe.Recipe.Name}' against its target");
            var found = ElementSteps.Found(work, recipe, key);
            var asked = work.Given($"target{(target.Basis is { } basis ? $" (stated as {basis})" : "")}, as {key}", wanted.MilligramsPerLitre, "mg/L", "file");
            var off = work.Result("off by", "found - target", found - asked, "mg/L");
            work.Result("in per cent", "100 × off / target", 100 * off / asked, "%");
            var allowed = target.Tolerance?.HalfWidth(wanted.MilligramsPerLitre) is { } stated
                ? work.Given("allowed, ±", stated, "mg/L", "file")
                : work.Result("allowed, ±", "target × tolerance / 100", asked * work.Option("tolerance", "tolerance", context) / 100, "mg/L");
            work.Test("further off than allowed", work.Result("distance", "without the sign", Term.Size(off), "mg/L"), Relation.Over, allowed, "mg/L");
            if (found.Value > 0)
            {
                var factor = work.Result("found against wanted", "found / target", found / asked);
                if (Math.Abs(off.Value) > allowed.Value
                    && UsualSlips.Name(recipe, context.Facts.Workspace.Catalogue, key, factor.Value, context.Number("slipTolerance") / 100) is { } slip)
                {
                    work.Remark(slip.Sentence);
                }
            }

            yield return (recipe.IsComplete ? work : work.Condition("the recipe could be read whole", false)).Done(found);
        }

        if (!any)
        {
            yield return new WorkingBuilder($"the targets of '{recipe.Recipe.Name}'").Condition("it states a target for an element", false).Done();
        }
    }

    private static IEnumerable<Working> Ratios(RecipeFacts recipe, RuleContext context)
    {
        foreach (var range in recipe.Profile.Ratios)
        {
            var work = new WorkingBuilder($"{range.Numerator} : {range.Denominator} in '{recipe.Recipe.Name}', by {Basis(range)}");
            if (ElementRatio.Of(recipe, range) is null)
            {
                yield return work.Condition("both sides of the ratio are there", false).Done();
                continue;
            }

            var ratio = work.Result("ratio", $"{range.Numerator} / {range.Denominator}", Side(work, recipe, range, range.Numerator) / Side(work, recipe, range, range.Denominator));
            var high = ratio.Value > range.High || (ratio.Value >= range.Low && range.High / ratio.Value < ratio.Value / range.Low);
            var bound = work.Given(high ? "upper bound" : "lower bound", high ? range.High : range.Low, "", "profile");
            var margin = high ? 1 + Bound.HalfOfTheThirdDigit : 1 - Bound.HalfOfTheThirdDigit;
            var edge = work.Result("with half of its third digit", $"bound × {((Term)margin).Text}", bound * margin);
            work.Test(high ? "over the bound" : "under the bound", ratio, high ? Relation.Over : Relation.Under, edge);
            if (ElementRatio.FollowsFromAnElement(recipe, range))
            {
                work.Condition("no element of it is so far out of its own range that the ratio only follows from that", false);
            }

            yield return (recipe.IsComplete ? work : work.Condition("the recipe could be read whole", false)).Done(ratio);
        }
    }

    private static string Basis(RatioRange range) => range.Basis switch
    {
        "meq" => "charge (meq/L)",
        "mass" => "mass",
        _ => "moles",
    };

    /// <summary>One side of a ratio in its basis, each key from its mg/L.</summary>
    private static Term Side(WorkingBuilder work, RecipeFacts recipe, RatioRange range, string keys)
    {
        var terms = new List<Term>();
        foreach (var key in ElementRatio.Keys(keys))
        {
            var milligrams = work.Given($"{key} in the solution", recipe.MilligramsPerLitre(key), "mg/L", "amounts in the file");
            if (range.Basis == "mass")
            {
                terms.Add(milligrams);
                continue;
            }

            var weight = work.Given($"atomic weight of {Analysis.Solutions.NutrientKeys.ElementOf(key).Symbol}", Chemistry.Composition.AtomicWeights.Of(Analysis.Solutions.NutrientKeys.ElementOf(key)), "g/mol", "CIAAW");
            terms.Add(range.Basis == "meq"
                ? work.Result($"{key} by charge", "mg/L / atomic weight × charge", milligrams / weight * ElementRatio.Valence(key), "meq/L")
                : work.Result($"{key} by moles", "mg/L / atomic weight", milligrams / weight, "mmol/L"));
        }

        return terms.Count == 1 ? terms[0] : work.Result(keys.Trim('(', ')'), "sum", Term.Sum(terms));
    }

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
