using RecipeLint.Analysis;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Repairs;

/// <summary>More or warmer water at the start.</summary>
internal static class Pours
{
    /// <summary>Nobody measures 643 mL of water.</summary>
    private const int WaterDigits = 2;

    /// <summary>Shares of the finished volume: most of the water, the least that still takes up the heat, and how finely it is
    /// measured.</summary>
    private const double Most = 0.7;

    private const double Least = 0.4;

    private const double Step = 0.05;

    /// <summary>As far as warm water from a tap goes.</summary>
    private static readonly int[] _celsius = [30, 35, 40, 50];

    /// <summary>More water in the last pour before the step of a finding, up to the volume that is made.</summary>
    /// <param name="missing">L that the message asks for beyond what is there; 0 where as little as will do is meant.</param>
    public static IEnumerable<RepairProposal> MoreWater(Finding finding, RepairContext context, double missing = 0)
    {
        if (context.StockOf(finding) is not { } stock || RepairContext.StepAt(stock, finding.Place) is not { } step)
        {
            yield break;
        }

        var before = stock.Stock.Steps.TakeWhile(s => s.Id != step.Id).OfType<PourStep>().LastOrDefault(p => p.Volume is not null);
        if (before?.Volume is { } poured)
        {
            var most = 0.98 * stock.Volume.Litres / poured.Value.Litres;
            yield return new RepairProposal.Tuned(
                f => context.Item(poured.Place)?.Text is { } text && AmountText.NumberOf(text) is { } number
                    && Amounts.With(context, poured.Place, Amounts.Rounded(number * f, null, Round.Up, WaterDigits)) is var (edit, more)
                    ? Repair.Chemistry("pour-more", $"Pour {more} of water first instead of {text}.", edit)
                    : null,
                // A little less: the search ends above it and rounds up, which comes to what the message says.
                Math.Clamp(0.96 * (poured.Value.Litres + missing) / poured.Value.Litres, 1, Math.Max(1, most)),
                most);
        }

        // The next pour brought forward.
        if (stock.Stock.Steps.SkipWhile(s => s.Id != step.Id).OfType<PourStep>().FirstOrDefault() is { } later
            && Steps.Move(stock, context, later, step) is { } earlier)
        {
            yield return Repair.Chemistry("pour-earlier", $"Pour '{later.Id}' before '{step.Id}'.", earlier);
        }
    }

    /// <summary>Less water in the largest pour.</summary>
    public static IEnumerable<RepairProposal> LessWater(Finding finding, RepairContext context)
    {
        var pour =
            context.StockOf(finding)?.Stock.Steps.OfType<PourStep>().Where(p => p.Volume is not null).MaxBy(p => p.Volume!.Value.Litres);
        if (pour?.Volume is not { } poured
            || context.Item(poured.Place)?.Text is not { } text
            || AmountText.NumberOf(text) is not { } number)
        {
            return [];
        }

        return
        [
            new RepairProposal.Tuned(
                f => Amounts.With(context, poured.Place, Amounts.Rounded(number * f, null, Round.Down, WaterDigits)) is var (edit, less)
                    ? Repair.Chemistry("pour-less", $"Pour {less} of water first instead of {text}.", edit)
                    : null,
                1,
                0.1),
        ];
    }

    /// <summary>Most of the water poured before anything else.</summary>
    /// <param name="with">What is done with it in one go; null for nothing else.</param>
    public static IEnumerable<RepairProposal> MostWaterFirst(RepairContext context, StockFacts stock, Repair? with = null)
    {
        // In steps of a twentieth, with room for what is poured in beside it.
        var room = Math.Floor((1 - (Volumes.Poured(stock).Litres / stock.Volume.Litres)) / Step) * Step;
        var share = Math.Min(Most, room);
        if (share < Least || stock.Stock.Makes is not { } makes || Amounts.Times(context, makes.Place, share) is not var (_, start))
        {
            yield break;
        }

        var pour = Steps.Insert(stock, 0, ("pour", start));
        yield return with is null
            ? Repair.Chemistry(
                "most-water-first",
                $"Pour {start} of water before anything else, and what is dangerous into it, slowly and stirring.",
                pour)
            : Repair.Chemistry(
                $"{with.Key}-with-water-first", $"{with.Title} Pour {start} of water before anything else.", [pour, .. with.Edits]);
    }

    /// <summary>The first water warmed, as little as will do.</summary>
    public static IEnumerable<RepairProposal> Warm(Finding finding, RepairContext context)
    {
        if (context.StockOf(finding) is not { } stock || stock.Stock.Steps.OfType<HandlingStep>().Any(h => h.Handling == Handling.Warm))
        {
            return [];
        }

        return
        [
            new RepairProposal.Ladder(_celsius.Select(c => Repair.Chemistry(
                "warm-water",
                FormattableString.Invariant($"Warm the first water to {c} °C, and let it cool before topping up."),
                Steps.Insert(stock, Steps.AfterFirstWater(stock), ("warm", FormattableString.Invariant($"to {c} °C"))),
                Steps.Insert(
                    stock,
                    Math.Max(Steps.AfterFirstWater(stock) + 1, Steps.BeforeTopUp(stock, context)),
                    ("rest", "until back at room temperature"))))),
            new RepairProposal.Ladder(_celsius.Select(c => Repair.Chemistry(
                "warm-only",
                FormattableString.Invariant($"Warm the first water to {c} °C."),
                Steps.Insert(stock, Steps.AfterFirstWater(stock), ("warm", FormattableString.Invariant($"to {c} °C")))))),
        ];
    }

    /// <summary>Of two that must not meet one out, or into a bottle of its own: water between them only makes it look better.</summary>
    internal static IEnumerable<RepairProposal> KeepApart(Finding finding, RepairContext context)
    {
        if (context.StockOf(finding) is not { } stock)
        {
            yield break;
        }

        foreach (var place in finding.Related.Select(r => r.Place).Prepend(finding.Place))
        {
            if (context.AdditionAt(stock, place) is not { } addition)
            {
                continue;
            }

            if (OwnBottle.Of(context, stock, addition) is { } bottle)
            {
                yield return bottle;
            }

            // What is left may still have to go into water, and not water onto it.
            yield return Additions.Drop(addition);
            foreach (var diluted in MostWaterFirst(context, stock, Additions.Drop(addition)))
            {
                yield return diluted;
            }
        }
    }
}
