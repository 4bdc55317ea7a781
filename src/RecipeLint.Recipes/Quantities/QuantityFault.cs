using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Quantities;

/// <summary>Why a text is not the quantity that is due.</summary>
/// <param name="Start">Offset of the offending part in the text as given, in UTF-16 code units.</param>
/// <param name="Length">Length of the offending part; 0 where something is missing.</param>
/// <param name="Message">Whole sentences in words of the trade.</param>
public sealed record QuantityFault(ProblemKind Kind, int Start, int Length, string Message)
{
    /// <summary>Whole texts that would be read, one for each meaning the writer may have had.</summary>
    public IReadOnlyList<string> Suggestions { get; init; } = [];

    public IReadOnlyList<NamedValue> Values { get; init; } = [];
}
