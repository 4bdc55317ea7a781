using System.Globalization;
using System.Text.RegularExpressions;
using RecipeLint.Analysis;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Documents;

namespace RecipeLint.Rules.Procedure;

/// <summary>The vessel before and after one step.</summary>
internal sealed record Moment(int Index, Step Step, VesselContents Before, VesselContents After)
{
    /// <summary>What this step puts in; empty for water and handling.</summary>
    internal IReadOnlyList<AdditionFacts> Added => [.. After.Additions.Skip(Before.Additions.Count)];

    internal bool BringsWater => Step is PourStep or TopUpStep;
}

/// <summary>The steps of a stock played through at the bench.</summary>
internal static partial class Bench
{
    /// <summary>
    /// True when the file says how the stock is mixed. One that lists only what goes in, without any water, is a composition:
    /// rules on the order of the steps have nothing to judge there.
    /// </summary>
    internal static bool IsProcedure(StockFacts stock) => stock.Stock.Steps.Any(s => s is PourStep or TopUpStep);

    /// <summary>Every step with the vessel before and after it, in order.</summary>
    internal static IReadOnlyList<Moment> Walk(StockFacts stock)
    {
        var moments = new List<Moment>(stock.Stock.Steps.Count);
        var contents = VesselContents.Empty;
        for (var i = 0; i < stock.Stock.Steps.Count; i++)
        {
            var step = stock.Stock.Steps[i];
            var after = Do(step, stock, contents);
            moments.Add(new Moment(i, step, contents, after));
            contents = after;
        }

        return moments;
    }

    /// <summary>
    /// The stock as it stands in its bottle: after the last step and, where the steps stop short of the volume it makes, filled up with
    /// pure water.
    /// </summary>
    internal static VesselContents Finished(StockFacts stock)
    {
        var contents = stock.Stock.Steps.Aggregate(VesselContents.Empty, (c, step) => Do(step, stock, c));
        return contents.Litres < stock.Volume.Litres ? contents.WithPureWater(new Volume(stock.Volume.Litres - contents.Litres)) : contents;
    }

    /// <summary>Grams of a substance that 100 g of water dissolve; null without a table, or more than 5 K outside it.</summary>
    internal static double? SolubilityPer100Grams(Substance substance, double celsius)
    {
        if (substance.Solubility is not { Value: { Count: > 0 } points } || celsius < points[0].Temperature.Celsius - 5 || celsius > points[^1].Temperature.Celsius + 5)
        {
            return null;
        }

        var upper = points.TakeWhile(p => p.Temperature.Celsius < celsius).Count();
        if (upper == 0 || upper == points.Count)
        {
            return points[upper == 0 ? 0 : ^1].GramsPer100GramsWater;
        }

        var (low, high) = (points[upper - 1], points[upper]);
        var share = (celsius - low.Temperature.Celsius) / (high.Temperature.Celsius - low.Temperature.Celsius);
        return low.GramsPer100GramsWater + (share * (high.GramsPer100GramsWater - low.GramsPer100GramsWater));
    }

    /// <summary>The highest temperature a handling text names ("to 40 °C"); null when it names none.</summary>
    internal static double? CelsiusIn(string text)
    {
        var found = Degrees().Matches(text).Select(m => double.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture)).ToList();
        return found.Count == 0 ? null : found.Max();
    }

    private static VesselContents Do(Step step, StockFacts stock, VesselContents contents)
    {
        // A part of another stock brings its own water and everything dissolved in it; it shares the place of the step.
        foreach (var addition in stock.Additions.Where(a => a.Place == step.Place))
        {
            contents = contents.With(addition);
        }

        foreach (var water in stock.Waters.Where(w => w.Place == step.Place))
        {
            var poured = step is TopUpStep { To.Value: var mark } ? new Volume(Math.Max(0, mark.Litres - contents.Litres)) : water.Volume;
            contents = contents.With(water, poured);
        }

        return contents;
    }

    [GeneratedRegex(@"(\d+(?:\.\d+)?)\s*°\s*C", RegexOptions.CultureInvariant)]
    private static partial Regex Degrees();
}
