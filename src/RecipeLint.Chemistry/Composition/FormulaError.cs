namespace RecipeLint.Chemistry.Composition;

/// <summary>Why a text is not a formula.</summary>
/// <param name="Position">Offset of the offending character in the text as given, in UTF-16 code units; may be the length of the
/// text.</param>
/// <param name="Reason">One plain sentence without a full stop at the end.</param>
public sealed record FormulaError(int Position, string Reason);
