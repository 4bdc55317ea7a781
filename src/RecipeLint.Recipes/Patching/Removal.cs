using System.Text.Json;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Patching;

/// <summary>Takes a member or element out with its comma; comments beside it stay.</summary>
internal static class Removal
{
    public static IReadOnlyList<TextEdit>? Of(SourceFile source, Place place) =>
        SpanOf(source, place) is { } span ? Of(source, span) : null;

    private static IReadOnlyList<TextEdit> Of(SourceFile source, ByteSpan span)
    {
        var bytes = source.Bytes;
        var next = JsonGap.Skip(bytes, span.End);
        if (next < bytes.Length && bytes[next] == (byte)',')
        {
            return JsonGap.IsBlank(bytes[span.End..next])
                ? [Cut(span.Start, JsonGap.SkipBlanks(bytes, next + 1))]
                : [Cut(span.Start, span.End), Cut(next, next + 1)];
        }

        if (JsonGap.CommaBefore(source, span.Start) is { } comma)
        {
            return JsonGap.IsBlank(bytes[(comma + 1)..span.Start])
                ? [Cut(comma, span.End)]
                : [Cut(comma, comma + 1), Cut(span.Start, span.End)];
        }

        // The only entry: the brackets close up, unless a comment is left in them.
        var start = JsonLayout.GapStart(bytes, span.Start);
        var end = JsonGap.SkipBlanks(bytes, span.End);
        return start > 0 && bytes[start - 1] is (byte)'{' or (byte)'[' && end < bytes.Length && bytes[end] is (byte)'}' or (byte)']'
            ? [Cut(start, end)]
            : [Cut(span.Start, span.End)];
    }

    private static ByteSpan? SpanOf(SourceFile source, Place place)
    {
        if (place.Range is { } key)
        {
            return OfKey(source.Bytes, key);
        }

        if (place.Pointer.Value.Length == 0 || source.Tree!.Find(place.Pointer) is not { } item)
        {
            return null;
        }

        return item.KeySpan is { } name ? new ByteSpan(name.Start, item.Span.End - name.Start) : item.Span;
    }

    /// <summary>
    /// A member by the span of its key, with its value, which the tree does not hold where a later one has the same name.
    /// </summary>
    private static ByteSpan? OfKey(ReadOnlySpan<byte> bytes, ByteSpan key)
    {
        if (key.Start < 0 || key.End > bytes.Length)
        {
            return null;
        }

        var colon = JsonGap.Skip(bytes, key.End);
        if (colon >= bytes.Length || bytes[colon] != (byte)':')
        {
            return null;
        }

        var start = JsonGap.Skip(bytes, colon + 1);
        var reader = new Utf8JsonReader(
            bytes[start..],
            new JsonReaderOptions { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true, AllowMultipleValues = true });
        try
        {
            if (!reader.Read())
            {
                return null;
            }

            reader.Skip();
        }
        catch (JsonException)
        {
            return null;
        }

        return new ByteSpan(key.Start, start + (int)reader.BytesConsumed - key.Start);
    }

    private static TextEdit Cut(int start, int end) => new(new ByteSpan(start, end - start), "");
}
