using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Json;

public enum JsonKind
{
    Object,
    Array,
    Text,
    Number,
    True,
    False,
    Null,
}

/// <summary>One value of a JSON document with where it stands. Members keep their order; of duplicates the last stands here.</summary>
public sealed record JsonItem(JsonKind Kind, JsonPointer Pointer, ByteSpan Span)
{
    /// <summary>The span of the member name with its quotes; null for array elements and the root.</summary>
    public ByteSpan? KeySpan { get; init; }

    /// <summary>The unescaped text of a string; the literal of a number as written.</summary>
    public string Text { get; init; } = "";

    public IReadOnlyList<JsonMember> Members { get; init; } = [];

    public IReadOnlyList<JsonItem> Items { get; init; } = [];

    public JsonItem? this[string name] => Members.FirstOrDefault(m => m.Name == name)?.Value;
}

public sealed record JsonMember(string Name, JsonItem Value);

/// <summary>A parsed document and its source map: JSON pointer to key span and value span, built in the same pass.</summary>
public sealed class JsonTree
{
    private readonly Dictionary<string, JsonItem> _byPointer = new(StringComparer.Ordinal);

    public JsonTree(JsonItem root)
    {
        Root = root;
        var pending = new Stack<JsonItem>();
        pending.Push(root);
        while (pending.Count > 0)
        {
            var item = pending.Pop();
            _byPointer[item.Pointer.Value] = item;
            foreach (var member in item.Members)
            {
                pending.Push(member.Value);
            }

            foreach (var child in item.Items)
            {
                pending.Push(child);
            }
        }
    }

    public JsonItem Root { get; }

    public JsonItem? Find(JsonPointer pointer) => _byPointer.GetValueOrDefault(pointer.Value);

    /// <summary>The span of the key or value at a pointer; the nearest ancestor's where the pointer is not there.</summary>
    public ByteSpan SpanOf(JsonPointer pointer, PlacePart part)
    {
        var text = pointer.Value;
        while (true)
        {
            if (_byPointer.TryGetValue(text, out var item))
            {
                var exact = text.Length == pointer.Value.Length;
                return exact && part == PlacePart.Key && item.KeySpan is { } key ? key : item.Span;
            }

            var slash = text.LastIndexOf('/');
            if (slash < 0)
            {
                return Root.Span;
            }

            text = text[..slash];
        }
    }
}
