using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports;

/// <summary>A place brought down to lines and columns.</summary>
/// <param name="File">Path relative to the workspace root.</param>
/// <param name="Source">Null when the file was not read; the span is then 1:1.</param>
/// <param name="Bytes">Never outside the file; at least one character long where the line has one.</param>
public sealed record Spot(string File, SourceFile? Source, ByteSpan Bytes, LineSpan Lines)
{
    /// <summary>
    /// Resolves a place. An empty span grows by the character that follows it on its line, else by the last one before it that is not
    /// blank, so that there is something to point at; one over the whole document shrinks to its first character, because a review shows a
    /// finding only where all its lines were changed.
    /// </summary>
    public static Spot Of(Place place, IReadOnlyDictionary<string, SourceFile> sources)
    {
        if (!sources.TryGetValue(place.File, out var source))
        {
            var start = new LinePosition(1, 1);
            return new Spot(place.File, null, default, new LineSpan(start, start));
        }

        var bytes = source.Bytes;
        var asked = source.Resolve(place);
        var first = Math.Clamp(asked.Start, 0, bytes.Length);
        var end = Math.Clamp((long)asked.Start + asked.Length, first, bytes.Length);
        var span = new ByteSpan(first, (int)(end - first));
        var blank = bytes[first..].Length - bytes[first..].TrimStart(" \t\r\n"u8).Length;
        if (span.Length > blank && bytes[..first].Trim(" \t\r\n"u8).IsEmpty && bytes[span.End..].Trim(" \t\r\n"u8).IsEmpty)
        {
            span = new ByteSpan(first + blank, LengthOfCharacter(bytes[(first + blank)..]));
        }
        else if (span.Length == 0)
        {
            span = Grow(bytes, first);
        }

        return new Spot(place.File, source, span, source.ToLines(span));
    }

    private static ByteSpan Grow(ReadOnlySpan<byte> bytes, int at)
    {
        var length = LengthOfCharacter(bytes[at..]);
        var before = bytes[..at].TrimEnd(" \t\r\n"u8);
        if (length > 0 || before.IsEmpty)
        {
            return new ByteSpan(at, length);
        }

        System.Text.Rune.DecodeLastFromUtf8(before, out _, out var last);
        return new ByteSpan(before.Length - last, last);
    }

    private static int LengthOfCharacter(ReadOnlySpan<byte> bytes)
    {
        if (bytes.IsEmpty || bytes[0] is (byte)'\n' or (byte)'\r')
        {
            return 0;
        }

        System.Text.Rune.DecodeFromUtf8(bytes, out _, out var length);
        return length;
    }
}

/// <summary>A finding with its places resolved.</summary>
public sealed record PlacedFinding(Finding Finding, Spot Spot, IReadOnlyList<(Spot Spot, string Label)> Related)
{
    /// <summary>Resolves and sorts by file, place, rule and message: the order of every report.</summary>
    public static IReadOnlyList<PlacedFinding> InOrder(IEnumerable<Finding> findings, IReadOnlyDictionary<string, SourceFile> sources) =>
    [
        .. findings
            .Select(f => new PlacedFinding(f, Spot.Of(f.Place, sources), [.. f.Related.Select(r => (Spot.Of(r.Place, sources), r.Label))]))
            .OrderBy(f => f.Spot.File, StringComparer.Ordinal)
            .ThenBy(f => f.Spot.Bytes.Start)
            .ThenBy(f => f.Spot.Bytes.Length)
            .ThenBy(f => f.Finding.Rule.Id, StringComparer.Ordinal)
            .ThenBy(f => f.Finding.Message, StringComparer.Ordinal)
            .ThenBy(f => f.Finding.IdPath, StringComparer.Ordinal),
    ];
}
