using RecipeLint.Analysis;
using RecipeLint.Analysis.Profiles;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Analysis.Uncertainty;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Weighing;

/// <summary>A dose where the usual slip of the hand takes an element from its range to the level that harms.</summary>
public sealed class DoseWithoutMargin : RecipeRule, IProposesRepairs
{
    private static readonly MeasureKind[] _countedByHand = [MeasureKind.Cylinder, MeasureKind.Flask, MeasureKind.Pipette, MeasureKind.Syringe, MeasureKind.Jug];

    public override string Name => "dose-without-margin";

    public override IEnumerable<Finding> Judge(RecipeFacts recipe, RuleContext context)
    {
        if (!recipe.IsComplete)
        {
            yield break;
        }

        var slip = context.Number("slip") / 100;
        foreach (var dose in recipe.Doses)
        {
            var (part, fillings) = SlipOf(dose, slip);
            var first = recipe.Profile.Elements
                .Select(range => Reach.Of(recipe, dose, range, ToHarm(context)))
                .OfType<Reach>()
                .Where(r => r.Part <= part)
                .OrderBy(r => r.Part)
                .ThenBy(r => r.Range.Key, StringComparer.Ordinal)
                .FirstOrDefault();
            if (first is not null)
            {
                yield return Of(recipe, dose, first, part, fillings, context);
            }
        }
    }

    /// <summary>The part by which a dose is easily too large: the option, or one filling too many where they are counted.</summary>
    internal static (double Part, int? Fillings) SlipOf(DoseFacts dose, double slip)
    {
        if (dose is { Measure: { } measure, Entry: StockDose entry } && _countedByHand.Contains(measure.Kind)
            && Pouring.Of(measure, dose.Volume, entry.Strokes?.Value).Fillings is > 1 and var fillings
            && 1.0 / fillings > slip)
        {
            return (1.0 / fillings, fillings);
        }

        return (slip, null);
    }

    private static Finding Of(RecipeFacts recipe, DoseFacts dose, Reach reach, double part, int? fillings, RuleContext context)
    {
        var name = dose.Stock?.Stock.Name ?? dose.Direct!.Substance.Name;
        var slip = fillings is { } count ? $"One filling of '{dose.Measure!.Name}' too many ({count + 1} instead of {count})" : $"{Say.Percent(part)} too much";
        var then = Rounding.SixDigits(reach.Found * (1 + (part * reach.Share)));
        var message = $"{slip} of '{name}' takes {reach.Range.Key} from {Say.Number(reach.Found)} to {Say.Number(then)} mg/L, and {(ToHarm(context) ? $"above {Say.Number(reach.Bound)} mg/L the '{recipe.Profile.Name}' profile expects damage" : $"at {Say.Number(reach.Bound)} mg/L its usual range in the '{recipe.Profile.Name}' profile ends")}. "
            + $"{reach.Range.Key} is the first to go, at {Say.Percent(reach.Part)} too much, and nobody sees it before roots and leaves do. "
            + (fillings is null ? "Lower it, or measure this dose finer than the others." : "Take the dose in one filling, or lower the element.");
        var entry = dose.Entry as StockDose;
        var place = entry?.Dose?.Place ?? entry?.Amount?.Place ?? entry?.Strokes?.Place ?? (dose.Entry as DirectDose)?.Amount?.Place ?? dose.Entry.Place;
        return context.Find(place, message, null, reach.Range.IsPractice ? Certainty.Practice : Certainty.Computed) with
        {
            Measured = new Measured("slip that reaches the bound", reach.Part * 100, part * 100, "%"),
            Values =
            [
                new NamedValue(reach.Range.Key, reach.Found, "mg/L"),
                new NamedValue("after the slip", then, "mg/L"),
                new NamedValue("bound", reach.Bound, "mg/L"),
            ],
        };
    }

    /// <summary>True when only the level that harms counts, false when the end of the usual range does.</summary>
    internal static bool ToHarm(RuleContext context) => context.Word("bound") != "range";

    /// <summary>How far one dose is from taking one element to a bound.</summary>
    /// <param name="Bound">mg/L: the level that harms or the end of the usual range.</param>
    /// <param name="Found">mg/L as the recipe stands.</param>
    /// <param name="Share">Part of it that this dose brings.</param>
    /// <param name="Part">Too much of the dose, as a fraction, that reaches the bound.</param>
    internal sealed record Reach(ElementRange Range, double Bound, double Found, double Share, double Part)
    {
        /// <summary>Null for an element outside its range already, which the plant rules report, and one this dose does not bring.</summary>
        internal static Reach? Of(RecipeFacts recipe, DoseFacts dose, ElementRange range, bool toHarm)
        {
            if ((toHarm ? range.ToxicAbove : range.SufficientHigh) is not { } bound || !recipe.Elements.TryGetValue(range.Key, out var fact))
            {
                return null;
            }

            var found = Rounding.SixDigits(fact.Concentration.MilligramsPerLitre);
            if (found > bound || found > range.SufficientHigh || found <= 0)
            {
                return null;
            }

            var share = fact.Contributions.Where(c => c.Source == dose.Id).Sum(c => c.Concentration.MilligramsPerLitre) / fact.Concentration.MilligramsPerLitre;
            return share > 0 ? new Reach(range, bound, found, share, Rounding.SixDigits(((bound / found) - 1) / share)) : null;
        }
    }

    /// <summary>A measure that takes it in one filling, or less of what comes near harm.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context)
    {
        foreach (var measure in Equipment.OtherMeasures(finding, context))
        {
            yield return measure;
        }

        if (context.RecipeOf(finding) is not { } recipe || finding.Values is not [{ Name: var key }, ..])
        {
            yield break;
        }

        foreach (var addition in recipe.Doses.SelectMany(d => d.Direct is { } direct ? [direct] : d.Stock?.Additions ?? []).Where(a => !a.ThroughAliquot && a.Elements[NutrientKeys.ElementOf(key)].Grams > 0))
        {
            yield return Additions.Less(context, addition);
        }
    }
}
