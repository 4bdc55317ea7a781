using System.Globalization;
using RecipeLint.Advice.Order;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Reports.Dissolve;
using RecipeLint.Reports.Hazards;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Precipitation;

namespace RecipeLint.Reports.Order;

/// <summary>The proposed mixing order of a stock as a text of at most 100 columns. Pure.</summary>
public static class OrderReport
{
    private const int Indent = 4;

    public static string Write(MixingOrder order)
    {
        var page = new TablePage();
        var stock = order.Stock;
        page.Text($"Mixing order for '{Printable.Show(stock.Stock.Name)}', {Say.Litres(stock.Volume.Litres)}");
        page.Blank();
        if (order.Refused is { } refused)
        {
            foreach (var sentence in HazardWords.Refused(refused))
            {
                page.Text(sentence);
            }

            return page.ToString();
        }

        if (order.NothingButUnknown is { } unknown)
        {
            page.Text(HazardWords.Untold(unknown));
            return page.ToString();
        }

        if (order.NothingToOrder is { } nothing)
        {
            page.Text(nothing);
            Objections(page, order);
            return page.ToString();
        }

        if (order.Unknown is { } partly)
        {
            page.Text(HazardWords.LeftOut(partly, "the order is worked out"));
        }

        if (!stock.IsComplete)
        {
            page.Text("Something in the file could not be read: the order is worked out without it. 'recipelint check' says what.");
        }

        Verdict(page, order);
        Objections(page, order);
        page.Blank();
        Steps(page, order);
        page.Blank();
        Water(page, order);
        Remarks(page, order);
        return page.ToString();
    }

    private static void Objections(TablePage page, MixingOrder order)
    {
        foreach (var finding in order.Objections)
        {
            page.Text($"No order mends what 'recipelint check' calls wrong in it, {finding.Rule.Id}: {finding.Message}");
        }
    }

    private static void Verdict(TablePage page, MixingOrder order)
    {
        var clean = order.Places.All(p => p.Solids.Count == 0);
        if (order.Mended is null && order.IsPresentOrder && Staying(order).Any())
        {
            page.Text("No order keeps this stock clear: what falls out is too much for it whatever comes first. The order in the file is "
                + "as good as any.");
            return;
        }

        if (order.Mended is { } danger)
        {
            page.Text($"Not as the file mixes it, where somebody could be hurt: {HazardWords.Short(danger)}. This order takes that away.");
        }
        else if (order.IsPresentOrder)
        {
            page.Text(order.IsExact
                ? $"The order in the file is the best there is{(clean ? ": nothing falls out at any step." : ".")}"
                : $"No better order than the file's was found{(clean ? ": nothing falls out at any step." : ".")}");
        }
        else if (order.Cost.SolidsOnly() < order.PresentCost.SolidsOnly())
        {
            page.Text($"This order is better than the file's, in which {Worst(order)}.");
        }
        else
        {
            page.Text("No solid decides between this order and the file's; this one follows the habits of the bench.");
        }

        if (!order.IsExact)
        {
            page.Text($"With {order.Places.Count} additions not every order was weighed, only the most promising beginnings.");
        }
    }

    private static string Worst(MixingOrder order)
    {
        if (order.PresentCost.Unsolved > order.Cost.Unsolved)
        {
            return "a step cannot be computed";
        }

        var here = order.Places.SelectMany(p => p.Solids).ToList();
        var (solid, at) = order.PresentSolids.FirstOrDefault(
            s => !here.Any(h => h.Name == s.Solid.Name && h.Origin == s.Solid.Origin && h.Milligrams >= s.Solid.Milligrams));
        return solid is null ? "more falls out" : OrderWords.Happens(solid, at);
    }

