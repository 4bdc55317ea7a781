using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using RecipeLint.Shell;

namespace RecipeLint.Commands;

/// <summary>How far somebody is in one exercise.</summary>
/// <param name="Answered">Whether the first answer was right; null where none was given.</param>
/// <param name="Tries">How often the files were judged.</param>
/// <param name="Shown">A way to mend them was looked at before.</param>
internal sealed record LearnMark(bool? Answered, int Tries, bool Mended, bool Shown)
{
    public static LearnMark None { get; } = new(null, 0, false, false);
}

/// <summary>The score of the first week. It stands in the folder of the exercises and nowhere else.</summary>
internal sealed class LearnScore
{
    public const string FileName = "score.json";

    private const int FormatVersion = 1;

    /// <summary>In bytes; a score is far smaller.</summary>
    private const int LargestFile = 1_000_000;

    private readonly string _path;
    private readonly SortedDictionary<string, LearnMark> _marks = new(StringComparer.Ordinal);
    private byte[]? _written;

    private LearnScore(string path) => _path = path;

    public LearnMark this[string exercise] => _marks.GetValueOrDefault(exercise, LearnMark.None);

    /// <summary>The score in a folder; a fresh one where there is none.</summary>
    /// <exception cref="UsageException">What stands there is no score.</exception>
    public static LearnScore In(Surroundings world, string folder, string named)
    {
        var score = new LearnScore(Path.Combine(folder, FileName));
        score._written = NamedFile.ReadIfThere(world, score._path, "the score ", LargestFile);
        if (score._written is null)
        {
            return score;
        }

        try
        {
            using var document = JsonDocument.Parse(score._written);
            if (document.RootElement.GetProperty("format").GetInt32() != FormatVersion)
            {
                throw new JsonException();
            }

            foreach (var exercise in document.RootElement.GetProperty("exercises").EnumerateObject())
            {
                score._marks[exercise.Name] = new LearnMark(
                    exercise.Value.GetProperty("answered") is { ValueKind: not JsonValueKind.Null } answered ? answered.GetBoolean() : null,
                    exercise.Value.GetProperty("tries").GetInt32(),
                    exercise.Value.GetProperty("mended").GetBoolean(),
                    exercise.Value.GetProperty("shown").GetBoolean());
            }
        }
        catch (Exception fault) when (fault is JsonException or KeyNotFoundException or InvalidOperationException or FormatException)
        {
            throw new UsageException(
                $"'{Path.Combine(named, FileName)}' cannot be read as a score. Move it away to begin anew; the exercises stay as they "
                    + "are.");
        }

        return score;
    }

    /// <summary>Writes a mark down at once, whole or not at all.</summary>
    public void Set(string exercise, LearnMark mark)
    {
        _marks[exercise] = mark;
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(
            stream, new JsonWriterOptions { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
        {
            json.WriteStartObject();
            json.WriteNumber("format", FormatVersion);
            json.WriteStartObject("exercises");
            foreach (var (name, known) in _marks)
            {
                json.WriteStartObject(name);
                if (known.Answered is { } answered)
                {
                    json.WriteBoolean("answered", answered);
                }
                else
                {
                    json.WriteNull("answered");
                }

                json.WriteNumber("tries", known.Tries);
                json.WriteBoolean("mended", known.Mended);
                json.WriteBoolean("shown", known.Shown);
                json.WriteEndObject();
            }

            json.WriteEndObject();
            json.WriteEndObject();
        }

        byte[] bytes = [.. stream.ToArray(), .. Encoding.UTF8.GetBytes("\n")];
        WholeFiles.Write([new WholeFile(_path, bytes) { Expected = _written, IsNew = _written is null }]);
        _written = bytes;
    }
}
