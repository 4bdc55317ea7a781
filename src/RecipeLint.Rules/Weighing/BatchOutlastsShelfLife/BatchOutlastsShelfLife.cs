using RecipeLint.Analysis;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Weighing;

/// <summary>A batch so large that it is not used up while it keeps.</summary>
internal sealed class BatchOutlastsShelfLife : WorkspaceRule<BatchOutlastsShelfLife.Batch>, IProposesRepairs
{
    public const string RuleName = "batch-outlasts-shelf-life";

    public override string Name => RuleName;

    protected override IEnumerable<Batch> Judge(Facts facts, RuleContext context) =>
        facts.Stocks.Select(s => Of(facts, s, context.For(s.Stock.File).Options<BatchOutlastsShelfLifeOptions>()));

    protected override Finding Describe(Batch verdict, RuleContext context)
    {
        var (stock, users, lasts) = (verdict.Stock, verdict.Users, verdict.Lasts);
        var (makes, keep) = (stock.Stock.Makes!, stock.Stock.Keep!.For!);
        var fillings = users.Count == 1
            ? $"'{users[0].Recipe.Recipe.Name}' takes {Say.Litres(users[0].Litres)} a filling"
            : $"the {users.Count} recipes that use it take {Say.Litres(users.Sum(u => u.Litres))} for a filling each";
        var fits = verdict.LitresPerDay * keep.Value.Days;
        var message = $"'{stock.Stock.Name}' makes {Say.Litres(stock.Volume.Litres)}, but {fillings}: "
            + $"at {Say.Number(verdict.FillingsPerWeek)} fillings a week it lasts {Say.Days(lasts)} and keeps {Say.Days(keep.Value.Days)}. "
            + "The rest is poured away, or dosed when nobody knows what is left in it. "
            + $"Make {Say.Litres(fits)} at most, or set 'fillingsPerWeek' to what this shop does.";
        return context.Find(makes.Place, message, Harm.Damage, Odds.Possible) with
        {
            Measured = new Measured("days the batch lasts", lasts, keep.Value.Days, "days"),
            Values = [new NamedValue("days the batch lasts", lasts, "days"), new NamedValue("largest batch", fits, "L")],
            Related = [new RelatedPlace(keep.Place, "how long it keeps")],
        };
    }

    protected override Working Work(Batch verdict, RuleContext context)
    {
        var work = new WorkingBuilder($"how long a batch of '{verdict.Stock.Stock.Name}' lasts");
        if (!verdict.IsCounted)
        {
            return work.Statements(verdict).Done();
        }

        var takes = verdict.Users.Select(u => work.Given($"'{u.Recipe.Recipe.Name}' takes for a filling", u.Litres, "L", "file")).ToList();
        var filling = takes.Count == 1 ? takes[0] : work.Result("all recipes together", "sum", Term.Sum(takes), "L");
        var perWeek = work.Option("fillings a week", verdict.FillingsPerWeek);
        var perDay = work.Result("used a day", "filling × fillings a week / 7", filling * perWeek / 7, "L");
        var batch = work.Given("the batch", verdict.Stock.Volume.Litres, "L", "file");
        var lasts = work.Result("the batch lasts", "batch / used a day", batch / perDay, "days");
        work.Check(verdict.Checks[0], lasts, work.Given("it keeps", verdict.Checks[0].Limit, "days", "file"));
        work.Check(verdict.Checks[1], lasts, work.Option("so long no batch is meant to last", verdict.NoBatchFrom));
        return work.Statements(verdict).Done(lasts);
    }

    /// <summary>A smaller batch.</summary>
    protected override IEnumerable<RepairProposal> Repair(Batch verdict, Finding finding, RepairContext context) =>
        context.StockOf(finding) is { } stock ? [BatchSize.Smaller(context, stock)] : [];

    private static Batch Of(Facts facts, StockFacts stock, BatchOutlastsShelfLifeOptions options)
    {
        var fillingsPerWeek = options.FillingsPerWeek;
        var file = stock.Stock.File;
        var users = facts.RecipesWith(file)
            .Select(r => (Recipe: r, Litres: r.Doses.Where(d => d.Stock?.Stock.File == file).Sum(d => d.Volume.Litres)))
            .Where(u => u.Litres > 0)
            .ToList();
        var litresPerDay = users.Sum(u => u.Litres) * fillingsPerWeek / 7;
        var lasts = Rounding.SixDigits(stock.Volume.Litres / litresPerDay);
        var batch = new Batch(stock, users, fillingsPerWeek, options.NoBatchFrom, litresPerDay, lasts) { Files = [file], Checks = [] };
        if (stock.Stock is not { Keep.For: { Value.Days: > 0 } keep, Makes: not null } || users.Count == 0)
        {
            return batch with { Checks = [Check.That("it says how long it keeps, and a recipe that doses it is known", false)] };
        }

        if (!double.IsFinite(lasts))
        {
            return batch with { Checks = [Check.That("it is used up at all", false)] };
        }

        var longer = new Check("longer than it keeps", lasts, Relation.Over, keep.Value.Days, "days");

        // A recipe written for one litre states a ratio: nobody fills a tank with it, and how long the batch lasts is not known.
        var filling = new Check("a time that a batch can be meant for", lasts, Relation.Under, options.NoBatchFrom, "days");
        var isDrawnOn = facts.StocksWith(file).Count > 0;
        return batch with
        {
            IsCounted = true,
            Checks = isDrawnOn ? [longer, filling, Check.That("no other stock draws on it", false)] : [longer, filling],
        };
    }

    /// <summary>One stock and what uses it.</summary>
    /// <param name="Users">The recipes that dose it, with what a filling takes.</param>
    /// <param name="NoBatchFrom">Days.</param>
    /// <param name="Lasts">Days, to six digits; counts only where <see cref="IsCounted"/>.</param>
    internal sealed record Batch(
        StockFacts Stock, IReadOnlyList<(RecipeFacts Recipe, double Litres)> Users, NumberOption FillingsPerWeek, NumberOption NoBatchFrom,
        double LitresPerDay, double Lasts) : Verdict
    {
        /// <summary>True where it keeps for a stated time and is used.</summary>
        internal bool IsCounted { get; init; }
    }
}
