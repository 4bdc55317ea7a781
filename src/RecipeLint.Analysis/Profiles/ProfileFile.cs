using System.Text.Json;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Analysis.Profiles;

/// <summary>One embedded profile file. A fault in it is a fault of the build and throws.</summary>
internal sealed class ProfileFile
{
    private readonly string _file;
    private readonly JsonElement _root;
    private readonly Dictionary<string, (string Text, bool Practice)> _sources;

    /// <param name="file">Its name without ending, for what is said of faults.</param>
    /// <param name="root">Its contents, which have to outlive this.</param>
    public ProfileFile(string file, JsonElement root)
    {
        _file = file;
        _root = root;
        _sources = root.GetProperty("sources").EnumerateObject().ToDictionary(
            s => s.Name,
            s => (Text: s.Value.GetProperty("text").GetString()!, Practice: s.Value.TryGetProperty("practice", out var practice)
                && practice.GetBoolean()),
            StringComparer.Ordinal);
    }

    /// <param name="find">A profile that was read before, by name.</param>
    public ProfileData Read(Func<string, ProfileData> find) => new()
    {
        Name = _root.GetProperty("name").GetString()!,
        Aliases = [.. _root.GetProperty("aliases").EnumerateArray().Select(a => a.GetString()!)],
        StageAliases = ReadStages(),
        Base = Text(_root, "basedOn") is { } name ? find(name) : null,
        Rows = [.. _root.GetProperty("elements").EnumerateArray().Select(ReadRow)],
        Ratios = [.. _root.GetProperty("ratios").EnumerateArray().Select(ReadRatio)],
        Ec = ReadWindow("ec"),
        Ph = ReadWindow("pH"),
    };

    private static string? Text(JsonElement item, string name) => item.TryGetProperty(name, out var value) ? value.GetString() : null;

    private Dictionary<string, string> ReadStages() =>
        _root.TryGetProperty("stages", out var stages)
            ? stages.EnumerateObject()
                .SelectMany(s => s.Value
                    .EnumerateArray()
                    .Select(a => a.GetString()!)
                    .Append(s.Name)
                    .Select(n => KeyValuePair.Create(n, s.Name)))
                .ToDictionary(StringComparer.Ordinal)
            : new Dictionary<string, string>(StringComparer.Ordinal);

    private Bound ReadBound(JsonElement bound)
    {
        var source = _sources[bound.GetProperty("source").GetString()!];
        var confidence = bound.GetProperty("confidence").GetString() switch
        {
            "found" => Confidence.Found,
            "memory" => Confidence.Memory,
            "derived" => Confidence.Derived,
            var other => throw new InvalidOperationException($"'{other}' in the profile {_file}.json is no confidence."),
        };
        return new Bound(new Sourced<double>(bound.GetProperty("value").GetDouble(), source.Text, confidence), source.Practice);
    }

    private Window? ReadWindow(string name) =>
        _root.TryGetProperty(name, out var window)
            ? new Window(ReadBound(window.GetProperty("low")), ReadBound(window.GetProperty("high")), Text(window, "note"))
            : null;

    private RatioRange ReadRatio(JsonElement ratio)
    {
        var low = ReadBound(ratio.GetProperty("low"));
        var high = ReadBound(ratio.GetProperty("high"));
        return new RatioRange(
            ratio.GetProperty("numerator").GetString()!,
            ratio.GetProperty("denominator").GetString()!,
            low.Value.Value,
            high.Value.Value,
            ratio.GetProperty("basis").GetString()!,
            string.Join("; ", new[] { low.Value.Source, high.Value.Source }.Distinct(StringComparer.Ordinal)),
            low.IsPractice || high.IsPractice)
        {
            Note = Text(ratio, "note"),
        };
    }

    private ElementRow ReadRow(JsonElement row) => new(
        row.GetProperty("key").GetString()!,
        Text(row, "stage"),
        BoundNames.All
            .Where(n => row.TryGetProperty(n, out _))
            .ToDictionary(
                n => n, n => row.GetProperty(n) is { ValueKind: JsonValueKind.Object } b ? ReadBound(b) : null, StringComparer.Ordinal),
        Text(row, "disagreement"));
}
