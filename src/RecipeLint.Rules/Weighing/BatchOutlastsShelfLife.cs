using RecipeLint.Analysis;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Weighing;

/// <summary>A batch so large that it is not used up while it keeps.</summary>
public sealed class BatchOutlastsShelfLife : WorkspaceRule, IProposesRepairs
{
    public override string Name => "batch-outlasts-shelf-life";

    public override IEnumerable<Finding> Judge(Facts facts, RuleContext context)
    {
        foreach (var stock in facts.Stocks)
        {
            if (stock.Stock is not { Keep.For: { Value.Days: > 0 } keep, Makes: { } makes })
            {
                continue;
            }

            var users = facts.Recipes
                .Select(r => (Recipe: r, Litres: r.Doses.Where(d => d.Stock?.Stock.File == stock.Stock.File).Sum(d => d.Volume.Litres)))
                .Where(u => u.Litres > 0)
                .ToList();
            var drawnOn = facts.Stocks.Any(s => s.Aliquots.Any(a => a.StockFile == stock.Stock.File));
            if (users.Count == 0 || drawnOn)
            {
                continue;
            }

            var perWeek = context.For(stock.Stock.File).Number("fillingsPerWeek");
            var litresPerDay = users.Sum(u => u.Litres) * perWeek / 7;
            var lasts = Rounding.SixDigits(stock.Volume.Litres / litresPerDay);
            if (lasts <= keep.Value.Days || !double.IsFinite(lasts))
            {
                continue;
            }

            var fillings = users.Count == 1
                ? $"'{users[0].Recipe.Recipe.Name}' takes {Say.Litres(users[0].Litres)} a filling"
                : $"the {users.Count} recipes that use it take {Say.Litres(users.Sum(u => u.Litres))} for a filling each";
            var fits = litresPerDay * keep.Value.Days;
            var message = $"'{stock.Stock.Name}' makes {Say.Litres(stock.Volume.Litres)}, but {fillings}: at {Say.Number(perWeek)} fillings a week it lasts {Say.Days(lasts)} and keeps {Say.Days(keep.Value.Days)}. "
                + "The rest is poured away, or dosed when nobody knows what is left in it. "
                + $"Make {Say.Litres(fits)} at most, or set 'fillingsPerWeek' to what this shop does.";
            yield return context.Find(makes.Place, message) with
            {
                Measured = new Measured("days the batch lasts", lasts, keep.Value.Days, "days"),
                Values = [new NamedValue("days the batch lasts", lasts, "days"), new NamedValue("largest batch", fits, "L")],
                Related = [new RelatedPlace(keep.Place, "how long it keeps")],
            };
        }
    }

    /// <summary>A smaller batch.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context) => context.StockOf(finding) is { } stock ? [BatchSize.Smaller(context, stock)] : [];
}
