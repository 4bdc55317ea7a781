using System.Globalization;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Batches;

/// <summary>One batch of a stock, or one tank of a recipe, as it was really mixed.</summary>
public sealed record BatchDocument
{
    /// <summary>Names the reagent that sets the pH of a tank, among its doses.</summary>
    public const string AdjustId = "adjust";

    /// <summary>Relative to the workspace root, forward slashes.</summary>
    public required string File { get; init; }

    public Place Place => Place.Whole(File);

    /// <summary>The stock file as written; null for a tank, or when it could not be read (already reported).</summary>
    public Located<string>? Stock { get; init; }

    /// <summary>The stock's file relative to the workspace root; null when it does not resolve (already reported).</summary>
    public string? StockFile { get; init; }

    /// <summary>The recipe file as written, of a tank; null for a bottle.</summary>
    public Located<string>? Recipe { get; init; }

    /// <summary>The recipe's file relative to the workspace root; null when it does not resolve (already reported).</summary>
    public string? RecipeFile { get; init; }

    /// <summary>The file it was mixed from, stock or recipe.</summary>
    public string? MixedFrom => RecipeFile ?? StockFile;

    /// <summary>Which text of that file it was mixed from (<see cref="Edition"/>); null when the record does not say.</summary>
    public Located<string>? Edition { get; init; }

    /// <summary>The day it was mixed; null when it could not be read (already reported).</summary>
    public Located<DateOnly>? Made { get; init; }

    public string? By { get; init; }

    /// <summary>How much was to be made; null for what the stock or recipe file makes.</summary>
    public Located<Volume>? Size { get; init; }

    public IReadOnlyList<BatchStep> Steps { get; init; } = [];

    public IReadOnlyList<BatchReading> Readings { get; init; } = [];

    /// <summary>In the order of the file.</summary>
    public IReadOnlyList<BatchSight> Seen { get; init; } = [];

    public string? Note { get; init; }

    /// <summary>False when something that decides the contents could not be read.</summary>
    public bool IsComplete { get; init; } = true;

    /// <summary>
    /// What is recorded of the steps of the stock file or the doses of the recipe file, by id. Where a step is told twice the first entry
    /// counts (the second is reported).
    /// </summary>
    public IReadOnlyDictionary<string, BatchStep> Recorded() =>
        Steps.Where(s => s.Step is not null).DistinctBy(s => s.Step!.Value, StringComparer.Ordinal)
            .ToDictionary(s => s.Step!.Value, StringComparer.Ordinal);

    /// <summary>What was put in besides, in the order of the file, with the id it goes by in facts and findings ("besides-1").</summary>
    public IEnumerable<(string Id, BatchStep Entry)> Besides() =>
        Steps.Where(s => s is { Step: null, What: not null, LeftOut: false })
            .Select((entry, index) => (string.Create(CultureInfo.InvariantCulture, $"besides-{index + 1}"), entry));
}

/// <summary>What was really done in one step, or what was put in besides.</summary>
/// <param name="Place">The whole entry.</param>
public sealed record BatchStep(Place Place)
{
    /// <summary>Id of the step in the stock file or of the dose in the recipe file; null for something put in besides.</summary>
    public Located<string>? Step { get; init; }

    /// <summary>The substance that really went in as written; null for the one that the step names.</summary>
    public Located<string>? What { get; init; }

    /// <summary>The same resolved; null when nothing is written or it fits nothing (already reported).</summary>
    public Substance? Substance { get; init; }

    /// <summary>A mass, a volume or drops; null for what the stock file says, scaled to the batch.</summary>
    public Located<Portion>? Amount { get; init; }

    /// <summary>True where the record says that nothing went in ("0 g").</summary>
    public bool LeftOut { get; init; }

    public string? Lot { get; init; }

    /// <summary>Scale or measure as named in the shop settings.</summary>
    public Located<string>? With { get; init; }

    public string? Note { get; init; }

    /// <summary>The amount as if it stood in the file that the batch was mixed from; null where none is recorded.</summary>
    /// <param name="place">Where findings on it point.</param>
    public Located<Portion>? AmountAt(Place place) => Amount is null ? null : Amount with { Place = place };
}

/// <summary>One reading of the finished batch.</summary>
/// <param name="Place">The whole entry.</param>
/// <param name="Tolerance">Stated with the reading; null for the instrument's own.</param>
public abstract record BatchReading(Place Place, Tolerance? Tolerance)
{
    /// <summary>Litres in which one litre of the stock was brought to measure; 1 for undiluted.</summary>
    public double Dilution { get; init; } = 1;
}

/// <param name="Value">From 0 to 14.</param>
public sealed record PhReading(Place Place, Tolerance? Tolerance, double Value) : BatchReading(Place, Tolerance);

/// <param name="Value">At 25 °C.</param>
public sealed record ConductivityReading(Place Place, Tolerance? Tolerance, Conductivity Value) : BatchReading(Place, Tolerance);

/// <param name="Of">The volume that was weighed; null for the whole batch.</param>
public sealed record WeightReading(Place Place, Tolerance? Tolerance, Mass Value, Volume? Of) : BatchReading(Place, Tolerance);

/// <summary>What was seen at one time.</summary>
/// <param name="What">In everyday words.</param>
/// <param name="After">Since mixing; null for at once.</param>
/// <param name="At">How warm it stood until then, coldest to warmest; null when not stated.</param>
public sealed record BatchSight(Place Place, Located<string> What, Located<Duration>? After, Located<Interval<Temperature>>? At)
{
    public string? Note { get; init; }
}
