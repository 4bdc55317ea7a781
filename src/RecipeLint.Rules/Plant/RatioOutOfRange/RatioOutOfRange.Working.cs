using RecipeLint.Analysis;
using RecipeLint.Analysis.Profiles;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Plant;

/// <summary>Both sides of each ratio, from mg/L.</summary>
internal sealed partial class RatioOutOfRange
{
    protected override Working Work(RatiosOfOneCause verdict, RuleContext context)
    {
        var range = verdict.Ratios[0].Range;
        var title = verdict.Ratios.Count == 1
            ? $"{range.Numerator} : {range.Denominator} in '{verdict.Recipe.Recipe.Name}', by {Basis(range)}"
            : $"{verdict.Cause!.Key} against its partners in '{verdict.Recipe.Recipe.Name}'";
        var work = new WorkingBuilder(title);
        Term? first = null;
        foreach (var ratio in verdict.Ratios)
        {
            if (ratio.Past is { } past)
            {
                var value = Write(work, verdict.Recipe, ratio, past);
                first ??= value;
            }
        }

        return work.Statements(verdict).Done(first);
    }

    private static Term Write(WorkingBuilder work, RecipeFacts recipe, FoundRatio found, Check past)
    {
        var range = found.Range;
        var ratio = work.Result("ratio", $"{range.Numerator} / {range.Denominator}",
            Side(work, recipe, range, range.Numerator) / Side(work, recipe, range, range.Denominator));
        var bound = work.Given(found.IsHigh ? "upper bound" : "lower bound", found.Limit, "", From.Profile);
        work.Check(past, ratio, Bound.Edge(work, bound, "bound", found.IsHigh));
        return ratio;
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
            var milligrams = work.Given($"{key} in the solution", recipe.MilligramsPerLitre(key), "mg/L", From.Amounts);
            if (range.Basis == "mass")
            {
                terms.Add(milligrams);
                continue;
            }

            var element = NutrientKeys.ElementOf(key);
            var weight = work.Given($"atomic weight of {element.Symbol}", AtomicWeights.Of(element), "g/mol", "CIAAW");
            terms.Add(range.Basis == "meq"
                ? work.Result($"{key} by charge", "mg/L / atomic weight × charge", milligrams / weight * ElementRatio.Valence(key), "meq/L")
                : work.Result($"{key} by moles", "mg/L / atomic weight", milligrams / weight, "mmol/L"));
        }

        return terms.Count == 1 ? terms[0] : work.Result(keys.Trim('(', ')'), "sum", Term.Sum(terms));
    }
}
