using System.Globalization;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Documents;

/// <summary>Figures of one analysis held against each other.</summary>
/// <param name="Place">Where a finding stands.</param>
internal abstract record WaterComparison(WaterDocument Water, Place Place) : Verdict
{
    /// <summary>Within 10 %, and 0.2 meq/L that rounding can make, two figures agree (common practice, no source).</summary>
    protected const double SlackPercent = 10, Rounding = 0.2;

    protected const string Lowest = "lowest of the year", Middle = "middle of the year", Highest = "highest of the year";

    protected const string Unit = "meq/L";

    /// <summary>For a verdict that fires.</summary>
    internal abstract string Message { get; }

    /// <summary>The numbers of the message.</summary>
    internal abstract IReadOnlyList<NamedValue> Values { get; }

    internal abstract Working Work();

    /// <summary>What follows from two figures that contradict each other.</summary>
    protected const string Advice = " One of the figures, its unit or its basis is wrong: compare them with the report.";

    protected static string Number(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
