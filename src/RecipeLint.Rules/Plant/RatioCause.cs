using RecipeLint.Analysis;
using RecipeLint.Analysis.Profiles;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Plant;

/// <summary>A ratio of a final solution against its range.</summary>
/// <param name="Found">To six digits; 0 where one side is absent.</param>
/// <param name="IsHigh">Whether it is judged against the upper bound.</param>
/// <param name="Past">Null where one side is absent.</param>
/// <param name="Checks">What has to hold for a finding.</param>
internal sealed record FoundRatio(RatioRange Range, double Found, bool IsHigh, Check? Past, IReadOnlyList<Check> Checks)
{
    /// <summary>What the forms of nitrogen other than ammonium are to a reader.</summary>
    private static readonly Dictionary<string, string> _otherForm = new(StringComparer.Ordinal)
    {
        ["NH4-N"] = "NO3-N",
        ["NO3-N"] = "NH4-N"
    };

    public bool IsOff => Checks.All(c => c.Holds);

    public double Limit => IsHigh ? Range.High : Range.Low;

    public string Name => $"{Range.Numerator}:{Range.Denominator}";

    /// <summary>One form of an element against all of it, such as ammonium in nitrogen.</summary>
    public bool IsShareOfForms => Range.Denominator == "N" && _otherForm.ContainsKey(Range.Numerator);

    /// <summary>The side there is too much of.</summary>
    public IReadOnlyList<string> More => IsHigh ? Numerators : Others;

    public IReadOnlyList<string> Less => IsHigh ? Others : Numerators;

    /// <summary>
    /// True where one is itself under what is usual or the other over it, which a note says already, and the two do not keep each other out
    /// as cations do: nitrogen with sulfur or phosphorus.
    /// </summary>
    public bool FollowsFromAnAmount(RecipeFacts recipe) => Range is { Numerator: "N", Denominator: "S" or "P" }
        && (Less.Any(k => recipe.Profile.Find(k) is { } range && Bound.IsUnder(recipe.MilligramsPerLitre(k), range.SufficientLow))
            || More.Any(k => recipe.Profile.Find(k) is { } range && Bound.IsOver(recipe.MilligramsPerLitre(k), range.SufficientHigh)));

    /// <summary>How far off, the same both ways round.</summary>
    public double Distance => Math.Abs(Math.Log(Found / Limit));

    /// <summary>"K to Ca is 3.1 by mass", "K carries 50 % of the charge of K, Ca and Mg", "ammonium is 42 % of the nitrogen".</summary>
    public string Text => (IsShare, Range.Basis) switch
    {
        _ when IsShareOfForms => $"{(Range.Numerator == "NH4-N" ? "Ammonium" : "Nitrate")} is {Say.Percent(Found)} of the nitrogen",
        (true, "meq") => $"{Range.Numerator} carries {Say.Percent(Found)} of the charge of {Say.List(Denominators)}",
        (true, "mole") => $"{Range.Numerator} is {Say.Percent(Found)} of the moles of {Say.List(Denominators)}",
        (true, _) => $"{Range.Numerator} is {Say.Percent(Found)} of the mass of {Say.List(Denominators)}",
        (_, "meq") => $"{Range.Numerator} to {Range.Denominator} is {Say.Number(Found)} by charge (meq)",
        (_, "mole") => $"{Range.Numerator} to {Range.Denominator} is {Say.Number(Found)} by moles",
        _ => $"{Range.Numerator} to {Range.Denominator} is {Say.Number(Found)} by mass",
    };

    public string Bounds => IsShare || IsShareOfForms
        ? $"{Say.Number(100 * Range.Low)} to {Say.Percent(Range.High)}"
        : $"{Say.Number(Range.Low)} to {Say.Number(Range.High)}";

    private bool IsShare => Numerators.All(Denominators.Contains);

    private string[] Numerators => ElementRatio.Keys(Range.Numerator);

    private string[] Denominators => ElementRatio.Keys(Range.Denominator);

    /// <summary>What weighs against the numerator: of a share, the rest of the whole.</summary>
    private string[] Others => IsShareOfForms ? [_otherForm[Range.Numerator]] : [.. Denominators.Except(Numerators)];

    public static FoundRatio Of(RecipeFacts recipe, RatioRange range)
    {
        if (ElementRatio.Of(recipe, range) is not { } ratio)
        {
            return new FoundRatio(range, 0, false, null, [Check.That("both sides of the ratio are there", false)]);
        }

        var found = Rounding.SixDigits(ratio);
        var high = found > range.High || (found >= range.Low && range.High / found < found / range.Low);
        var past = high
            ? new Check("over the bound", found, Relation.Over, range.High * Bound.Upper)
            : new Check("under the bound", found, Relation.Under, range.Low * Bound.Lower);
        var checks = new List<Check>(2) { past };
        if (!recipe.IsComplete)
        {
            checks.Add(Check.That("the recipe could be read whole", false));
        }
        else if (past.Holds && ElementRatio.FollowsFromAnElement(recipe, range))
        {
            checks.Add(Check.That("no element of it is so far out of its own range that the ratio only follows from that", false));
        }

        return new FoundRatio(range, found, high, past, checks);
    }
}

/// <summary>The element, and the direction it is off in, that explains most ratios at once.</summary>
internal sealed record RatioCause(string Key, bool IsHigh)
{
    public bool Explains(FoundRatio off) => (IsHigh ? off.More : off.Less).Contains(Key);

    /// <summary>Most ratios first, then the element that is off its own range, then the one that is furthest off, then by name.</summary>
    public static RatioCause Find(RecipeFacts recipe, IReadOnlyList<FoundRatio> open) =>
        open.SelectMany(o => o.More.Select(k => new RatioCause(k, true)).Concat(o.Less.Select(k => new RatioCause(k, false))))
            .Distinct()
            .OrderByDescending(c => open.Count(c.Explains))
            .ThenByDescending(c => c.IsOffItsOwnRange(recipe))
            .ThenByDescending(c => Rounding.SixDigits(open.Where(c.Explains).Sum(o => o.Distance)))
            .ThenBy(c => c.Key, StringComparer.Ordinal)
            .ThenBy(c => c.IsHigh)
            .First();

    private bool IsOffItsOwnRange(RecipeFacts recipe)
    {
        var found = Rounding.SixDigits(recipe.MilligramsPerLitre(Key));
        return recipe.Profile.Find(Key) is { } range && (IsHigh ? found > range.SufficientHigh : found < range.SufficientLow);
    }
}
