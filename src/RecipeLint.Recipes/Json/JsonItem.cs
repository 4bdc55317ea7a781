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

/// <summary>
/// One value of a JSON document with where it stands. Members keep their order; of duplicates the last stands here.
/// The pointer is put together on demand: kept as text it would make a file of long keys quadratic.
/// </summary>
public sealed class JsonItem
{
    private const int DictionaryThreshold = 12;

    private readonly JsonItem? _parent;
    private readonly string? _name;
    private readonly int _index;
    private readonly JsonPointer? _pointer;
    private ByteSpan _span;
    private IReadOnlyList<JsonMember> _members = [];
    private IReadOnlyList<JsonItem> _items = [];
    private Dictionary<string, JsonItem>? _byName;

    /// <summary>A value put together by hand; the reader makes its own.</summary>
    public JsonItem(JsonKind kind, JsonPointer pointer, ByteSpan span)
    {
        Kind = kind;
        _pointer = pointer;
        _span = span;
    }

    internal JsonItem(JsonKind kind, JsonItem? parent, string? name, int index, ByteSpan span)
    {
        Kind = kind;
        _parent = parent;
        _name = name;
        _index = index;
        _span = span;
    }

    public JsonKind Kind { get; }

    public JsonPointer Pointer => _pointer ?? MakePointer();

    public ByteSpan Span => _span;

    /// <summary>The span of the member name with its quotes; null for array elements and the root.</summary>
    public ByteSpan? KeySpan { get; init; }

    /// <summary>The unescaped text of a string; the literal of a number as written, which may be outside the range of a double.</summary>
    public string Text { get; init; } = "";

    public IReadOnlyList<JsonMember> Members
    {
        get => _members;
        init => _members = value;
    }

    public IReadOnlyList<JsonItem> Items
    {
        get => _items;
        init => _items = value;
    }

    /// <summary>The member of that name; null where there is none or this is not an object.</summary>
    public JsonItem? this[string name]
    {
        get
        {
            if (_members.Count <= DictionaryThreshold)
            {
                foreach (var member in _members)
                {
                    if (member.Name == name)
                    {
                        return member.Value;
                    }
                }

                return null;
            }

            return (_byName ??= IndexMembers()).GetValueOrDefault(name);
        }
    }

    internal void Close(int end, IReadOnlyList<JsonMember> members, IReadOnlyList<JsonItem> items)
    {
        _span = new ByteSpan(_span.Start, end - _span.Start);
        _members = members;
        _items = items;
    }

    private Dictionary<string, JsonItem> IndexMembers()
    {
        var byName = new Dictionary<string, JsonItem>(_members.Count, StringComparer.Ordinal);
        foreach (var member in _members)
        {
            byName[member.Name] = member.Value;
        }

        return byName;
    }

    private JsonPointer MakePointer()
    {
        var steps = new Stack<JsonItem>();
        var item = this;
        while (item._pointer is null && item._parent is not null)
        {
            steps.Push(item);
            item = item._parent;
        }

        var pointer = item._pointer ?? JsonPointer.Root;
        foreach (var step in steps)
        {
            pointer = step._name is null ? pointer.Child(step._index) : pointer.Child(step._name);
        }

        return pointer;
    }
}

public sealed record JsonMember(string Name, JsonItem Value);
