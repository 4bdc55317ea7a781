using RecipeLint.Analysis;
using RecipeLint.Analysis.Profiles;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Plant;

/// <summary>A ratio outside its range that does not just follow from an element reported by itself.</summary>
internal sealed record OffRatio(RatioRange Range, double Found)
{
    public bool IsHigh => Found > Range.High;

    public double Limit => IsHigh ? Range.High : Range.Low;

    public string Name => $"{Range.Numerator}:{Range.Denominator}";

    /// <summary>The side there is too much of.</summary>
    public string More => IsHigh ? Range.Numerator : Range.Denominator;

    public string Less => IsHigh ? Range.Denominator : Range.Numerator;

    /// <summary>How far off, the same both ways round.</summary>
    public double Distance => Math.Abs(Math.Log(Found / Limit));

    public string Text => $"{Range.Numerator} to {Range.Denominator} is {Say.Number(Found)} {Range.Basis switch
    {
        "meq" => "by charge (meq)",
        "mole" => "by moles",
        _ => "by mass",
    }}";

    public string Bounds => $"{Say.Number(Range.Low)} to {Say.Number(Range.High)}";

    public static OffRatio? Of(RecipeFacts recipe, RatioRange range)
    {
        if (ElementRatio.Of(recipe, range) is not { } ratio)
        {
            return null;
        }

        var found = Rounding.SixDigits(ratio);
        return (found >= range.Low && found <= range.High) || ElementRatio.FollowsFromAnElement(recipe, range) ? null : new OffRatio(range, found);
    }
}

/// <summary>The element, and the direction it is off in, that explains most ratios at once.</summary>
internal sealed record RatioCause(string Key, bool IsHigh)
{
    public bool Explains(OffRatio off)
    {
        var (here, there) = IsHigh ? (off.More, off.Less) : (off.Less, off.More);
        return ElementRatio.Keys(here).Contains(Key) && !ElementRatio.Keys(there).Contains(Key);
    }

    /// <summary>Most ratios first, then the element that is off its own range, then the one that is furthest off, then by name.</summary>
    public static RatioCause Find(RecipeFacts recipe, IReadOnlyList<OffRatio> open) =>
        open.SelectMany(o => ElementRatio.Keys(o.More).Select(k => new RatioCause(k, true)).Concat(ElementRatio.Keys(o.Less).Select(k => new RatioCause(k, false))))
            .Distinct()
            .Where(c => open.Any(c.Explains))
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