    private static void Steps(TablePage page, MixingOrder order)
    {
        page.Head("step", ["goes in", "then holds", "pH", "warmer by"]);
        var number = 1;
        page.Row($"{number}. water", [Say.Litres(order.Start.Litres), Say.Litres(order.Start.Litres), "", ""]);
        page.Indented("all of it but the last, so that acid goes into water and salts find room", Indent + 2);
        foreach (var place in order.Places)
        {
            number++;
            page.Row(
                $"{number}. {Printable.Show(place.Unit.Name)}",
                [
                    OrderWords.Amount(place.Unit, order.Stock), Say.Litres(place.After.Litres),
                    Ph(place.State.Ph, place.After.Additions, place.After.Litres),
                    Warms(place.Heat?.ChangeKelvin),
                ]);
            if (place.State.Failure is { } failure)
            {
                page.Indented("not computed: " + failure, Indent + 2);
            }

            foreach (var solid in place.Solids)
            {
                page.Indented("here " + OrderWords.Happens(solid, place.Unit), Indent + 2);
            }

            // What must not come earlier says so in its own place; the other half of the pair need not repeat it.
            page.Indented(OrderWords.Why(place.Reasons[0]), Indent + 2);
        }

        page.Row(
            $"{number + 1}. water up to the mark",
            [
                "to " + Say.Litres(order.Mark.Litres), Say.Litres(order.Mark.Litres),
                Ph(order.Finished.Ph, order.Stock.Additions, order.Mark.Litres), "",
            ]);
    }

    private static void Water(TablePage page, MixingOrder order)
    {
        var start = Say.Litres(order.Start.Litres);
        if (order.StartInFile is not { } file)
        {
            page.Text($"The file does not say how much water to start with; {start} is taken.");
        }
        else if (order.Start > file * 1.001)
        {
            page.Text(
                $"Start with {start} instead of the file's {Say.Litres(file.Litres)}: with less, not everything dissolves on the way.");
        }
        else if (order.Start < file * 0.999)
        {
            page.Text($"Start with {start} instead of the file's {Say.Litres(file.Litres)}: with more there is no room left to top up.");
        }

        page.Text(order.SmallestStart is { } least
            ? $"{Say.Litres(least.Litres)} of water is the least to start with in which everything dissolves step by step in this order."
            : "Not even a vessel filled almost to its mark dissolves everything step by step: what the steps name lies there for a while.");
    }

    /// <summary>What lies in the finished stock whatever the order.</summary>
    private static IEnumerable<Analysis.Mixing.VesselSolid> Staying(MixingOrder order) => order.Finished.Solids.Where(s =>
        s.Mass.Grams / order.Stock.Volume.Litres >= Analysis.Equilibria.SolidDeposit.VisibleGramsPerLitre);

    private static void Remarks(TablePage page, MixingOrder order)
    {
        foreach (var solid in Staying(order))
        {
            var name = solid.Solid is { } known ? SolidWords.Called(known) : solid.Name;
            page.Text($"In whatever order, the finished stock does not hold {Say.Grams(solid.Mass.Grams)} of {name}; 'recipelint check' "
                + "says what to change.");
        }

        if (order.Places.Any(p => p.State.Validity.Trust == Trust.OutOfRange))
        {
            page.Text("Some steps are outside the range of the model; only solubility tables speak for them.");
        }

        if (order.At.Celsius > Analysis.Mixing.VesselContents.BenchCelsius)
        {
            page.Text($"Worked out at {Say.Number(order.At.Celsius)} °C, to which the file warms the vessel.");
        }

        foreach (var hazard in order.Hazards)
        {
            page.Text(HazardWords.Caution(hazard));
        }

        if (order.Places.Any(p => p.Unit.IsAcid))
        {
            page.Text("Acid goes into the water, never water onto acid: slowly, stirring, with goggles and gloves, as its safety data "
                + "sheet says.");
        }

        page.Text(
            "Stir each until clear before the next goes in. What a salt meets while it dissolves counts as its own saturated solution.");
    }

    private static string Ph(double? ph, IEnumerable<AdditionFacts> additions, double litres) =>
        PhDoubt.In(additions, litres) ? "not known"
        : ph is not { } value ? ""
        : value.ToString("0.0", CultureInfo.InvariantCulture);

    private static string Warms(double? kelvin) =>
        kelvin <= -Analysis.Mixing.VesselContents.BenchCelsius ? "to 0 °C"
            : kelvin is { } change && Math.Abs(change) >= 0.05 ? change.ToString("+0.0;-0.0", CultureInfo.InvariantCulture) + " K" : "";
}
