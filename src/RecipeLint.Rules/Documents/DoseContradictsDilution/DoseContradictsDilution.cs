using System.Globalization;
using RecipeLint.Analysis;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Patching;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using Way = RecipeLint.Rules.Engine.Repair;

namespace RecipeLint.Rules.Documents;

/// <summary>A recipe that doses a stock at another rate than the stock says it was made for.</summary>
internal sealed class DoseContradictsDilution : RecipeRule<DoseContradictsDilution.Doses>, IProposesRepairs
{
    public const string RuleName = "dose-contradicts-dilution";

    /// <summary>
    /// Times the stated dose from which a crop can be lost. Too little only starves, and half a dose is run on purpose; a third is nobody's
    /// (common practice, no source).
    /// </summary>
    private const double Twice = 2, Third = 1.0 / 3;

    /// <summary>
    /// Apart that the doses of one feed made weaker or stronger may be: 0.4 and 0.6 of each bottle (common practice, no source).
    /// </summary>
    private const double OneFeed = 0.5;

    public override string Name => RuleName;

    protected override IEnumerable<Doses> Judge(RecipeFacts recipe, RuleContext context)
    {
        var tolerance = context.Options<DoseContradictsDilutionOptions>().Tolerance;
        var pairs = recipe.Doses.Select(d => Pair.Of(d, recipe.Recipe.Final?.Place)).OfType<Pair>().ToList();
        if (pairs.Count == 0)
        {
            return [new Doses(
                recipe, []) { Checks = [Check.That("a stock says which dose it is made for, and the recipe states another way", false)] }];
        }

        return AreOneFeed(pairs, tolerance / 100) ? [Of([.. pairs.OrderBy(p => Apart(p.Factor, 1))])] : pairs.Select(p => Of([p]));

        Doses Of(List<Pair> same) => new(recipe, same)
        {
            Checks = [new Check(
                "further apart than rounding", Rounding.SixDigits(100 * Apart(same[0].Factor, 1)), Relation.Over, tolerance, "%")],
        };
    }

    protected override Finding Describe(Doses verdict, RuleContext context) =>
        verdict.Pairs is [var alone]
            ? One(alone, Rounding.SixDigits(alone.Factor) is >= Twice or <= Third ? Harm.Loss : Harm.Damage, context)
            : Uniform(verdict.Recipe, verdict.Pairs, context);

    protected override Working Work(Doses verdict, RuleContext context)
    {
        if (verdict.Pairs is not [var pair, ..])
        {
            return new WorkingBuilder($"the doses of '{verdict.Recipe.Recipe.Name}'").Statements(verdict).Done();
        }

        var others = verdict.Pairs.Count == 1 ? "" : ", and of the others alike";
        var work = new WorkingBuilder($"the dose of '{pair.Stock.Name}'{others}");
        var used = work.Given("dosed in the recipe", pair.Used.MillilitresPerLitre, "mL/L", "recipe");
        var stated = work.Given("dose it is made for", pair.Stated.Value.MillilitresPerLitre, "mL/L", "stock");
        var factor = work.Result("dosed against made for", "dosed / made for", used / stated);
        var apart = work.Result(
            "apart, the same both ways round",
            "100 × (larger / smaller - 1)",
            100 * ((Term.Larger(used, stated) / Term.Smaller(used, stated)) - 1),
            "%");
        return work.Check(verdict.Checks[0], apart, work.Option("tolerance", context.Options<DoseContradictsDilutionOptions>().Tolerance))
            .Done(factor);
    }

    /// <summary>The recipe follows the stock, or the stock the recipe.</summary>
    protected override IEnumerable<RepairProposal> Repair(Doses verdict, Finding finding, RepairContext context)
    {
        if (context.RecipeOf(finding) is not { } recipe)
        {
            yield break;
        }

        var pairs = recipe.Doses
            .Select(d => (Dose: d, Pair: Pair.Of(d, recipe.Recipe.Final?.Place)))
            .Where(p => p.Pair is not null)
            .ToList();
        var meant = pairs.Where(p => verdict.Pairs.Any(v => v.Place == p.Pair!.Place)).ToList();
        var stated = meant.Where(p => p.Dose.Entry is StockDose { Dose: not null }).ToList();
        if (meant.Count == 0 || stated.Count != meant.Count)
        {
            yield break;
        }

        yield return Way.Chemistry(
            "as-the-stock-says",
            $"Dose {Say.List(stated.Select(p => $"'{p.Pair!.Stock.Name}' at {Rate(p.Pair.Stated.Value)}"))}, as the stock says.",
            [.. stated.Select(p => new JsonEdit.ReplaceValue(p.Pair!.Place, JsonDraft.Of(context.Item(p.Pair.Stated.Place)!.Text)))]);
        yield return Way.Chemistry(
            "as-the-recipe-says",
            $"State in the stock the dose of the recipe: {Say.List(stated.Select(p => $"'{p.Pair!.Stock.Name}' at {Rate(p.Pair.Used)}"))}.",
            [.. stated.Select(p => new JsonEdit.ReplaceValue(p.Pair!.Stated.Place, JsonDraft.Of(context.Item(p.Pair.Place)!.Text)))]);
    }

