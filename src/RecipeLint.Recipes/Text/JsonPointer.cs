using System.Globalization;

namespace RecipeLint.Recipes.Text;

/// <summary>An RFC 6901 JSON pointer; the root is the empty string.</summary>
public readonly record struct JsonPointer(string Value) : IComparable<JsonPointer>
{
    public static JsonPointer Root { get; } = new("");

    public JsonPointer Child(string name) =>
        new(Value + "/" + name.Replace("~", "~0", StringComparison.Ordinal).Replace("/", "~1", StringComparison.Ordinal));

    public JsonPointer Child(int index) => new(Value + "/" + index.ToString(CultureInfo.InvariantCulture));

    /// <summary>The unescaped reference tokens from the root down.</summary>
    public IReadOnlyList<string> Tokens =>
        string.IsNullOrEmpty(Value)
            ? []
            : [.. Value[1..]
                .Split('/')
                .Select(t => t.Replace("~1", "/", StringComparison.Ordinal).Replace("~0", "~", StringComparison.Ordinal))];

    public int CompareTo(JsonPointer other) => string.CompareOrdinal(Value, other.Value);

    public override string ToString() => Value;

    public static bool operator <(JsonPointer left, JsonPointer right) => left.CompareTo(right) < 0;

    public static bool operator >(JsonPointer left, JsonPointer right) => left.CompareTo(right) > 0;

    public static bool operator <=(JsonPointer left, JsonPointer right) => left.CompareTo(right) <= 0;

    public static bool operator >=(JsonPointer left, JsonPointer right) => left.CompareTo(right) >= 0;
}
