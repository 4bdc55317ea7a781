using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Schema;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Files;

/// <summary>
/// What bytes came to, kept between runs: a file whose bytes are the same is neither parsed nor held against its schema again, and is the
/// same
/// <see cref="SourceFile"/> as before. The last state of each path is kept.
/// </summary>
/// <param name="below">Known already, and left as it is: what a change in thought does not touch is taken from there.</param>
public sealed class ParsedFiles(ParsedFiles? below = null)
{
    private readonly Lock _gate = new();
    private readonly Dictionary<(string Path, DocumentKind Kind), Entry> _entries = [];

    /// <summary>Forgets every file.</summary>
    public void Clear()
    {
        lock (_gate)
        {
            _entries.Clear();
        }
    }

    internal (JsonReadResult Parsed, IReadOnlyList<Problem> Shape, bool CanBeRead) Read(
        string path, byte[] bytes, DocumentKind kind, int sizeLimit)
    {
        if (Find(path, bytes, kind, sizeLimit) is { } known)
        {
            return (known.Parsed, known.Shape, known.CanBeRead);
        }

        var (parsed, shape, canBeRead) = Parse(path, bytes, kind, sizeLimit);
        lock (_gate)
        {
            _entries[(path, kind)] = new Entry(bytes, sizeLimit, parsed, shape, canBeRead);
        }

        return (parsed, shape, canBeRead);
    }

    private Entry? Find(string path, byte[] bytes, DocumentKind kind, int sizeLimit)
    {
        lock (_gate)
        {
            if (_entries.TryGetValue((path, kind), out var known) && known.SizeLimit == sizeLimit
                && (ReferenceEquals(known.Bytes, bytes) || known.Bytes.AsSpan().SequenceEqual(bytes)))
            {
                return known;
            }
        }

        return below?.Find(path, bytes, kind, sizeLimit);
    }

    internal static (JsonReadResult Parsed, IReadOnlyList<Problem> Shape, bool CanBeRead) Parse(
        string path, byte[] bytes, DocumentKind kind, int sizeLimit)
    {
        var parsed = JsonReading.Read(path, bytes, sizeLimit);
        var (shape, canBeRead) = SchemaCheck.Look(kind, parsed.Source);
        return (parsed, shape, canBeRead);
    }

    private sealed record Entry(byte[] Bytes, int SizeLimit, JsonReadResult Parsed, IReadOnlyList<Problem> Shape, bool CanBeRead);
}