    /// <summary>
    /// Several stocks off by about one factor: a weaker or stronger feed on purpose. Where some are dosed as they state, or the other way,
    /// each stands for itself.
    /// </summary>
    private static bool AreOneFeed(List<Pair> pairs, double tolerance)
    {
        var (least, most) = (pairs.Min(p => p.Factor), pairs.Max(p => p.Factor));
        return pairs.Count > 1
            && (Apart(least, most) <= tolerance
                || (Apart(least, most) <= OneFeed && (most < 1 || least > 1) && least > Third && most < Twice
                    && pairs.TrueForAll(p => Apart(p.Factor, 1) > tolerance)));
    }

    /// <summary>Relative distance, the same both ways round.</summary>
    private static double Apart(double a, double b) => (Math.Max(a, b) / Math.Min(a, b)) - 1;

    private static Finding One(Pair pair, Harm harm, RuleContext context) =>
        context.Find(
            pair.Place,
            $"The recipe doses '{pair.Stock.Name}' at {Rate(pair.Used)}, but the stock says it is made for {Rate(pair.Stated.Value)}: "
            + $"{Say.Number(pair.Factor)} times as much. The plants then get that much of everything in the bottle, not what its label "
                + "promises. "
            + "Correct the dose here, or the 'dose' of the stock if that one is out of date.",
            harm,
            Odds.Certain) with
        {
            Measured = new Measured("dose against the stock's own", pair.Factor, 1, ""),
            Values =
            [
                new NamedValue("dose in the recipe", pair.Used.MillilitresPerLitre, "mL/L"),
                new NamedValue("dose of the stock", pair.Stated.Value.MillilitresPerLitre, "mL/L"),
            ],
            Related = [new RelatedPlace(pair.Stated.Place, "made for this dose"), .. pair.WorkedOutFor is { } final
                ? [new RelatedPlace(final, "the volume the dose is worked out for")]
                : Array.Empty<RelatedPlace>()],
        };

    /// <summary>All stocks off by about one factor: a weaker or stronger feed on purpose, more likely than a slip with each.</summary>
    private static Finding Uniform(RecipeFacts recipe, IReadOnlyList<Pair> pairs, RuleContext context)
    {
        var (least, most) = (Say.Number(pairs.Min(p => p.Factor)), Say.Number(pairs.Max(p => p.Factor)));
        var doses = Say.List(pairs.Select(p => $"'{p.Stock.Name}' at {Rate(p.Used)} instead of {Rate(p.Stated.Value)}"));
        var isFarStronger = pairs.All(p => Rounding.SixDigits(p.Factor) >= Twice);
        return context.Find(
            recipe.Recipe.Place.Child("doses").Key,
            $"All {pairs.Count} stocks of '{recipe.Recipe.Name}' are dosed at {(least == most ? least : $"{least} to {most}")} times the "
                + $"rate they state: {doses}. The proportions stay {(least == most ? "right" : "about right")}, the strength does "
                + "not. "
                + (isFarStronger
                    ? "Seedlings get less, and nobody so much more: look for a slip such as 1:10 for 1:100, and correct the doses."
                    : "If that is meant, as for seedlings, accept it with a suppression; if not, correct the doses."),
            Harm.Damage,
            isFarStronger ? Odds.Certain : Odds.Possible) with
        {
            Measured = new Measured("dose against the stocks' own", pairs[0].Factor, 1, ""),
            Related = [.. pairs.Select(p => new RelatedPlace(p.Stated.Place, $"'{p.Stock.Name}' is made for this dose"))],
        };
    }

    /// <summary>Both ways people say it: "10 mL/L (1:100)".</summary>
    private static string Rate(Dose dose) =>
        $"{Say.Number(dose.MillilitresPerLitre)} mL/L (1:{dose.Dilution.ToString("0.#", CultureInfo.InvariantCulture)})";

    internal sealed record Pair(StockDocument Stock, Place Place, Dose Used, Located<Dose> Stated, Place? WorkedOutFor)
    {
        internal double Factor => Used.LitresPerLitre / Stated.Value.LitresPerLitre;

        internal static Pair? Of(DoseFacts dose, Place? final)
        {
            if (dose is not { Entry: StockDose entry, Stock.Stock: { Dose: { Value.LitresPerLitre: > 0 } stated } stock })
            {
                return null;
            }

            // The stated dose as written; one computed from a volume or strokes only where none is written.
            var used = entry.Dose?.Value ?? (dose.Basis is DoseBasis.Volume or DoseBasis.Strokes ? dose.Dose : null);
            var place = entry.Dose?.Place ?? entry.Amount?.Place ?? entry.Strokes?.Place ?? entry.Place;
            return used is { LitresPerLitre: > 0 } rate ? new Pair(stock, place, rate, stated, entry.Dose is null ? final : null) : null;
        }
    }

    /// <summary>Doses of one recipe that are off by one factor: all of them, or each alone.</summary>
    internal sealed record Doses(RecipeFacts Recipe, IReadOnlyList<Pair> Pairs) : Verdict;
}
