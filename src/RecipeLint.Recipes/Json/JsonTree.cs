using System.Globalization;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Json;

/// <summary>A parsed document and its source map: JSON pointer to key span and value span, built in the same pass.</summary>
public sealed class JsonTree(JsonItem root)
{
    public JsonItem Root { get; } = root;

    /// <summary>The value at a pointer; null where nothing stands.</summary>
    public JsonItem? Find(JsonPointer pointer) => Walk(pointer, out var item) ? item : null;

    /// <summary>The span of the key or value at a pointer; the nearest ancestor's where the pointer is not there.</summary>
    public ByteSpan SpanOf(JsonPointer pointer, PlacePart part)
    {
        var exact = Walk(pointer, out var item);
        return exact && part == PlacePart.Key && item.KeySpan is { } key ? key : item.Span;
    }

    private bool Walk(JsonPointer pointer, out JsonItem item)
    {
        item = Root;
        foreach (var token in pointer.Tokens)
        {
            var next = item.Kind switch
            {
                JsonKind.Object => item[token],
                JsonKind.Array =>
                    int.TryParse(token, NumberStyles.None, CultureInfo.InvariantCulture, out var index) && index < item.Items.Count
                    ? item.Items[index]
                    : null,
                _ => null,
            };
            if (next is null)
            {
                return false;
            }

            item = next;
        }

        return true;
    }
}
