using System.Text;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Json;

/// <summary>The bytes of one file, its JSON tree with spans, and the one place where byte offsets become lines and columns.</summary>
public sealed class SourceFile
{
    private readonly byte[] _bytes;
    private readonly Lazy<int[]> _lineStarts;
    private readonly WeakReference<JsonTree>? _letGo;

    /// <param name="path">Relative to the workspace root, forward slashes.</param>
    /// <param name="bytes">Valid UTF-8 without a byte order mark, or whatever was there when it is not.</param>
    public SourceFile(string path, byte[] bytes)
    {
        Path = path;
        _bytes = bytes;
        DecodableBytes = bytes;
        _lineStarts = new Lazy<int[]>(FindLineStarts);
    }

    private SourceFile(SourceFile whole, JsonTree tree)
        : this(whole.Path, whole._bytes)
    {
        _letGo = new WeakReference<JsonTree>(tree);
        HadByteOrderMark = whole.HadByteOrderMark;
        DecodableBytes = whole.DecodableBytes;
        IsPlain = whole.IsPlain;
    }

    public string Path { get; }

    public ReadOnlySpan<byte> Bytes => _bytes;

    public ReadOnlyMemory<byte> Memory => _bytes;

    /// <summary>The tree; null when the bytes are not JSON. Comments and trailing commas do not stop the reading.</summary>
    public JsonTree? Tree
    {
        get => field ?? (_letGo is null ? null : _letGo.TryGetTarget(out var tree) ? tree : ReadAgain());
        init;
    }

    /// <summary>
    /// The same file with its tree let go, which takes many times the memory of the bytes: where it is asked for and gone, it is made
    /// again.
    /// </summary>
    public SourceFile WithoutTree() => Tree is { } tree && BeyondNumbers.Count == 0 ? new SourceFile(this, tree) : this;

    /// <summary>The same contents at another path.</summary>
    internal SourceFile At(string path) => new(path, _bytes)
    {
        Tree = Tree,
        HadByteOrderMark = HadByteOrderMark,
        DecodableBytes = DecodableBytes,
        IsPlain = IsPlain,
        BeyondNumbers = BeyondNumbers,
    };

    private JsonTree? ReadAgain()
    {
        var tree = JsonReading.Read(Path, _bytes, int.MaxValue).Source.Tree;
        if (tree is not null)
        {
            _letGo!.SetTarget(tree);
        }

        return tree;
    }

    /// <summary>True when the file on disk starts with a byte order mark, which <see cref="Bytes"/> leaves out.</summary>
    public bool HadByteOrderMark { get; init; }

    /// <summary>
    /// Same length and offsets as <see cref="Bytes"/>, without what a second, strict JSON reader could not take: comments, trailing
    /// commas, lone surrogate escapes and outsized numbers. Strict JSON whenever there is a tree.
    /// </summary>
    internal ReadOnlyMemory<byte> DecodableBytes { get; init; }

    /// <summary>True when reading found nothing to say: strict JSON, each key once, every number in range.</summary>
    internal bool IsPlain { get; init; }

    /// <summary>Numbers that are infinite as a double.</summary>
    internal IReadOnlyList<JsonItem> BeyondNumbers { get; init; } = [];

    public int LineCount => _lineStarts.Value.Length;

    /// <summary>Where a place stands in this file; a pointer that is not there falls back to its nearest ancestor.</summary>
    public ByteSpan Resolve(Place place)
    {
        if (place.Range is { } range)
        {
            return range;
        }

        if (Tree is null)
        {
            return new ByteSpan(0, 0);
        }

        return Tree.SpanOf(place.Pointer, place.Part);
    }

    public LineSpan ToLines(ByteSpan span) => new(ToPosition(span.Start), ToPosition(span.End));

    /// <summary>Converts a byte offset; offsets past the end count as the end.</summary>
    public LinePosition ToPosition(int offset)
    {
        offset = Math.Clamp(offset, 0, _bytes.Length);
        var starts = _lineStarts.Value;
        var index = Array.BinarySearch(starts, offset);
        if (index < 0)
        {
            index = ~index - 1;
        }

        var prefix = _bytes.AsSpan(starts[index], offset - starts[index]);
        return new LinePosition(index + 1, Encoding.UTF8.GetCharCount(prefix) + 1);
    }

    /// <summary>
    /// The byte offset of a position; one past the end of its line counts as that end, one past the last line as the end of the file.
    /// </summary>
    public int ToOffset(LinePosition position)
    {
        var starts = _lineStarts.Value;
        if (position.Line < 1)
        {
            return 0;
        }

        if (position.Line > starts.Length)
        {
            return _bytes.Length;
        }

        var at = starts[position.Line - 1];
        var end = position.Line < starts.Length ? starts[position.Line] : _bytes.Length;
        for (var left = position.Column - 1; left > 0 && at < end && _bytes[at] is not ((byte)'\n' or (byte)'\r');)
        {
            Rune.DecodeFromUtf8(_bytes.AsSpan(at, end - at), out var rune, out var length);
            left -= rune.Utf16SequenceLength;
            at += length;
        }

        return at;
    }

    /// <summary>The text of a line (1-based) without its line end.</summary>
    public string Line(int line)
    {
        var starts = _lineStarts.Value;
        var start = starts[line - 1];
        var end = line < starts.Length ? starts[line] : _bytes.Length;
        return Encoding.UTF8.GetString(_bytes.AsSpan(start, end - start)).TrimEnd('\r', '\n');
    }

    public string Excerpt(ByteSpan span)
    {
        var start = Math.Clamp(span.Start, 0, _bytes.Length);
        var end = Math.Clamp(span.End, start, _bytes.Length);
        return Encoding.UTF8.GetString(_bytes.AsSpan(start, end - start));
    }

    private int[] FindLineStarts()
    {
        var starts = new List<int> { 0 };
        for (var i = 0; i < _bytes.Length; i++)
        {
            if (_bytes[i] == '\n' || (_bytes[i] == '\r' && (i + 1 == _bytes.Length || _bytes[i + 1] != '\n')))
            {
                starts.Add(i + 1);
            }
        }

        return [.. starts];
    }
}
