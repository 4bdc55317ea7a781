using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Advice.Order;

/// <summary>A stock with its steps in the proposed order. Pure; nothing on the disk changes.</summary>
public static class OrderedStock
{
    /// <summary>
    /// The water to start with, each addition in its place with a stir behind it, what the file does when all is in, and up to the mark;
    /// null where no other order is proposed than the file's.
    /// </summary>
    public static StockDocument? Of(MixingOrder order)
    {
        var stock = order.Stock.Stock;
        if (order.Refused is not null || order.Unknown is { IsAll: true } || order.NothingToOrder is not null
            || order.IsPresentOrder || order.Places.Count == 0)
        {
            return null;
        }

        var steps = new List<Step> { Start(order, stock) };
        foreach (var place in order.Places)
        {
            steps.Add(place.Unit.Step);
            steps.Add(new HandlingStep(
                place.Unit.Step.Id + "-stir", stock.Place, Handling.Stir, new Located<string>("until clear", stock.Place)));
        }

        var last = stock.Steps.ToList().FindLastIndex(s => s is AddStep or AliquotStep or AdjustStep);
        steps.AddRange(stock.Steps.Skip(last + 1).OfType<HandlingStep>().Where(h => h.Handling != Handling.Stir));
        steps.Add(stock.Steps.OfType<TopUpStep>().LastOrDefault()
            ?? new TopUpStep("top-up", stock.Place) { To = new Located<Volume>(order.Mark, stock.Place) });
        return stock with { Steps = steps };
    }

    private static PourStep Start(MixingOrder order, StockDocument stock)
    {
        var first = stock.Steps.OfType<PourStep>().FirstOrDefault();
        var volume = new Located<Volume>(order.Start, first?.Volume?.Place ?? stock.Place);
        return first is not null
            ? first with { Volume = volume }
            : new PourStep("pour", stock.Place) { Volume = volume, Of = stock.Steps.OfType<TopUpStep>().LastOrDefault()?.Of };
    }
}
