namespace RecipeLint.Recipes.Patching;

/// <summary>A JSON value to be written into a file; how it is spaced follows the file.</summary>
public abstract record JsonDraft
{
    private JsonDraft()
    {
    }

    public static JsonDraft Of(string text) => new Text(text);

    public static JsonDraft Of(params (string Name, JsonDraft Value)[] members) =>
        new Object([.. members.Select(m => new DraftMember(m.Name, m.Value))]);

    /// <summary>A string.</summary>
    /// <param name="Value">Unescaped.</param>
    public sealed record Text(string Value) : JsonDraft;

    /// <summary>A number, true, false or null.</summary>
    /// <param name="Word">As it stands in JSON.</param>
    public sealed record Literal(string Word) : JsonDraft;

    public sealed record Object(IReadOnlyList<DraftMember> Members) : JsonDraft;

    public sealed record List(IReadOnlyList<JsonDraft> Items) : JsonDraft;
}

/// <summary>A member of an object to be written.</summary>
public sealed record DraftMember(string Name, JsonDraft Value);
