using System.Globalization;
using RecipeLint.Analysis;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Patching;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Documents;

/// <summary>A recipe that doses a stock at another rate than the stock says it was made for.</summary>
public sealed class DoseContradictsDilution : RecipeRule, IProposesRepairs
{
    public override string Name => "dose-contradicts-dilution";

    public override IEnumerable<Finding> Judge(RecipeFacts recipe, RuleContext context)
    {
        var tolerance = context.Number("tolerance") / 100;
        var pairs = recipe.Doses.Select(d => Pair.Of(d, recipe.Recipe.Final?.Place)).OfType<Pair>().ToList();
        if (pairs.Count > 1 && pairs.All(p => Apart(p.Factor, pairs[0].Factor) <= tolerance))
        {
            return Apart(pairs[0].Factor, 1) > tolerance ? [Uniform(recipe, pairs, context)] : [];
        }

        return pairs.Where(p => Apart(p.Factor, 1) > tolerance).Select(p => One(p, context));
    }

    /// <summary>Relative distance, the same both ways round.</summary>
    private static double Apart(double a, double b) => (Math.Max(a, b) / Math.Min(a, b)) - 1;

    private static Finding One(Pair pair, RuleContext context) =>
        context.Find(
            pair.Place,
            $"The recipe doses '{pair.Stock.Name}' at {Rate(pair.Used)}, but the stock says it is made for {Rate(pair.Stated.Value)}: "
            + $"{Say.Number(pair.Factor)} times as much. The plants then get that much of everything in the bottle, not what its label promises. "
            + "Correct the dose here, or the 'dose' of the stock if that one is out of date.") with
        {
            Measured = new Measured("dose against the stock's own", pair.Factor, 1, ""),
            Values =
            [
                new NamedValue("dose in the recipe", pair.Used.MillilitresPerLitre, "mL/L"),
                new NamedValue("dose of the stock", pair.Stated.Value.MillilitresPerLitre, "mL/L"),
            ],
            Related = [new RelatedPlace(pair.Stated.Place, "made for this dose"), .. pair.WorkedOutFor is { } final ? [new RelatedPlace(final, "the volume the dose is worked out for")] : Array.Empty<RelatedPlace>()],
        };

    /// <summary>All stocks off by one factor: a weaker or stronger feed on purpose, more likely than the same slip several times.</summary>
    private static Finding Uniform(RecipeFacts recipe, List<Pair> pairs, RuleContext context) =>
        context.Find(
            recipe.Recipe.Place.Child("doses").Key,
            $"All {pairs.Count} stocks of '{recipe.Recipe.Name}' are dosed at {Say.Number(pairs[0].Factor)} times the rate they state: "
            + $"{Say.List(pairs.Select(p => $"'{p.Stock.Name}' at {Rate(p.Used)} instead of {Rate(p.Stated.Value)}"))}. "
            + "The proportions stay right, the strength does not. If that is meant, as for seedlings, accept it with a suppression; if not, correct the doses.",
            Level.Note) with
        {
            Measured = new Measured("dose against the stocks' own", pairs[0].Factor, 1, ""),
            Related = [.. pairs.Select(p => new RelatedPlace(p.Stated.Place, $"'{p.Stock.Name}' is made for this dose"))],
        };

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

    /// <summary>The recipe follows the stock, or the stock the recipe.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context)
    {
        if (context.RecipeOf(finding) is not { } recipe)
        {
            yield break;
        }

        var pairs = recipe.Doses.Select(d => (Dose: d, Pair: Pair.Of(d, recipe.Recipe.Final?.Place))).Where(p => p.Pair is not null).ToList();
        var meant = finding.Measured?.Name == "dose against the stocks' own" ? pairs : [.. pairs.Where(p => p.Pair!.Place == finding.Place)];
        var stated = meant.Where(p => p.Dose.Entry is StockDose { Dose: not null }).ToList();
        if (meant.Count == 0 || stated.Count != meant.Count)
        {
            yield break;
        }

        yield return Repair.Chemistry(
            "as-the-stock-says",
            $"Dose {Say.List(stated.Select(p => $"'{p.Pair!.Stock.Name}' at {Rate(p.Pair.Stated.Value)}"))}, as the stock says.",
            [.. stated.Select(p => new JsonEdit.ReplaceValue(p.Pair!.Place, JsonDraft.Of(context.Item(p.Pair.Stated.Place)!.Text)))]);
        yield return Repair.Chemistry(
            "as-the-recipe-says",
            $"State in the stock the dose of the recipe: {Say.List(stated.Select(p => $"'{p.Pair!.Stock.Name}' at {Rate(p.Pair.Used)}"))}.",
            [.. stated.Select(p => new JsonEdit.ReplaceValue(p.Pair!.Stated.Place, JsonDraft.Of(context.Item(p.Pair.Place)!.Text)))]);
    }
}
