using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Patching;

/// <summary>A run of bytes of a file and the text that takes its place.</summary>
/// <param name="Span">In <see cref="Json.SourceFile.Bytes"/>; empty for an insertion.</param>
/// <param name="Text">Empty for a deletion.</param>
public sealed record TextEdit(ByteSpan Span, string Text)
{
    /// <summary>True for an insertion that brings its own comma, so that another may stand at the same point.</summary>
    internal bool BringsComma { get; init; }
}
