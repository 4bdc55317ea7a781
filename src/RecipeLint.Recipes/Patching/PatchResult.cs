using System.Text;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Patching;

/// <summary>What became of a patch: the bytes of the file afterwards, or why it was refused.</summary>
public sealed record PatchResult
{
    /// <summary>The file the edits speak of.</summary>
    public required SourceFile Before { get; init; }

    /// <summary>True for a file that was not there.</summary>
    public bool IsNew { get; init; }

    /// <summary>The whole file as it is to stand on the disk; null when the patch was refused.</summary>
    public byte[]? Bytes { get; init; }

    /// <summary>
    /// What changes, in the order of the file; byte-identical everywhere else. A byte order mark that is dropped does not show here.
    /// </summary>
    public IReadOnlyList<TextEdit> Edits { get; init; } = [];

    /// <summary>Why it was refused, a sentence; null when it was not.</summary>
    public string? Refused { get; init; }

    /// <summary>The edits that undo these, on the bytes of the patched file without its mark.</summary>
    public IReadOnlyList<TextEdit> Reversed()
    {
        var reversed = new List<TextEdit>(Edits.Count);
        var shift = 0;
        foreach (var edit in Edits)
        {
            var length = Encoding.UTF8.GetByteCount(edit.Text);
            var old = Before.Excerpt(edit.Span);
            reversed.Add(new TextEdit(new ByteSpan(edit.Span.Start + shift, length), old));
            shift += length - edit.Span.Length;
        }

        return reversed;
    }

    internal static PatchResult No(SourceFile before, string reason) => new() { Before = before, Refused = reason };
}
