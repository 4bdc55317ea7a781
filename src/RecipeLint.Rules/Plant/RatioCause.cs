using RecipeLint.Analysis;
using RecipeLint.Analysis.Profiles;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Plant;

/// <summary>A ratio outside its range that does not just follow from an element reported by itself.</summary>
internal sealed record OffRatio(RatioRange Range, double Found)
{
    public bool IsHigh => Found > Range.High;

    public double Limit => IsHigh ? Range.High : Range.Low;

    private bool IsShare => Numerators.All(Denominators.Contains);

    private string[] Numerators => ElementRatio.Keys(Range.Numerator);

    private string[] Denominators => ElementRatio.Keys(Range.Denominator);

    /// <summary>What weighs against the numerator: of a share, the rest of the whole.</summary>
    private string[] Others => [.. Denominators.Except(Numerators)];

    public string Name => $"{Range.Numerator}:{Range.Denominator}";

    /// <summary>The side there is too much of.</summary>
    public IReadOnlyList<string> More => IsHigh ? Numerators : Others;

    public IReadOnlyList<string> Less => IsHigh ? Others : Numerators;

    /// <summary>How far off, the same both ways round.</summary>
    public double Distance => Math.Abs(Math.Log(Found / Limit));

    /// <summary>"K to Ca is 3.1 by mass", "K carries 50 % of the charge of K, Ca and Mg".</summary>
    public string Text => (IsShare, Range.Basis) switch
    {
        (true, "meq") => $"{Range.Numerator} carries {Say.Percent(Found)} of the charge of {Say.List(Denominators)}",
        (true, "mole") => $"{Range.Numerator} is {Say.Percent(Found)} of the moles of {Say.List(Denominators)}",
        (true, _) => $"{Range.Numerator} is {Say.Percent(Found)} of the mass of {Say.List(Denominators)}",
        (_, "meq") => $"{Range.Numerator} to {Range.Denominator} is {Say.Number(Found)} by charge (meq)",
        (_, "mole") => $"{Range.Numerator} to {Range.Denominator} is {Say.Number(Found)} by moles",
        _ => $"{Range.Numerator} to {Range.Denominator} is {Say.Number(Found)} by mass",
    };

    public string Bounds => IsShare ? $"{Say.Number(100 * Range.Low)} to {Say.Percent(Range.High)}" : $"{Say.Number(Range.Low)} to {Say.Number(Range.High)}";

    public static OffRatio? Of(RecipeFacts recipe, RatioRange range)
    {
        if (ElementRatio.Of(recipe, range) is not { } ratio)
        {
            return null;
        }

        var found = Rounding.SixDigits(ratio);
        return (!Bound.IsOver(found, range.High) && !Bound.IsUnder(found, range.Low)) || ElementRatio.FollowsFromAnElement(recipe, range) ? null : new OffRatio(range, found);
    }
}

/// <summary>The element, and the direction it is off in, that explains most ratios at once.</summary>
internal sealed record RatioCause(string Key, bool IsHigh)
{
    public bool Explains(OffRatio off) => (IsHigh ? off.More : off.Less).Contains(Key);

    /// <summary>Most ratios first, then the element that is off its own range, then the one that is furthest off, then by name.</summary>
    public static RatioCause Find(RecipeFacts recipe, IReadOnlyList<OffRatio> open) =>
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
