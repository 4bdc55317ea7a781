using RecipeLint.Analysis;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Procedure;

/// <summary>Stocks of one recipe, mixed from bench sheets, that no colour tells apart.</summary>
internal sealed class StocksLookAlike : RecipeRule<LikeBottles>
{
    public const string RuleName = "stocks-look-alike";

    public override string Name => RuleName;

    protected override IEnumerable<LikeBottles> Judge(RecipeFacts recipe, RuleContext context)
    {
        var bottles = recipe.Doses
            .Where(d => d.Stock is { Stock.ForBench: true })
            .DistinctBy(d => d.Stock!.Stock.File)
            .Select(d => Bottle.Of(d, d.Stock!))
            .ToList();
        var groups = bottles.Where(b => b.Colour is not null)
            .GroupBy(b => b.Colour!)
            .OrderBy(g => g.Key, StringComparer.Ordinal)
            .Select(g => g.ToList())
            .ToList();
        if (groups.Count == 0)
        {
            yield return new LikeBottles(recipe, "", [], bottles,
                null)
            { Checks = [Check.That("it doses bottles whose colour can be told", false)] };
        }

        foreach (var alike in groups)
        {
            var count = new Check("two or more are alike", alike.Count, Relation.AtLeast, 2);
            yield return new LikeBottles(recipe, alike[0].Colour!, alike, bottles, count) { Checks = [count] };
        }
    }

    protected override Finding Describe(LikeBottles verdict, RuleContext context)
    {
        var stocks = verdict.Alike;
        var declared = stocks.Count(s => s.Declared);
        var rates = stocks.Where(s => s.Dose.Dose is { LitresPerLitre: > 0 }).ToList();
        var apart = rates.Count > 1 ? rates.Max(Rate) / rates.Min(Rate) : 1;
        var strongest = rates.Count > 1 ? rates.MinBy(Rate)!.Stock : null;
        var unmarked = apart >= 2 && strongest is { Stock.Label: null or { Dilution: false } };
        var stake = apart >= 2
            ? $"They are dosed {Say.Number(apart)} times apart, so a swapped bottle is that much too strong"
                + (unmarked ? $", and nothing marks '{strongest!.Stock.Name}' as the concentrated one: its label has no dilution." : ".")
            : "A swapped bottle gives one part twice and the other not at all.";
        var why = declared == 0 ? " and no label states a colour" : declared == stocks.Count ? " by their labels"
            : ", by a label or by what is in them";
        return context.Find(
            stocks[^1].Dose.Entry.Place,
            $"{Say.List(stocks.Select(s => $"'{s.Stock.Stock.Name}'"))} are {(stocks.Count == 2 ? "both" : "all")} {verdict.Colour}{why}. "
            + $"{stake} Give all but one a food dye (1 to 5 mg/L) or label of its own colour, always the same for the same part, and "
            + "write it on the label.",
            Harm.Damage,
            Odds.Certain) with
        {
            Related =
            [
                .. stocks.Select(s => new RelatedPlace(
                    s.Declared ? s.Stock.Stock.Label!.Place : s.Stock.Stock.Place,
                        $"{verdict.Colour}, {(s.Declared ? "as its label says" : "worked out from its contents")}")),
            ],
            Values = [new NamedValue("stocks alike", stocks.Count, ""), new NamedValue("dose apart", apart, "")],
        };
    }

    protected override Working Work(LikeBottles verdict, RuleContext context)
    {
        var work = new WorkingBuilder(verdict.Count is null ? $"the bottles of '{verdict.Recipe.Recipe.Name}'"
            : $"the {verdict.Colour} bottles of '{verdict.Recipe.Recipe.Name}'");
        foreach (var bottle in verdict.Bottles)
        {
            var stock = bottle.Stock;
            if (bottle.Declared)
            {
                work.Remark($"'{stock.Stock.Name}' is {stock.Stock.Label!.Colour} by its label.");
                continue;
            }

            if (StockColour.Strongest(stock) is { } strongest)
            {
                var strength = StockColour.Strength(strongest, stock.Volume.Litres);
                work.Given($"'{stock.Stock.Name}': {strongest.Substance.Name} against what one can see (1 is just "
                    + "seen)", strength, "", "table of colours");
            }

            work.Remark($"'{stock.Stock.Name}' is {bottle.Colour ?? "of an unknown dye"}, worked out from its contents.");
        }

        if (verdict.Count is not { } count)
        {
            return work.Statements(verdict).Done();
        }

        var alike = work.Given("bottles of this colour", count.Value, "", From.Count);
        return work.Check(count, alike, 2).Done(alike);
    }

    private static double Rate(Bottle bottle) => bottle.Dose.Dose!.Value.LitresPerLitre;
}

/// <summary>A stock as it stands on the shelf.</summary>
/// <param name="Colour">Plain word; null where a dye of unknown make decides.</param>
/// <param name="Declared">True when the label states it.</param>
internal sealed record Bottle(DoseFacts Dose, StockFacts Stock, string? Colour, bool Declared)
{
    public static Bottle Of(DoseFacts dose, StockFacts stock) => stock.Stock.Label?.Colour is { } declared
        ? new Bottle(dose, stock, StockColour.Plain(declared.ToLowerInvariant()), true)
        : new Bottle(dose, stock, StockColour.Of(stock), false);
}

/// <summary>Bottles of one colour that one recipe takes from.</summary>
/// <param name="Alike">In the order of the doses.</param>
/// <param name="Bottles">All of the bench.</param>
/// <param name="Count">How many share the colour; null where none has one.</param>
internal sealed record LikeBottles(
    RecipeFacts Recipe, string Colour, IReadOnlyList<Bottle> Alike, IReadOnlyList<Bottle> Bottles, Check? Count) : Verdict;
