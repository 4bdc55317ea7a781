using RecipeLint.Analysis;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Patching;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Procedure;

/// <summary>Steps that never bring the stock to the volume it makes, judged by the volume they do give.</summary>
public sealed class NoFinalVolumeStep : StockRule, IProposesRepairs
{
    public override string Name => "no-final-volume-step";

    public override IEnumerable<Finding> Judge(StockFacts stock, RuleContext context)
    {
        if (!stock.IsComplete || stock.Stock.Makes is not { } makes)
        {
            yield break;
        }

        var marks = stock.Stock.Steps.OfType<TopUpStep>().ToList();
        var place = marks is [.., { To: { } last }] ? last.Place : makes.Place;
        if (!stock.Mixing.IsProcedure)
        {
            if (stock.Stock.ForBench)
            {
                yield return context.Find(
                    place,
                    $"No step pours water or tops up to the {Say.Litres(stock.Volume.Litres)} this stock makes. "
                    + $"Whoever mixes it from this sheet cannot know whether the salts go into {Say.Litres(stock.Volume.Litres)} of water or are brought to that volume, and the two differ by the room the salts take up. "
                    + "Begin with a pour of about three quarters of the water and end with a top-up.",
                    certainty: Certainty.Practice);
            }

            yield break;
        }

        var litres = stock.Mixing.Steps[^1].After.Litres;
        var missing = 1 - (litres / stock.Volume.Litres);
        var limit = context.Number("tolerance") / 100;
        var overfull = marks.Count > 0 && missing < 0;
        if (overfull || litres <= 0 || Rounding.SixDigits(Math.Abs(missing)) <= limit)
        {
            yield break;
        }

        var why = marks.Count > 0 ? $"the last top-up stops at {Say.Litres(marks[^1].To?.Value.Litres ?? litres)}" : "no step tops up to the volume";
        var effect = missing > 0
            ? $"everything in it is {Say.Percent((1 / (1 - missing)) - 1)} stronger than the label says"
            : $"everything in it is {Say.Percent(1 - (1 / (1 - missing)))} weaker than the label says";
        yield return context.Find(
            place,
            $"The steps give about {Say.Litres(litres)}, not the {Say.Litres(stock.Volume.Litres)} this stock makes: {why}. "
            + $"Doses are worked out for {Say.Litres(stock.Volume.Litres)}, so {effect}. "
            + $"End with a top-up to {Say.Litres(stock.Volume.Litres)}, after everything has dissolved and is back at room temperature.") with
        {
            Measured = new Measured("volume against what it makes", litres / stock.Volume.Litres, 1, ""),
            Values = [new NamedValue("volume", litres, "L"), new NamedValue("makes", stock.Volume.Litres, "L")],
        };
    }

    /// <summary>A top-up to what the stock makes, at the end.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context)
    {
        if (context.StockOf(finding) is not { } stock)
        {
            yield break;
        }

        if (stock.Stock.Makes is not { } makes || context.Item(makes.Place) is not { Text: { Length: > 0 } volume })
        {
            yield break;
        }

        if (stock.Stock.Steps.OfType<TopUpStep>().LastOrDefault() is { To: { } mark })
        {
            yield return Repair.Chemistry("right-mark", $"Top up to {volume}, what the stock makes.", new JsonEdit.ReplaceValue(mark.Place, JsonDraft.Of(volume)));
            yield break;
        }

        var end = Steps.Insert(stock, Steps.CountOf(stock, context), ("topUp", volume));
        yield return Repair.Chemistry("top-up", $"End with a top-up to {volume}.", end);
        if (!stock.Mixing.IsProcedure && Amounts.Times(context, makes.Place, 0.75) is var (_, start))
        {
            yield return Repair.Chemistry("pour-and-top-up", $"Begin with {start} of water and end with a top-up to {volume}.", Steps.Insert(stock, 0, ("pour", start)), end);
        }
    }
}
