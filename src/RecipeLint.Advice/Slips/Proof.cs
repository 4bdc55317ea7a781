using RecipeLint.Analysis;
using RecipeLint.Analysis.Readings;
using RecipeLint.Recipes;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Advice.Slips;

/// <summary>Whether a slip would show in a reading.</summary>
public enum Showing
{
    /// <summary>Inside the window of a right bottle.</summary>
    No,

    /// <summary>Outside the window, but within what both windows leave open.</summary>
    Perhaps,

    Yes,
}

/// <summary>A check to do after mixing.</summary>
/// <param name="Window">In the unit of the check: g for a weight.</param>
/// <param name="Weighing">What is weighed; null for the other readings.</param>
/// <param name="IsOwned">False for a meter that the shop does not list although it lists instruments.</param>
public sealed record ProofCheck(Reading Reading, ReadingWindow Window, BottleWeighing? Weighing, bool IsOwned = true)
{
    /// <summary>A reading of another stock in the unit of the check.</summary>
    public double InUnit(double value) => Weighing is { } weighing ? value * weighing.Volume.Millilitres : value;
}

/// <summary>How a slip changes one check.</summary>
/// <param name="Change">Against the expected value; null where the model gives none.</param>
public readonly record struct ProofCell(double? Change, Showing Shows);

/// <summary>A slip with its cells in the order of the checks.</summary>
public sealed record ProofRow(Slip Slip, IReadOnlyList<ProofCell> Cells)
{
    /// <summary>The best that any check does.</summary>
    public Showing Shows => Cells.Count == 0 ? Showing.No : Cells.Max(c => c.Shows);
}

/// <summary>What to check after mixing, and which single slips that would show.</summary>
public sealed record Proof(StockFacts Stock, IReadOnlyList<ProofCheck> Checks, IReadOnlyList<string> Assumptions)
{
    /// <summary>Two readings lie surely apart at this many half-widths.</summary>
    private const double SurelyApart = 1.5;

    /// <summary>
    /// The slips, told when they are first asked for: each is a stock of its own to compute, and one that must not be mixed needs none.
    /// </summary>
    public IReadOnlyList<ProofRow> Rows => Told.Value;

    /// <summary>How the slips are told.</summary>
    public required Lazy<IReadOnlyList<ProofRow>> Told { get; init; }

    /// <summary>Errors that a check finds in the stock, which no weighing mends; empty until it was asked.</summary>
    public IReadOnlyList<Finding> Objections { get; init; } = [];

    /// <summary>The same with what a check says of the stock. Pure.</summary>
    /// <param name="today">The day suppressions are held against.</param>
    public Proof Checked(Workspace workspace, DateOnly today) =>
        this with { Objections = CheckedStock.Errors(workspace, Stock.Stock, today) };

    /// <summary>What a slip does that only the shop's own instruments are held against.</summary>
    public Showing ShownByOwn(ProofRow row) =>
        row.Cells.Zip(Checks).Where(c => c.Second.IsOwned).Select(c => c.First.Shows).DefaultIfEmpty(Showing.No).Max();

    /// <summary>Pure; the same input gives the same order.</summary>
    public static Proof Of(Workspace workspace, StockFacts stock)
    {
        var instruments = new Instruments(stock.Settings);
        var windows = new ReadingWindows(stock, instruments);
        var checks = new List<ProofCheck>();
        foreach (var reading in SlipSearch.Cheap(stock))
        {
            if (windows.Of(reading) is not { } window)
            {
                continue;
            }

            if (reading.Kind != ReadingKind.Density)
            {
                checks.Add(new ProofCheck(reading, window, null, instruments.Owns(reading.Kind)));
            }
            else if (BottleWeighing.Best(stock, instruments, window.Value) is { } weighing)
            {
                checks.Add(new ProofCheck(reading, weighing.Of(window, stock), weighing));
            }
        }

        return new Proof(stock, checks, [.. instruments.Assumptions, .. SlipList.LeftOut(stock)])
        {
            Told = new(() => [.. SlipList.Of(workspace, stock).Select(slip => Row(slip, checks))]),
        };
    }

    private static ProofRow Row(Slip slip, List<ProofCheck> checks)
    {
        var readings = StockReadings.Of(slip.Facts);
        return new ProofRow(slip, [.. checks.Select(c => Cell(c, readings, slip))]);
    }

    private static ProofCell Cell(ProofCheck check, StockReadings readings, Slip slip)
    {
        if (readings.Value(check.Reading) is not { } value)
        {
            return new ProofCell(null, Showing.No);
        }

        // Filled over or short, the whole batch is heavier or lighter by the volume itself.
        var change = check.Weighing is { With: null }
            ? (value * slip.Facts.Volume.Millilitres) - check.Window.Value
            : check.InUnit(value) - check.Window.Value;
        var apart = Math.Abs(change) / check.Window.HalfWidth;
        return new ProofCell(change, apart > SurelyApart ? Showing.Yes : apart > 1 ? Showing.Perhaps : Showing.No);
    }
}
