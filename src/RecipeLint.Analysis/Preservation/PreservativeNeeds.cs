namespace RecipeLint.Analysis.Preservation;

/// <summary>
/// What a kept stock needs against moulds and yeasts. The defaults are those of the rules on preservation, where their sources stand; a
/// shop may set its own.
/// </summary>
public sealed record PreservativeNeeds
{
    /// <summary>mg/L of undissociated benzoic acid that holds yeasts and moulds where there is little to live on.</summary>
    public double LeastBenzoic { get; init; } = 200;

    /// <summary>mg/L of undissociated sorbic acid that holds yeasts and moulds where there is little to live on.</summary>
    public double LeastSorbic { get; init; } = 200;

    /// <summary>mg/L of undissociated propionic acid that holds moulds where there is little to live on.</summary>
    public double LeastPropionic { get; init; } = 400;

    /// <summary>g/L of organic matter from which a stock needs a preservative.</summary>
    public double MinimumFood { get; init; } = 0.5;

    /// <summary>g/L of organic matter from which more of it asks for no more preservative.</summary>
    public double RichFood { get; init; } = 50;

    /// <summary>Times the least that a rich stock needs which is kept long.</summary>
    public double RichTimes { get; init; } = 2.5;

    /// <summary>Days up to which no preservative is needed.</summary>
    public double FreshDays { get; init; } = 7;

    /// <summary>Days from which a longer time asks for no more preservative.</summary>
    public double LongDays { get; init; } = 180;

    /// <summary>pH up to which hardly anything grows.</summary>
    public double SafeBelowPh { get; init; } = 1.5;

    /// <summary>g/L of unchelated copper from which hardly anything grows.</summary>
    public double SafeCopper { get; init; } = 1;

    /// <summary>mg/L of undissociated acid that this stock needs, by the name of the acid ("sorbic acid").</summary>
    /// <param name="food">Organic matter, g/L.</param>
    /// <param name="days">How long it is kept; null where nobody says, which counts as long.</param>
    public double Least(string acid, double food, double? days) => Times(food, days) * acid switch
    {
        "benzoic acid" => LeastBenzoic,
        "sorbic acid" => LeastSorbic,
        _ => LeastPropionic,
    };

    /// <summary>
    /// Times the least, 1 to <see cref="RichTimes"/>: it grows with the logarithm of the food and of the time, as a colony does. That it
    /// grows so is common practice, no source; its two ends are those of the published range.
    /// </summary>
    public double Times(double food, double? days) =>
        1 + ((RichTimes - 1) * Part(food, MinimumFood, RichFood) * (days is { } kept ? Part(kept, FreshDays, LongDays) : 1));

    /// <summary>0 at the lower end and 1 at the upper, in proportion to the logarithm between.</summary>
    private static double Part(double value, double from, double to) =>
        value <= from ? 0 : value >= to || !(from > 0) ? 1 : Math.Log(value / from) / Math.Log(to / from);
}
