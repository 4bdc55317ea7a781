using RecipeLint.Analysis;
using RecipeLint.Analysis.Uncertainty;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Weighing;

/// <summary>Where the errors of one final solution arise, and which of them other rules report already.</summary>
internal sealed class ReportedCauses
{
    private readonly HashSet<Place> _reported = [];
    private readonly List<MeasuredVolume> _volumes = [];
    private readonly List<WeighedAmount> _weights = [];

    private ReportedCauses()
    {
    }

    internal static ReportedCauses Of(RuleContext context, RecipeFacts recipe)
    {
        var facts = context.Facts;
        var causes = new ReportedCauses();
        causes._volumes.AddRange(MeasuredVolume.In(recipe));
        causes._weights.AddRange(WeighedAmount.In(recipe));
        foreach (var stock in StocksOf(facts, recipe))
        {
            causes._volumes.AddRange(MeasuredVolume.In(facts, stock));
            causes._weights.AddRange(WeighedAmount.In(stock));
            if (VesselTooCoarse.Reports(context, stock) && FinishedVolume.Of(stock) is { } finished)
            {
                causes._reported.Add(stock.Stock.Place);
                causes._reported.Add(finished.Pouring.Measure.Place);
            }
        }

        foreach (var taken in causes._volumes.Where(v => MeasureTooCoarse.Reports(context, v)))
        {
            causes._reported.Add(taken.Entry);
            causes._reported.Add(taken.Pouring.Measure.Place);
        }

        foreach (var weighed in causes._weights.Where(w => BelowScaleResolution.Reports(context, w)
            || BelowMinimumWeight.Reports(context, w)))
        {
            causes._reported.Add(weighed.Addition.Place);
        }

        return causes;
    }

    /// <summary>True when a rule on weights, measures or vessels speaks of this source already; an assay is never theirs.</summary>
    internal bool Has(ErrorSource source) =>
        !ErrorKinds.IsAssay(source) && source.Place is { } place && _reported.Contains(place);

    /// <summary>
    /// Where an error arises in the recipe or its stocks: for a piece of equipment the use of it that is known least; else the source's own
    /// place.
    /// </summary>
    internal Place? WhereUsed(ErrorSource source) =>
        _volumes.Where(v => v.Pouring.Measure.Place == source.Place).OrderByDescending(v => v.Relative).FirstOrDefault()?.Place
        ?? _weights.Where(w => w.Scale.Place == source.Place)
            .OrderByDescending(w => w.Weighing.RelativeExpanded)
            .FirstOrDefault()?.AmountPlace
        ?? source.Place;

    /// <summary>The stocks of a recipe with the pre-stocks behind them, each once.</summary>
    private static List<StockFacts> StocksOf(Facts facts, RecipeFacts recipe)
    {
        var found = new List<StockFacts>();
        var open = new Queue<StockFacts>(recipe.Doses.Select(d => d.Stock).OfType<StockFacts>());
        while (open.TryDequeue(out var stock))
        {
            if (found.Exists(s => s.Stock.File == stock.Stock.File))
            {
                continue;
            }

            found.Add(stock);
            foreach (var inner in stock.Aliquots.Select(a => facts.FindStock(a.StockFile)).OfType<StockFacts>())
            {
                open.Enqueue(inner);
            }
        }

        return found;
    }
}

/// <summary>What kind of error a source is, by the first word of its id.</summary>
internal static class ErrorKinds
{
    internal static bool IsAssay(ErrorSource source) => KindOf(source) == "assay";

    /// <summary>What to do about it, as a sentence.</summary>
    internal static string Advice(ErrorSource source) => KindOf(source) switch
    {
        "assay" => "Write the assay of the bag or certificate into the step.",
        "weigh" or "scale" => "Weigh more of it at once, or on a finer scale.",
        "tank" => "Measure the tank: a flow meter, or a mark that was checked by weighing water in.",
        "made-up" => "Bring that stock to its volume in a cylinder or to a mark that was weighed in.",
        "amount" => "State the amount closer, or weigh it.",
        _ => "Take it with a finer measure, or more of it from a weaker stock.",
    };

    private static string KindOf(ErrorSource source) => source.Id[..Math.Max(0, source.Id.IndexOf(':', StringComparison.Ordinal))];
}
