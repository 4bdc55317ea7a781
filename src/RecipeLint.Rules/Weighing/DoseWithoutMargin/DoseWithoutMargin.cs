using RecipeLint.Analysis;
using RecipeLint.Analysis.Profiles;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Analysis.Uncertainty;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Weighing;

/// <summary>A dose where the usual slip of the hand takes an element from its range to the level that harms.</summary>
internal sealed class DoseWithoutMargin : RecipeRule<DoseWithoutMargin.Margin>, IProposesRepairs
{
    public const string RuleName = "dose-without-margin";

    private static readonly MeasureKind[] _countedByHand =
    [
        MeasureKind.Cylinder, MeasureKind.Flask, MeasureKind.Pipette, MeasureKind.Syringe, MeasureKind.Jug,
    ];

    public override string Name => RuleName;

    protected override IEnumerable<Margin> Judge(RecipeFacts recipe, RuleContext context)
    {
        var options = context.Options<DoseWithoutMarginOptions>();
        var toHarm = options.Bound != "range";
        foreach (var dose in recipe.Doses)
        {
            if (First(recipe, dose, toHarm) is not { } reach)
            {
                continue;
            }

            var (part, fillings) = SlipOf(dose, options.Slip / 100);
            var within =
                new Check("within the slip", Rounding.SixDigits(reach.Part * 100), Relation.AtMost, Rounding.SixDigits(part * 100), "%");
            yield return new Margin(recipe, dose, reach, part, fillings, toHarm)
            {
                Checks = recipe.IsComplete ? [within] : [within, Check.That("the recipe could be read whole", false)],
            };
        }
    }

    protected override Finding Describe(Margin verdict, RuleContext context)
    {
        var (recipe, dose, reach) = (verdict.Recipe, verdict.Dose, verdict.Reach);
        var name = dose.Stock?.Stock.Name ?? dose.Direct!.Substance.Name;
        var slip = verdict.Fillings is { } count
            ? $"One filling of '{dose.Measure!.Name}' too many ({count + 1} instead of {count})"
            : $"{Say.Percent(verdict.Part)} too much";
        var then = Rounding.SixDigits(reach.Found * (1 + (verdict.Part * reach.Share)));
        var meaning = verdict.ToHarm
            ? $"above {Say.Number(reach.Bound)} mg/L the '{recipe.Profile.Name}' profile expects damage"
            : $"at {Say.Number(reach.Bound)} mg/L its usual range in the '{recipe.Profile.Name}' profile ends";
        var message =
            $"{slip} of '{name}' takes {reach.Range.Key} from {Say.Number(reach.Found)} to {Say.Number(then)} mg/L, and {meaning}. "
            + $"{reach.Range.Key} is the first to go, at {Say.Percent(reach.Part)} too much, and nobody sees it before roots and leaves "
                + "do. "
            + (verdict.Fillings is null
                ? "Lower it, or measure this dose finer than the others."
                : "Take the dose in one filling, or lower the element.");
        return context.Find(
            PlaceOf(dose), message, Harm.Damage, Odds.Possible, reach.Range.IsPractice ? Certainty.Practice : Certainty.Computed) with
        {
            Measured = new Measured("slip that reaches the bound", reach.Part * 100, verdict.Part * 100, "%"),
            Values =
            [
                new NamedValue(reach.Range.Key, reach.Found, "mg/L"),
                new NamedValue("after the slip", then, "mg/L"),
                new NamedValue("bound", reach.Bound, "mg/L"),
            ],
        };
    }

    protected override Working Work(Margin verdict, RuleContext context)
    {
        var (recipe, dose, reach) = (verdict.Recipe, verdict.Dose, verdict.Reach);
        var work = new WorkingBuilder($"{reach.Range.Key} when too much of '{dose.Id}' is dosed; it is the first to "
            + $"{(verdict.ToHarm ? "reach harm" : "leave its usual range")}");
        var found = work.Given($"{reach.Range.Key} as the recipe stands", reach.Found, "mg/L", "amounts in the file");
        var brought = work.Given("of it from this dose", reach.Found * reach.Share, "mg/L", "amounts in the file");
        var bound =
            work.Given(verdict.ToHarm ? "harm above" : "end of the usual range", reach.Bound, "mg/L", $"'{recipe.Profile.Name}' profile");
        var far = work.Result(
            "too much of the dose that reaches it", "100 × (bound - now) / from this dose", 100 * (bound - found) / brought, "%");
        var slip = verdict.Fillings is { } count
            ? work.Result("one filling too many", "100 / fillings", 100 / work.Given("fillings", count, "", "file"), "%")
            : work.Option("usual slip of the hand", context.Options<DoseWithoutMarginOptions>().Slip);
        work.Check(verdict.Checks[0], far, slip);
        if (verdict.ToHarm && First(recipe, dose, toHarm: false) is { } usual)
        {
            work.Remark($"The first to leave its usual range would be {usual.Range.Key}, at {Say.Percent(usual.Part)} too much "
                + $"({Say.Number(usual.Bound)} mg/L).");
        }

        return work.Statements(verdict).Done(far);
    }

