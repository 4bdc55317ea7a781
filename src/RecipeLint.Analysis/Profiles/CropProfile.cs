using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Analysis.Profiles;

/// <summary>Bounds for one element in the final solution, mg/L, ordered from low to high; null where the sources give none.</summary>
/// <param name="Key">"N", "NH4-N", "P" ...</param>
/// <param name="DeficientBelow">Below this plants go short.</param>
/// <param name="SufficientLow">Lower end of the usual range.</param>
/// <param name="SufficientHigh">Upper end of the usual range.</param>
/// <param name="ToxicAbove">Above this plants are harmed.</param>
/// <param name="IsPractice">True when an end of the usual range is common practice, recalled from the named work, or from a page of low
/// authority.</param>
/// <param name="Disagreement">How far the sources differ, when they do; the wider range is kept.</param>
public sealed record ElementRange(
    string Key,
    double? DeficientBelow,
    double? SufficientLow,
    double? SufficientHigh,
    double? ToxicAbove,
    string Source,
    bool IsPractice,
    string? Disagreement)
{
    /// <summary>Above the usual range, but still run in practice up to here; null where the sources give none.</summary>
    public double? Upper { get; init; }

    /// <summary>True when none is known of this crop and <see cref="ToxicAbove"/> is what harms the hardiest other crop.</summary>
    public bool IsToxicToOthers { get; init; }

    /// <summary>
    /// Each stated bound with its own source, by the name it has in the data ("deficientBelow", "low", "high", "upper", "toxicAbove").
    /// </summary>
    public IReadOnlyDictionary<string, Sourced<double>> Bounds { get; init; } = new Dictionary<string, Sourced<double>>();
}

/// <summary>Bounds for the ratio of two keys by mass unless stated otherwise.</summary>
/// <param name="Numerator">A key, or several joined by "+" ("Ca+Mg").</param>
/// <param name="Denominator">As the numerator.</param>
/// <param name="Basis">"mass", "mole" or "meq".</param>
public sealed record RatioRange(string Numerator, string Denominator, double Low, double High, string Basis, string Source, bool IsPractice)
{
    /// <summary>What the sources add or where they differ.</summary>
    public string? Note { get; init; }
}

/// <summary>What one crop at one stage wants.</summary>
public sealed record CropProfile
{
    /// <summary>"generic", "leafy-greens", "tomato" ...</summary>
    public required string Name { get; init; }

    /// <summary>"any", or a stage the profile knows ("early").</summary>
    public required string Stage { get; init; }

    /// <summary>Names and other names of the stages the profile tells apart; empty where it knows none.</summary>
    public IReadOnlyList<string> KnownStages { get; init; } = [];

    public required IReadOnlyList<ElementRange> Elements { get; init; }

    public required IReadOnlyList<RatioRange> Ratios { get; init; }

    /// <summary>mS/cm at 25 °C.</summary>
    public (double Low, double High)? Ec { get; init; }

    public string? EcSource { get; init; }

    public (double Low, double High)? Ph { get; init; }

    public string? PhSource { get; init; }

    /// <summary>True when the EC or pH window is common practice or recalled.</summary>
    public bool WindowsArePractice { get; init; }

    /// <summary>The same crop where nothing of it is known: of a spray onto its leaves.</summary>
    internal CropProfile WithoutBounds() => this with
    {
        Elements = [],
        Ratios = [],
        Ec = null,
        EcSource = null,
        Ph = null,
        PhSource = null,
    };

    public ElementRange? Find(string key) => Elements.FirstOrDefault(e => e.Key == key);
}
