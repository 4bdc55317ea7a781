using System.Text.Json;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Analysis.Profiles;

/// <summary>Reads the embedded profile files. A fault in them is a fault of the build and throws.</summary>
internal static class ProfileReader
{
    /// <summary>Each file after the one it is based on.</summary>
    private static readonly string[] Files =
        ["generic", "fruiting", "leafy-greens", "herbs", "tomato", "cucumber", "pepper", "strawberry", "cut-flowers", "propagation"];

    public static IReadOnlyList<ProfileData> ReadAll()
    {
        var profiles = new List<ProfileData>(Files.Length);
        foreach (var file in Files)
        {
            profiles.Add(Read(file, name => profiles.First(p => p.Name == name)));
        }

        return profiles;
    }

    private static ProfileData Read(string file, Func<string, ProfileData> find)
    {
        using var stream = typeof(ProfileReader).Assembly.GetManifestResourceStream($"RecipeLint.Analysis.Profiles.{file}.json")
            ?? throw new InvalidOperationException($"The embedded profile {file}.json is missing from the build.");
        using var document = JsonDocument.Parse(stream);
        var root = document.RootElement;
        var sources = root.GetProperty("sources").EnumerateObject().ToDictionary(
            s => s.Name,
            s => (Text: s.Value.GetProperty("text").GetString()!, Practice: s.Value.TryGetProperty("practice", out var practice) && practice.GetBoolean()),
            StringComparer.Ordinal);

        Bound ReadBound(JsonElement bound)
        {
            var source = sources[bound.GetProperty("source").GetString()!];
            var confidence = bound.GetProperty("confidence").GetString() switch
            {
                "found" => Confidence.Found,
                "memory" => Confidence.Memory,
                "derived" => Confidence.Derived,
                var other => throw new InvalidOperationException($"'{other}' in the profile {file}.json is no confidence."),
            };
            return new Bound(new Sourced<double>(bound.GetProperty("value").GetDouble(), source.Text, confidence), source.Practice);
        }

        Window? ReadWindow(string name) =>
            root.TryGetProperty(name, out var window)
                ? new Window(ReadBound(window.GetProperty("low")), ReadBound(window.GetProperty("high")), Text(window, "note"))
                : null;

        RatioRange ReadRatio(JsonElement ratio)
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

        ElementRow ReadRow(JsonElement row) => new(
            row.GetProperty("key").GetString()!,
            Text(row, "stage"),
            BoundNames.All
                .Where(n => row.TryGetProperty(n, out _))
                .ToDictionary(n => n, n => row.GetProperty(n) is { ValueKind: JsonValueKind.Object } b ? ReadBound(b) : null, StringComparer.Ordinal),
            Text(row, "disagreement"));

        return new ProfileData
        {
            Name = root.GetProperty("name").GetString()!,
            Aliases = [.. root.GetProperty("aliases").EnumerateArray().Select(a => a.GetString()!)],
            StageAliases = root.TryGetProperty("stages", out var stages)
                ? stages.EnumerateObject()
                    .SelectMany(s => s.Value.EnumerateArray().Select(a => a.GetString()!).Append(s.Name).Select(n => KeyValuePair.Create(n, s.Name)))
                    .ToDictionary(StringComparer.Ordinal)
                : new Dictionary<string, string>(StringComparer.Ordinal),
            Base = Text(root, "basedOn") is { } name ? find(name) : null,
            Rows = [.. root.GetProperty("elements").EnumerateArray().Select(ReadRow)],
            Ratios = [.. root.GetProperty("ratios").EnumerateArray().Select(ReadRatio)],
            Ec = ReadWindow("ec"),
            Ph = ReadWindow("pH"),
        };
    }

    private static string? Text(JsonElement item, string name) => item.TryGetProperty(name, out var value) ? value.GetString() : null;
}
