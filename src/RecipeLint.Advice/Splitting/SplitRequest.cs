using RecipeLint.Analysis.Judgement;
using RecipeLint.Analysis.Preservation;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Quantities;

namespace RecipeLint.Advice.Splitting;

/// <summary>What is asked of a split.</summary>
public sealed record SplitRequest
{
    /// <summary>Number of stock parts to make; null for as few as work.</summary>
    public int? Parts { get; init; }

    /// <summary>The dose the main parts are to be made for; null for the strongest usual one from 1:100 up.</summary>
    public Dose? Strength { get; init; }

    /// <summary>Storage temperatures; null for what the present stocks and the shop say.</summary>
    public Interval<Temperature>? At { get; init; }

    /// <summary>What each main part makes; null for what the final volume takes.</summary>
    public Volume? Batch { get; init; }

    /// <summary>Explain every unfit part the search met, not only those beside the plan.</summary>
    public bool ListRejected { get; init; }

    /// <summary>The day suppressions of the shop are held against; null leaves their last day unchecked.</summary>
    public DateOnly? Today { get; init; }

    public SplitLimits Limits { get; init; } = new();
}

/// <summary>
/// Where a stock stops being fit. The defaults are those of the rules on weighing and preservation, where
/// their sources stand.
/// </summary>
public sealed record SplitLimits
{
    /// <summary>Steps of the display a weight must reach.</summary>
    public double DisplaySteps { get; init; } = 20;

    /// <summary>Expanded uncertainty (k = 2) of a weight, as a fraction.</summary>
    public double WeighingUncertainty { get; init; } = 0.10;

    /// <summary>What a kept stock needs against moulds and yeasts.</summary>
    public PreservativeNeeds Preserving { get; init; } = new();

    /// <summary>From where on a deposit counts.</summary>
    public DepositLimits Deposits { get; init; } = DepositLimits.Default;
}
