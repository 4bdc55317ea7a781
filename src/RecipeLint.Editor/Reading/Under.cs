using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Editor.Reading;

/// <summary>What stands at a point of a document: the innermost value, or the key in front of it.</summary>
internal sealed record Under(JsonItem Item, bool OnKey)
{
    public IReadOnlyList<string> Tokens { get; } = Item.Pointer.Tokens;

    /// <summary>What the protocol is told the answer is about.</summary>
    public ByteSpan Span => OnKey ? Item.KeySpan!.Value : Item.Span;

    /// <summary>Null where nothing of the document is, and for a document that cannot be read.</summary>
    public static Under? At(JsonTree? tree, int offset)
    {
        if (tree is null || !Covers(tree.Root.Span, offset))
        {
            return null;
        }

        var at = tree.Root;
        while (true)
        {
            var next = at.Members.Select(m => m.Value).Concat(at.Items)
                .FirstOrDefault(i => Covers(i.Span, offset) || (i.KeySpan is { } key && Covers(key, offset)));
            if (next is null)
            {
                return new Under(at, false);
            }

            if (next.KeySpan is { } name && Covers(name, offset))
            {
                return new Under(next, true);
            }

            at = next;
        }
    }

    private static bool Covers(ByteSpan span, int offset) => offset >= span.Start && offset <= span.End;
}
