using System.Text;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Patching;

/// <summary>
/// Moves a comment into the note of the object it speaks of: the one that ends before it on its line, else the one that begins behind it,
/// else the one around it.
/// </summary>
internal static class CommentMove
{
    private const string Note = "note";

    public static IReadOnlyList<TextEdit>? Of(SourceFile source, Place place)
    {
        if (place.Range is not { Length: >= 2 } comment || comment.End > source.Bytes.Length || Target(source, comment) is not { } target)
        {
            return null;
        }

        var text = TextOf(source.Excerpt(comment));
        var removal = Cut(source.Bytes, comment);
        if (text.Length == 0)
        {
            return [removal];
        }

        if (target[Note] is { } note)
        {
            return note.Kind == JsonKind.Text ? [removal, new TextEdit(note.Span, JsonDraftWriter.Quoted($"{note.Text} {text}"))] : null;
        }

        return [removal, .. EditWriter.InsertMember(source, target, new JsonEdit.InsertMember(place, Note, JsonDraft.Of(text)))];
    }

    private static string TextOf(string comment)
    {
        var inside = comment.StartsWith("/*", StringComparison.Ordinal)
            ? comment[2..^(comment.EndsWith("*/", StringComparison.Ordinal) && comment.Length >= 4 ? 2 : 0)]
            : comment[2..];
        var lines = inside.Split(['\r', '\n'], StringSplitOptions.RemoveEmptyEntries).Select(l => l.Trim().TrimStart('*').Trim());
        var text = string.Join(' ', lines.Where(l => l.Length > 0));

        // Control characters have no place in a note; JSON would have to write them as escapes.
        var clean = new StringBuilder(text.Length);
        foreach (var c in text)
        {
            clean.Append(char.IsControl(c) ? ' ' : c);
        }

        return clean.ToString().Trim();
    }

    /// <summary>The comment with the blanks before it; alone on its line, the whole line.</summary>
    private static TextEdit Cut(ReadOnlySpan<byte> bytes, ByteSpan comment)
    {
        var (start, end) = (comment.Start, comment.End);
        while (start > 0 && bytes[start - 1] is (byte)' ' or (byte)'\t')
        {
            start--;
        }

        var beginsLine = start == 0 || bytes[start - 1] is (byte)'\n' or (byte)'\r';
        var after = end;
        while (after < bytes.Length && bytes[after] is (byte)' ' or (byte)'\t')
        {
            after++;
        }

        if (beginsLine && (after == bytes.Length || bytes[after] is (byte)'\n' or (byte)'\r'))
        {
            end = after < bytes.Length && bytes[after] == (byte)'\r' ? after + 1 : after;
            end = end < bytes.Length && bytes[end] == (byte)'\n' ? end + 1 : end;
        }
        else if (beginsLine)
        {
            start = comment.Start;
        }

        return new TextEdit(new ByteSpan(start, end - start), "");
    }

    private static JsonItem? Target(SourceFile source, ByteSpan comment)
    {
        var root = source.Tree!.Root;
        if (root.Kind != JsonKind.Object)
        {
            return null;
        }

        var (container, around) = (root, root);
        while (Children(container).FirstOrDefault(c => c.Kind is JsonKind.Object or JsonKind.Array
            && c.Span.Start < comment.Start
            && comment.End < c.Span.End) is { } inner)
        {
            container = inner;
            around = inner.Kind == JsonKind.Object ? inner : around;
        }

        if (container.Kind != JsonKind.Array)
        {
            return around;
        }

        var before = container.Items.LastOrDefault(i => i.Span.End <= comment.Start);
        if (before?.Kind == JsonKind.Object && source.Bytes[before.Span.End..comment.Start].IndexOfAny((byte)'\n', (byte)'\r') < 0)
        {
            return before;
        }

        var behind = container.Items.FirstOrDefault(i => i.Span.Start >= comment.End);
        return behind?.Kind == JsonKind.Object ? behind : around;
    }

    private static IEnumerable<JsonItem> Children(JsonItem item) => item.Members.Select(m => m.Value).Concat(item.Items);
}
