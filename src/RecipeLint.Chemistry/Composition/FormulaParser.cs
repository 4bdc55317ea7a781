using System.Diagnostics.CodeAnalysis;

namespace RecipeLint.Chemistry.Composition;

/// <summary>
/// Reads chemical formulas as people type them: nested brackets () [] {}, hydrates after · . * • or ×, multiples in double salts
/// such as 5Ca(NO3)2·NH4NO3·10H2O, fractional hydrates (0.5H2O, 1/2H2O, ½H2O), plain or subscript digits, and a charge at the end
/// (^2+, +2, 2+, -, superscripts).
/// </summary>
/// <remarks>
/// Where the trade itself is undecided the parser refuses and says why: "SO42-" may be SO4 with charge 2- or S O42 with charge -,
/// so it asks for "SO4^2-". A single element followed by one digit and a plus is an ion ("Ca2+" is Ca^2+); one digit after a group
/// belongs to the group ("NH4+", "NO3-").
/// </remarks>
public static class FormulaParser
{
    /// <summary>Longer texts are refused unread.</summary>
    public const int MaxLength = 200;

    /// <summary>
    /// Parses a formula. Never throws; on failure <paramref name="error"/> holds the place and a plain reason.
    /// White space at both ends is ignored, positions count from the start of the text as given.
    /// </summary>
    public static bool TryParse(
        string? text,
        [NotNullWhen(true)] out Formula? formula,
        [NotNullWhen(false)] out FormulaError? error)
    {
        formula = null;
        if (string.IsNullOrWhiteSpace(text))
        {
            error = new FormulaError(0, "There is no formula here");
            return false;
        }

        if (text.Length > MaxLength)
        {
            error = new FormulaError(MaxLength, $"A formula is at most {MaxLength} characters long");
            return false;
        }

        var reader = new FormulaReader(text);
        formula = reader.Read();
        error = reader.Error;
        return formula is not null;
    }

    /// <summary>Parses a formula known to be good, such as one in the built-in data.</summary>
    /// <exception cref="FormatException">The text is not a formula.</exception>
    public static Formula Parse(string text) =>
        TryParse(text, out var formula, out var error)
            ? formula
            : throw new FormatException($"'{text}' at {error.Position}: {error.Reason}.");
}
