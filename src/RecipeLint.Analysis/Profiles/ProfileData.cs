using System.Collections.Concurrent;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Analysis.Profiles;

/// <summary>The names of the bounds of an element row, from low to high, as they stand in the data.</summary>
internal static class BoundNames
{
    public const string DeficientBelow = "deficientBelow";
    public const string Low = "low";
    public const string High = "high";
    public const string Upper = "upper";
    public const string ToxicAbove = "toxicAbove";

    public static readonly string[] All = [DeficientBelow, Low, High, Upper, ToxicAbove];
}

/// <summary>A stated bound.</summary>
/// <param name="FromPractice">True for common practice, a trade or hobby page, or the spread of recipes in use.</param>
internal sealed record Bound(Sourced<double> Value, bool FromPractice)
{
    public bool IsPractice => FromPractice || Value.Confidence == Confidence.Memory;
}

/// <summary>One element at one stage. A bound that is present but null says that none holds, even where the base profile has one.</summary>
internal sealed record ElementRow(string Key, string? Stage, IReadOnlyDictionary<string, Bound?> Bounds, string? Disagreement)
{
    /// <summary>This row, with what it leaves unsaid taken from another.</summary>
    public ElementRow Over(ElementRow? other)
    {
        if (other is null)
        {
            return this;
        }

        var bounds = new Dictionary<string, Bound?>(other.Bounds, StringComparer.Ordinal);
        foreach (var (name, bound) in Bounds)
        {
            bounds[name] = bound;
        }

        return this with { Bounds = bounds, Disagreement = Disagreement ?? other.Disagreement };
    }

    public ElementRange ToRange()
    {
        var stated = BoundNames.All
            .Select(n => (Name: n, Bound: Bounds.GetValueOrDefault(n)))
            .Where(b => b.Bound is not null)
            .ToDictionary(b => b.Name, b => b.Bound!, StringComparer.Ordinal);
        double? Value(string name) => stated.TryGetValue(name, out var bound) ? bound.Value.Value : null;
        return new ElementRange(
            Key,
            Value(BoundNames.DeficientBelow),
            Value(BoundNames.Low),
            Value(BoundNames.High),
            Value(BoundNames.ToxicAbove),
            string.Join("; ", stated.Values.Select(b => b.Value.Source).Distinct(StringComparer.Ordinal)),
            stated.Where(b => b.Key is BoundNames.Low or BoundNames.High).Any(b => b.Value.IsPractice),
            Disagreement)
        {
            Upper = Value(BoundNames.Upper),
            Bounds = stated.ToDictionary(b => b.Key, b => b.Value.Value, StringComparer.Ordinal),
        };
    }
}

/// <summary>A window of EC or pH.</summary>
internal sealed record Window(Bound Low, Bound High, string? Note)
{
    public (double Low, double High) Values => (Low.Value.Value, High.Value.Value);

    public bool IsPractice => Low.IsPractice || High.IsPractice;

    public string Source
    {
        get
        {
            var text = string.Join("; ", new[] { Low.Value.Source, High.Value.Source }.Distinct(StringComparer.Ordinal));
            return Note is null ? text : $"{text}. {Note}";
        }
    }
}

/// <summary>One profile file, with what it is based on.</summary>
internal sealed class ProfileData
{
    public const string AnyStage = "any";

    private readonly ConcurrentDictionary<string, CropProfile> _atStages = new(StringComparer.Ordinal);

    public required string Name { get; init; }

    public required IReadOnlyList<string> Aliases { get; init; }

    /// <summary>Other names of the stages by plain name.</summary>
    public required IReadOnlyDictionary<string, string> StageAliases { get; init; }

    public ProfileData? Base { get; init; }

    public required IReadOnlyList<ElementRow> Rows { get; init; }

    public required IReadOnlyList<RatioRange> Ratios { get; init; }

    public Window? Ec { get; init; }

    public Window? Ph { get; init; }

    /// <summary>Windows of their own by plain stage name; null where those for any stage hold.</summary>
    public IReadOnlyDictionary<string, (Window? Ec, Window? Ph)> StageWindows { get; init; } = new Dictionary<string, (Window?, Window?)>();

    public IReadOnlyList<string> StageNames => [.. StageAliases.Values.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];

    /// <summary>The profile at a stage, put together when a stage is first asked for: every recipe of a crop asks for the same.</summary>
    public CropProfile For(string? stage) =>
        _atStages.GetOrAdd(StagesOf(stage), static (_, asked) => asked.Data.PutTogether(asked.Stage), (Data: this, Stage: stage));

    /// <summary>The stages as this profile and those below it know them: what no one knows counts as none, so there are few.</summary>
    private string StagesOf(string? stage) => $"{StageOf(stage)}\n{Base?.StagesOf(stage)}";

    private CropProfile PutTogether(string? stage)
    {
        var (ec, ph) = WindowsFor(stage);
        return new CropProfile
        {
            Name = Name,
            Stage = StageOf(stage) ?? Base?.StageOf(stage) ?? AnyStage,
            KnownStages = [.. StageWords().Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)],
            Elements = [.. RowsFor(stage).Values.Select(r => ProfileLibrary.WithGeneralLimit(r.ToRange()))],
            Ratios = [.. RatiosWithBase()],
            Ec = ec?.Values,
            EcSource = ec?.Source,
            Ph = ph?.Values,
            PhSource = ph?.Source,
            WindowsArePractice = ec is { IsPractice: true } || ph is { IsPractice: true },
        };
    }

    private IEnumerable<string> StageWords() => StageAliases.Keys.Concat(Base?.StageWords() ?? []);

    /// <summary>The plain name of a stage this profile itself knows; null for any other.</summary>
    private string? StageOf(string? stage) => stage is null ? null : StageAliases.GetValueOrDefault(stage.Trim().ToLowerInvariant());

    private (Window? Ec, Window? Ph) WindowsFor(string? stage)
    {
        var (ec, ph) = StageOf(stage) is { } own ? StageWindows.GetValueOrDefault(own) : default;
        var inherited = Base?.WindowsFor(stage) ?? default;
        return (ec ?? Ec ?? inherited.Ec, ph ?? Ph ?? inherited.Ph);
    }

    /// <summary>The base's rows, over them the rows of this profile for any stage, over them those of the stage.</summary>
    private SortedDictionary<string, ElementRow> RowsFor(string? stage)
    {
        var rows = Base?.RowsFor(stage) ?? new SortedDictionary<string, ElementRow>(StringComparer.Ordinal);
        var own = StageOf(stage);
        foreach (var row in Rows.Where(r => r.Stage is null).Concat(Rows.Where(r => r.Stage is not null && r.Stage == own)))
        {
            rows[row.Key] = row.Over(rows.GetValueOrDefault(row.Key));
        }

        return rows;
    }

    private IEnumerable<RatioRange> RatiosWithBase()
    {
        var inherited = Base?.RatiosWithBase() ?? [];
        return inherited
            .Where(b => !Ratios.Any(r => r.Numerator == b.Numerator && r.Denominator == b.Denominator))
            .Concat(Ratios)
            .OrderBy(r => r.Numerator, StringComparer.Ordinal)
            .ThenBy(r => r.Denominator, StringComparer.Ordinal);
    }
}
