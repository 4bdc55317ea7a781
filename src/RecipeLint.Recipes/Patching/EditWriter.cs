using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Patching;

/// <summary>Turns changes of values into changes of bytes; null where there is nothing to change.</summary>
internal static class EditWriter
{
    public static IReadOnlyList<TextEdit>? Write(SourceFile source, JsonEdit edit) => edit switch
    {
        JsonEdit.ReplaceValue replace => Find(source, edit) is { } item
            ? [new TextEdit(item.Span, JsonDraftWriter.OneLine(replace.Value, JsonLayout.Of(source, item)))]
            : null,
        JsonEdit.RenameKey rename =>
            Find(source, edit)?.KeySpan is { } key ? [new TextEdit(edit.At.Range ?? key, JsonDraftWriter.Quoted(rename.Name))] : null,
        JsonEdit.InsertMember insert => Find(source, edit) is { Kind: JsonKind.Object } item ? InsertMember(source, item, insert) : null,
        JsonEdit.InsertElement insert => Find(source, edit) is { Kind: JsonKind.Array } list ? InsertElement(source, list, insert) : null,
        JsonEdit.Remove => Removal.Of(source, edit.At),
        JsonEdit.Reorder reorder => Find(source, edit) is { Kind: JsonKind.Array } list ? Reorder(source, list, reorder.Order) : null,
        JsonEdit.CommentToNote => CommentMove.Of(source, edit.At),
        JsonEdit.ReplaceText replace =>
            edit.At.Range is { } range && range.Start >= 0 && range.End <= source.Bytes.Length ? [new TextEdit(range, replace.Text)] : null,
        JsonEdit.DropByteOrderMark => source.HadByteOrderMark ? [] : null,
        _ => null,
    };

    public static IReadOnlyList<TextEdit> InsertMember(SourceFile source, JsonItem item, JsonEdit.InsertMember insert)
    {
        var layout = JsonLayout.Of(source, item);
        var pair = JsonDraftWriter.Pair(new DraftMember(insert.Name, insert.Value), layout);
        if (item.Members.Count == 0)
        {
            return FillEmpty(source, item, pair, layout);
        }

        if (insert.After is { Length: 0 })
        {
            var first = item.Members.Min(m => m.Value.KeySpan!.Value.Start);
            return [new TextEdit(new ByteSpan(first, 0), pair + Separator(source, layout, first)) { BringsComma = true }];
        }

        var before = insert.After is { } name && item[name] is { } named
            ? named
            : item.Members.Select(m => m.Value).MaxBy(v => v.Span.End)!;
        return [new TextEdit(
            new ByteSpan(before.Span.End, 0), Separator(source, layout, before.KeySpan!.Value.Start) + pair) { BringsComma = true }];
    }

    private static IReadOnlyList<TextEdit>? InsertElement(SourceFile source, JsonItem list, JsonEdit.InsertElement insert)
    {
        if (insert.Index < 0 || insert.Index > list.Items.Count)
        {
            return null;
        }

        var layout = JsonLayout.Of(source, list);
        if (list.Items.Count == 0)
        {
            return FillEmpty(source, list, JsonDraftWriter.OneLine(insert.Value, layout), layout);
        }

        var neighbour = list.Items[Math.Min(insert.Index, list.Items.Count - 1)];
        var text = neighbour.Kind == JsonKind.Object && JsonLayout.SpansLines(source, neighbour)
            ? JsonDraftWriter.Lines(insert.Value, layout, JsonLayout.IndentationAt(source.Bytes, neighbour.Span.Start))
            : JsonDraftWriter.OneLine(insert.Value, layout);
        var separator = Separator(source, layout, neighbour.Span.Start);
        return insert.Index < list.Items.Count
            ? [new TextEdit(new ByteSpan(neighbour.Span.Start, 0), text + separator) { BringsComma = true }]
            : [new TextEdit(new ByteSpan(neighbour.Span.End, 0), separator + text) { BringsComma = true }];
    }

    /// <summary>Each place in the list keeps its commas, blanks and line; only the texts of the elements change places.</summary>
    private static IReadOnlyList<TextEdit>? Reorder(SourceFile source, JsonItem list, IReadOnlyList<int> order)
    {
        if (order.Count != list.Items.Count || !order.Order().SequenceEqual(Enumerable.Range(0, order.Count)))
        {
            return null;
        }

        return
        [
            .. order.Select((from, to) => (from, to)).Where(m => m.from != m.to)
                .Select(m => new TextEdit(list.Items[m.to].Span, source.Excerpt(list.Items[m.from].Span))),
        ];
    }

    private static IReadOnlyList<TextEdit> FillEmpty(SourceFile source, JsonItem container, string text, JsonLayout layout)
    {
        var inside = new ByteSpan(container.Span.Start + 1, container.Span.Length - 2);
        var between = source.Bytes.Slice(inside.Start, inside.Length);
        if (!between.Trim(" \t\r\n"u8).IsEmpty)
        {
            // A comment stands in there and stays.
            return [new TextEdit(new ByteSpan(inside.Start, 0), layout.Pad + text)];
        }

        var outer = JsonLayout.IndentationAt(source.Bytes, container.Span.Start);
        var filled = between.IndexOf((byte)'\n') >= 0 ? $"{layout.LineEnd}{outer}{layout.Indent}{text}{layout.LineEnd}{outer}"
            : container.Kind == JsonKind.Object ? layout.Pad + text + layout.Pad
            : text;
        return [new TextEdit(inside, filled)];
    }

    /// <summary>A comma and what stands before the entry at an offset: a new line, or blanks.</summary>
    private static string Separator(SourceFile source, JsonLayout layout, int offset) =>
        layout.LineStart(source.Bytes, offset) is { } line ? "," + line : layout.Comma;

    private static JsonItem? Find(SourceFile source, JsonEdit edit) => source.Tree!.Find(edit.At.Pointer);
}
