using System.Globalization;
using System.Text;
using System.Text.Json;
using RecipeLint.Install;
using RecipeLint.Rules.Engine;
using RecipeLint.Shell;

namespace RecipeLint.Living;

/// <summary>The file of findings that were there from the start: one a line, sorted, so that a review shows what came and went.</summary>
internal static class BaselineFile
{
    public const string UsualName = "recipelint.baseline.json";

    private const int LargestFile = 20_000_000;

    private const string Called = "the baseline ";

    /// <summary>
    /// The baseline that holds for a run: the one asked for, else those its settings name together; null when there is none.
    /// </summary>
    /// <param name="root">Full path of the root of the run.</param>
    /// <param name="inSettings">Relative to the root.</param>
    /// <param name="asked">As the user wrote it; null to follow the settings.</param>
    /// <exception cref="UsageException">It is not there or cannot be read.</exception>
    public static Baseline? For(Surroundings world, string root, IReadOnlyList<string> inSettings, string? asked)
    {
        if (asked is not null)
        {
            return Parse(Bytes(world, asked), asked);
        }

        var fromRoot = world with { CurrentDirectory = root };
        return inSettings.Count == 0
            ? null
            : new Baseline(inSettings[0], [.. inSettings.SelectMany(f => Parse(Bytes(fromRoot, f), f).Entries)]);
    }

    /// <summary>What stands in the file of a baseline.</summary>
    /// <exception cref="UsageException">It is not there or cannot be read.</exception>
    public static byte[] Bytes(Surroundings world, string named) =>
        NamedFile.Read(world, named, Called, LargestFile, "; 'recipelint baseline update' writes one");

    /// <summary>The same; null where none stands there.</summary>
    /// <inheritdoc cref="Bytes"/>
    public static byte[]? BytesIfThere(Surroundings world, string named) => NamedFile.ReadIfThere(world, named, Called, LargestFile);

    /// <exception cref="UsageException">It is no baseline.</exception>
    public static Baseline Parse(byte[] bytes, string shown)
    {
        try
        {
            using var document = JsonDocument.Parse(bytes);
            var root = document.RootElement;
            if (root.ValueKind != JsonValueKind.Object
                || !root.TryGetProperty("format", out var format)
                || !format.TryGetInt32(out var number)
                || number != 1)
            {
                throw new UsageException($"'{shown}' is no baseline of format 1.");
            }

            return new Baseline(shown, [.. root.GetProperty("findings").EnumerateArray().Select(Entry)])
            {
                Data = root.TryGetProperty("data", out var data) ? data.GetString() ?? "" : "",
            };
        }
        catch (Exception exception) when (exception is JsonException or KeyNotFoundException or InvalidOperationException
            or FormatException)
        {
            throw new UsageException($"the baseline '{shown}' cannot be read: {exception.Message}");
        }
    }

    /// <summary>The whole file, every finding on a line of its own.</summary>
    public static byte[] Write(IEnumerable<BaselineEntry> entries)
    {
        var text = new StringBuilder("{\n  \"format\": 1,\n");
        text.Append(CultureInfo.InvariantCulture, $"  \"data\": {Quoted(DataVersion.Text)},\n  \"findings\": [");
        var first = true;
        foreach (var entry in entries.OrderBy(e => e.File, StringComparer.Ordinal)
            .ThenBy(e => e.At, StringComparer.Ordinal)
            .ThenBy(e => e.Rule, StringComparer.Ordinal)
            .ThenBy(e => e.Value))
        {
            var value = entry.Value is { } number ? string.Create(CultureInfo.InvariantCulture, $", \"value\": {number:R}") : "";
            text.Append(first ? "\n" : ",\n");
            text.Append(
                CultureInfo.InvariantCulture,
                $"    {{\"rule\": {Quoted(entry.Rule)}, \"file\": {Quoted(entry.File)}, \"at\": {Quoted(entry.At)}{value}}}");
            first = false;
        }

        return Encoding.UTF8.GetBytes(text.Append(first ? "]\n}\n" : "\n  ]\n}\n").ToString());
    }

    private static BaselineEntry Entry(JsonElement element) => new(
        element.GetProperty("rule").GetString() ?? "",
        element.GetProperty("file").GetString() ?? "",
        element.TryGetProperty("at", out var at) ? at.GetString() ?? "" : "",
        element.TryGetProperty("value", out var value) ? value.GetDouble() : null);

    private static string Quoted(string text) => $"\"{JsonEncodedText.Encode(text)}\"";
}
