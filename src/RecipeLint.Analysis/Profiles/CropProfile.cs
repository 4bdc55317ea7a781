namespace RecipeLint.Analysis.Profiles;

/// <summary>Bounds for one element in the final solution, mg/L, ordered from low to high; null where the sources give none.</summary>
/// <param name="Key">"N", "NH4-N", "P" ...</param>
/// <param name="DeficientBelow">Below this plants go short.</param>
/// <param name="SufficientLow">Lower end of the usual range.</param>
/// <param name="SufficientHigh">Upper end of the usual range.</param>
/// <param name="ToxicAbove">Above this plants are harmed.</param>
/// <param name="Disagreement">How far the sources differ, when they do; the wider range is kept.</param>
public sealed record ElementRange(
    string Key,
    double? DeficientBelow,
    double? SufficientLow,
    double? SufficientHigh,
    double? ToxicAbove,
    string Source,
    bool IsPractice,
    string? Disagreement);

/// <summary>Bounds for the ratio of two keys by mass unless stated otherwise.</summary>
public sealed record RatioRange(string Numerator, string Denominator, double Low, double High, string Basis, string Source, bool IsPractice);

/// <summary>What one crop at one stage wants.</summary>
public sealed record CropProfile
{
    /// <summary>"generic", "leafy-greens", "tomato" ...</summary>
    public required string Name { get; init; }

    public required string Stage { get; init; }

    public required IReadOnlyList<ElementRange> Elements { get; init; }

    public required IReadOnlyList<RatioRange> Ratios { get; init; }

    /// <summary>mS/cm at 25 °C.</summary>
    public (double Low, double High)? Ec { get; init; }

    public (double Low, double High)? Ph { get; init; }

    public ElementRange? Find(string key) => Elements.FirstOrDefault(e => e.Key == key);
}
