using RecipeLint.Analysis;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Advice.Splitting;

/// <summary>One stock part of a plan.</summary>
/// <param name="Name">"Part A", "Trace".</param>
/// <param name="Stock">As it would be mixed, analysed whole.</param>
/// <param name="IsTrace">True for a part that holds the trace elements alone.</param>
public sealed record SplitPart(string Name, StockFacts Stock, bool IsTrace)
{
    /// <summary>True where what it holds can be called the trace elements: it is a part of traces, and some of them are elements.</summary>
    public bool HoldsTraceElements { get; init; }

    /// <summary>N of the dose 1:N.</summary>
    public required double Dilution { get; init; }

    /// <summary>Up to which dose 1:N it stays clear; null when nothing stops it before eight times its strength.</summary>
    public double? ClearUpTo { get; init; }

    /// <summary>What stops it there.</summary>
    public Solid? StoppedBy { get; init; }

    /// <summary>Temperature at which it does.</summary>
    public Temperature? StoppedAt { get; init; }

    /// <summary>Names of substances of which only a share is in this part, with the share, 0 to 1.</summary>
    public IReadOnlyList<(string Substance, double Share)> Shares { get; init; } = [];

    /// <summary>Errors that a check finds in it as it would be made and kept.</summary>
    public IReadOnlyList<Finding> Objections { get; init; } = [];

    /// <summary>Weights in it that no scale of the shop can take.</summary>
    public Obstacle.TooLittleToWeigh? TooLittle { get; init; }
}

/// <summary>A way to divide the salts.</summary>
/// <param name="Parts">Main parts first.</param>
public sealed record SplitPlan(IReadOnlyList<SplitPart> Parts)
{
    /// <summary>N of the dose 1:N of the main parts.</summary>
    public double Dilution => Parts[0].Dilution;

    /// <summary>The salt that is divided over two parts; null when none is.</summary>
    public string? Divided => Parts.SelectMany(p => p.Shares).Select(s => s.Substance).FirstOrDefault();
}

/// <summary>Substances that cannot share a part, with what forbids it, verified by the whole analysis of such a stock.</summary>
/// <param name="Together">Names of what would be in the part.</param>
/// <param name="Dilution">N of the dose 1:N it was judged at.</param>
/// <param name="Obstacles">The largest deposit first; not empty.</param>
/// <param name="Stock">The part as it would be mixed.</param>
public sealed record RejectedPart(IReadOnlyList<string> Together, double Dilution, IReadOnlyList<Obstacle> Obstacles, StockFacts Stock)
{
    /// <summary>
    /// The parts of the plan that would be one, or the one part that something would be moved to; empty where no plan is meant.
    /// </summary>
    public IReadOnlyList<string> Parts { get; init; } = [];

    /// <summary>What would be moved; null where whole parts are put together.</summary>
    public string? Newcomer { get; init; }
}

/// <summary>What a split came to.</summary>
public sealed record SplitProposal
{
    /// <summary>What was split, by its name.</summary>
    public required string Of { get; init; }

    public required IReadOnlyList<SplitUnit> Units { get; init; }

    /// <summary>Null when nothing works; then <see cref="Rejected"/> says what forbids it.</summary>
    public SplitPlan? Plan { get; init; }

    /// <summary>More parts, a trace stock of its own, a divided salt.</summary>
    public IReadOnlyList<SplitPlan> Alternatives { get; init; } = [];

    /// <summary>
    /// Why the plan has no fewer parts: each two of its main parts in one. Without a plan, what cannot even stand alone, or else all in
    /// one. Empty where a plan has the number of parts that was asked for.
    /// </summary>
    public IReadOnlyList<RejectedPart> Fewer { get; init; } = [];

    /// <summary>True where parts would stay clear and a check calls one of them wrong in every grouping.</summary>
    public bool StaysWrong => Plan is null && Fewer.Any(f => f.Obstacles.Any(o => o is Obstacle.Wrong));

    /// <summary>Groupings into fewer parts that were looked at, none of them fit.</summary>
    public int FewerGroupings { get; init; }

    /// <summary>Why a substance is not in another part.</summary>
    public IReadOnlyList<RejectedPart> Elsewhere { get; init; } = [];

    /// <summary>Every unfit part the search met at the strength asked for; only when asked for.</summary>
    public IReadOnlyList<RejectedPart> Rejected { get; init; } = [];

    /// <summary>N of the dose 1:N that the main parts should at least be made for; a plan below it was the strongest that works.</summary>
    public required double WantedDilution { get; init; }

    /// <summary>The weakest dose 1:N everything was looked at when nothing works.</summary>
    public double LookedAtDilution { get; init; }

    public required Interval<Temperature> Storage { get; init; }

    /// <summary>Water the parts are made with, as it is named.</summary>
    public required string Water { get; init; }

    /// <summary>True when the water the recipe names clouds them and pure water is taken.</summary>
    public bool WaterReplaced { get; init; }

    /// <summary>What the water the recipe names does to each unit alone; empty where it is used or pure.</summary>
    public IReadOnlyList<RejectedPart> WithRecipeWater { get; init; } = [];

    /// <summary>The final solution from the new parts; null without a plan.</summary>
    public RecipeFacts? Final { get; init; }

    /// <summary>mg/L of each element before, by key.</summary>
    public required IReadOnlyDictionary<string, double> Before { get; init; }

    /// <summary>Number of parts whose chemistry was computed.</summary>
    public int Computed { get; init; }

    /// <summary>
    /// What the substances do to people wherever they meet, so that no parts are proposed; null when they may be in one tank.
    /// </summary>
    public Refusal? Refused { get; init; }

    /// <summary>Why a recipe could not be looked at; null when it could.</summary>
    public string? Failure { get; init; }
}
