using RecipeLint.Analysis;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Readings;
using RecipeLint.Recipes.Batches;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Advice.Batches;

/// <summary>What to do with a batch.</summary>
public enum BatchFate
{
    /// <summary>The plants get what was planned, within what counts as the same.</summary>
    Use,

    /// <summary>Something put in makes it so.</summary>
    Mend,

    /// <summary>A reading does not fit what is recorded, or something was seen in it: first find out what is in the bottle.</summary>
    FindOut,

    Discard,
}

/// <summary>A nutrient of the stock as planned and as made.</summary>
/// <param name="Planned">g/L.</param>
/// <param name="Actual">g/L.</param>
/// <param name="Mended">g/L; null where nothing is mended.</param>
/// <param name="IsPlanned">False for what only water or impurities bring, or nothing at all.</param>
/// <param name="Off">How far the actual value counts as off: relative to the plan; for what was not planned, to all that was.</param>
public sealed record NutrientShift(string Key, double Planned, double Actual, double? Mended, bool IsPlanned, double Off);

/// <summary>A nutrient that a recipe gives, as planned and with this batch.</summary>
/// <param name="Planned">mg/L.</param>
/// <param name="Actual">mg/L.</param>
/// <param name="Mended">mg/L; null where nothing is mended.</param>
public sealed record FeedShift(string Recipe, string Key, double Planned, double Actual, double? Mended);

/// <summary>A reading held against what the record should give.</summary>
/// <param name="Expected">Null where the model gives none.</param>
public sealed record ReadingCheck(BatchReading Reading, double Value, ReadingWindow? Expected)
{
    public bool Fits => Expected is not { } window || window.Holds(Value);
}

/// <summary>
/// What really went into a batch, what the plants get of it, and what to do with it. Computed; decided here and nowhere else.
/// </summary>
public sealed record BatchJudgement
{
    /// <summary>
    /// As near as counts as made as planned, relative; for what was not planned, relative to all that was. The shop sets it for the rule
    /// on what was weighed.
    /// </summary>
    public required double Allowed { get; init; }

    public required BatchDocument Batch { get; init; }

    public required StockFacts Planned { get; init; }

    public required StockFacts Actual { get; init; }

    public required BatchFate Fate { get; init; }

    /// <summary>Findings of weight that the plan does not have, the gravest first.</summary>
    public IReadOnlyList<Finding> Brought { get; init; } = [];

    public IReadOnlyList<NutrientShift> Stock { get; init; } = [];

    public IReadOnlyList<FeedShift> Feeds { get; init; } = [];

    public IReadOnlyList<ReadingCheck> Readings { get; init; } = [];

    /// <summary>What mends it; null where nothing does or nothing has to.</summary>
    public BatchMend? Mend { get; init; }

    /// <summary>Why mending was given up, whole sentences; empty where it was not tried or works.</summary>
    public IReadOnlyList<string> NotMended { get; init; } = [];

    /// <summary>The hazard that decides; null where none does.</summary>
    public Refusal? Refusal { get; init; }

    /// <summary>What was seen in it afterwards; empty where it stayed clear.</summary>
    public IReadOnlyList<BatchSight> Seen { get; init; } = [];
}
