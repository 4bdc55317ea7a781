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

    /// <summary>
    /// meq/L by which figures have to be apart for a feed to miss what its file says: 20 mg/L of calcium, 14 of nitrogen, about a tenth of
    /// what crops are fed (common practice, no source).
    /// </summary>
    private const double Matters = 1;

    /// <summary>
    /// The figures contradict each other beyond doubt, and by enough to move a feed: the water is not the one of the file.
    /// </summary>
    internal bool IsFarOff => IsSure && Off >= Matters;

    /// <summary>Past what two figures of one analysis may be apart by more than chance makes of it.</summary>
    protected virtual bool IsSure => Checks[0].IsTwice;

    /// <summary>meq/L between the two figures.</summary>
    protected abstract double Off { get; }

    /// <summary>For a verdict that fires.</summary>
    internal abstract string Message { get; }

    /// <summary>The numbers of the message.</summary>
    internal abstract IReadOnlyList<NamedValue> Values { get; }

    internal abstract Working Work();

    /// <summary>What follows from two figures that contradict each other.</summary>
    protected const string Advice = " One of the figures, its unit or its basis is wrong: compare them with the report.";

    protected static string Number(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
