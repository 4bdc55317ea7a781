using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Patching;

/// <summary>
/// One change of a document, in terms of its values. Places are those of the file as it stands, also where several changes go together.
/// </summary>
/// <param name="At">What is changed; each kind says which place that is.</param>
public abstract record JsonEdit(Place At)
{
    /// <summary>Another value in place of the one at a place.</summary>
    public sealed record ReplaceValue(Place At, JsonDraft Value) : JsonEdit(At);

    /// <summary>Another name for the member at a place.</summary>
    public sealed record RenameKey(Place At, string Name) : JsonEdit(At);

    /// <summary>A new member of the object at a place.</summary>
    /// <param name="After">The member it stands behind; null puts it last, the empty text first.</param>
    public sealed record InsertMember(Place At, string Name, JsonDraft Value, string? After = null) : JsonEdit(At);

    /// <summary>A new element of the list at a place.</summary>
    /// <param name="Index">The element it stands before, as the list stands now; the count puts it last.</param>
    public sealed record InsertElement(Place At, int Index, JsonDraft Value) : JsonEdit(At);

    /// <summary>
    /// Takes out the member or element at a place with its comma. A place with a range names the key of a member: one of two of the same
    /// name.
    /// </summary>
    public sealed record Remove(Place At) : JsonEdit(At);

    /// <summary>Puts the elements of the list at a place into another order.</summary>
    /// <param name="Order">For each position the present index of the element that goes there; every index once.</param>
    public sealed record Reorder(Place At, IReadOnlyList<int> Order) : JsonEdit(At);

    /// <summary>The comment at a place (its range) becomes the note of the object it speaks of.</summary>
    public sealed record CommentToNote(Place At) : JsonEdit(At);

    /// <summary>Other text in place of the bytes of a range; for what is no value, such as a comma too many.</summary>
    public sealed record ReplaceText(Place At, string Text) : JsonEdit(At);

    /// <summary>The file without its byte order mark.</summary>
    public sealed record DropByteOrderMark(Place At) : JsonEdit(At);

    /// <summary>A file that is not there yet, at a place whose pointer is the root.</summary>
    public sealed record NewFile(Place At, JsonDraft.Object Content) : JsonEdit(At);

    /// <summary>Moves one element of a list of so many.</summary>
    /// <param name="list">The list.</param>
    /// <param name="from">Where the element stands.</param>
    /// <param name="to">Where it stands afterwards.</param>
    public static Reorder Move(Place list, int from, int to, int count)
    {
        var order = Enumerable.Range(0, count).ToList();
        order.RemoveAt(from);
        order.Insert(to, from);
        return new Reorder(list, order);
    }
}