    /// <summary>A measure that takes it in one filling, or less of what comes near harm.</summary>
    protected override IEnumerable<RepairProposal> Repair(Margin verdict, Finding finding, RepairContext context)
    {
        foreach (var measure in Equipment.OtherMeasures(finding, context))
        {
            yield return measure;
        }

        if (context.RecipeOf(finding) is not { } recipe)
        {
            yield break;
        }

        var element = NutrientKeys.ElementOf(verdict.Reach.Range.Key);
        foreach (var addition in recipe.Doses
            .SelectMany(d => d.Direct is { } direct ? [direct] : d.Stock?.Additions ?? [])
            .Where(a => !a.ThroughAliquot && a.Elements[element].Grams > 0))
        {
            yield return Additions.Less(context, addition);
        }
    }

    /// <summary>The element that a dose takes to its bound first; null for a dose that brings none near one.</summary>
    private static Reach? First(RecipeFacts recipe, DoseFacts dose, bool toHarm) =>
        recipe.Profile.Elements
            .Select(range => Reach.Of(recipe, dose, range, toHarm))
            .OfType<Reach>()
            .OrderBy(r => r.Part)
            .ThenBy(r => r.Range.Key, StringComparer.Ordinal)
            .FirstOrDefault();

    /// <summary>The part by which a dose is easily too large: the option, or one filling too many where they are counted.</summary>
    private static (double Part, int? Fillings) SlipOf(DoseFacts dose, double slip)
    {
        if (dose is { Measure: { } measure, Entry: StockDose entry } && _countedByHand.Contains(measure.Kind)
            && Pouring.Of(measure, dose.Volume, entry.Strokes?.Value).Fillings is > 1 and var fillings
            && 1.0 / fillings > slip)
        {
            return (1.0 / fillings, fillings);
        }

        return (slip, null);
    }

    private static Place PlaceOf(DoseFacts dose) =>
        dose.Entry is StockDose entry
            ? entry.Dose?.Place ?? entry.Amount?.Place ?? entry.Strokes?.Place ?? entry.Place
            : (dose.Entry as DirectDose)?.Amount?.Place ?? dose.Entry.Place;

    /// <summary>What too much of one dose does first.</summary>
    /// <param name="Part">The slip of the hand, as a fraction of the dose.</param>
    /// <param name="Fillings">Of the measure, where one too many is the slip; else null.</param>
    /// <param name="ToHarm">True when only the level that harms counts, false when the end of the usual range does.</param>
    internal sealed record Margin(RecipeFacts Recipe, DoseFacts Dose, Reach Reach, double Part, int? Fillings, bool ToHarm) : Verdict;

    /// <summary>How far one dose is from taking one element to a bound.</summary>
    /// <param name="Bound">mg/L: the level that harms or the end of the usual range.</param>
    /// <param name="Found">mg/L as the recipe stands.</param>
    /// <param name="Share">Part of it that this dose brings.</param>
    /// <param name="Part">Too much of the dose, as a fraction, that reaches the bound.</param>
    internal sealed record Reach(ElementRange Range, double Bound, double Found, double Share, double Part)
    {
        /// <summary>
        /// Null for an element outside its range already, which the plant rules report, and one this dose does not bring.
        /// </summary>
        internal static Reach? Of(RecipeFacts recipe, DoseFacts dose, ElementRange range, bool toHarm)
        {
            if ((toHarm ? range.ToxicAbove : range.SufficientHigh) is not { } bound
                || !recipe.Elements.TryGetValue(range.Key, out var fact))
            {
                return null;
            }

            var found = Rounding.SixDigits(fact.Concentration.MilligramsPerLitre);
            if (found > bound || found > range.SufficientHigh || found <= 0)
            {
                return null;
            }

            var share = fact.Contributions.Where(c => c.Source == dose.Id).Sum(c => c.Concentration.MilligramsPerLitre)
                / fact.Concentration.MilligramsPerLitre;
            return share > 0 ? new Reach(range, bound, found, share, Rounding.SixDigits(((bound / found) - 1) / share)) : null;
        }
    }
}
