using System.Collections.Concurrent;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Schema;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Files;

/// <summary>
/// Trees of files that many shops have word for word, such as settings and waters: the same bytes are parsed and held against their schema
/// once in a run. Only what nothing is wrong with is kept, so no problem ever names the wrong file. For several threads at once.
/// </summary>
internal sealed class RepeatedContents
{
    /// <summary>Contents that are kept at most, and bytes of each: a tree takes some thirty times as much.</summary>
    private const int Most = 128, MostBytes = 16_384;

    private readonly ConcurrentDictionary<Content, SourceFile> _known = new();

    public (JsonReadResult Parsed, IReadOnlyList<Problem> Shape, bool CanBeRead) Read(
        string path, byte[] bytes, DocumentKind kind, int sizeLimit)
    {
        if (kind is not (DocumentKind.Settings or DocumentKind.Water or DocumentKind.Profile or DocumentKind.Substances)
            || bytes.Length > Math.Min(MostBytes, sizeLimit))
        {
            return ParsedFiles.Parse(path, bytes, kind, sizeLimit);
        }

        var content = new Content(kind, bytes);
        if (_known.TryGetValue(content, out var known))
        {
            return (new JsonReadResult(known.At(path), []), [], true);
        }

        var read = ParsedFiles.Parse(path, bytes, kind, sizeLimit);
        if (read.CanBeRead && read.Shape.Count == 0 && _known.Count < Most
            && read.Parsed is { Problems.Count: 0, Source: { Tree: not null, IsPlain: true, HadByteOrderMark: false } source })
        {
            _known.TryAdd(content, source);
        }

        return read;
    }

    private readonly struct Content(DocumentKind kind, byte[] bytes) : IEquatable<Content>
    {
        private readonly DocumentKind _kind = kind;
        private readonly byte[] _bytes = bytes;

        public bool Equals(Content other) => _kind == other._kind && _bytes.AsSpan().SequenceEqual(other._bytes);

        public override bool Equals(object? obj) => obj is Content other && Equals(other);

        public override int GetHashCode()
        {
            var hash = default(HashCode);
            hash.Add(_kind);
            hash.AddBytes(_bytes);
            return hash.ToHashCode();
        }
    }
}
