using System.Globalization;

namespace RecipeLint.Chemistry.Composition;

/// <summary>The small parts of a formula: digits, separators, brackets, charge.</summary>
internal sealed partial class FormulaReader
{
    private const int MaxCharge = 20;

    private static bool IsSeparator(char c) => c is '.' or '·' or '*' or '•' or '×' or '∙' or '⋅' or '‧' or '・' or '∗';

    private static char? ClosingOf(char c) => c switch { '(' => ')', '[' => ']', '{' => '}', _ => null };

    private static bool IsSign(char c) => c is '+' or '-' or '−' or '⁺' or '⁻';

    private static bool IsPlus(char c) => c is '+' or '⁺';

    private static int? Digit(char c) => c switch
    {
        >= '0' and <= '9' => c - '0',
        >= '₀' and <= '₉' => c - '₀',
        _ => null,
    };

    private static int? Superscript(char c) => c switch
    {
        '⁰' => 0,
        '¹' => 1,
        '²' => 2,
        '³' => 3,
        >= '⁴' and <= '⁹' => c - '⁴' + 4,
        _ => null,
    };

    private static double? Vulgar(char c) => c switch
    {
        '½' => 0.5,
        '¼' => 0.25,
        '¾' => 0.75,
        '⅓' => 1.0 / 3,
        '⅔' => 2.0 / 3,
        _ => null,
    };

    private static string Describe(char c) => c switch
    {
        '\0' => "The formula ends too early",
        ',' => "A comma does not belong in a formula",
        ')' or ']' or '}' => $"'{c}' closes a bracket that was not opened",
        _ when char.IsWhiteSpace(c) => "A space does not belong here; write the hydrate with a dot, as in CaCl2·2H2O",
        _ when char.IsAsciiLetterLower(c) => $"'{c}': the symbol of an element starts with a capital letter",
        _ when Digit(c) is not null => $"'{c}' follows nothing it could count",
        _ when char.IsControl(c) || char.IsSurrogate(c) => "A character that does not belong in a formula",
        _ => $"'{c}' does not belong in a formula",
    };

    private void SkipSpace()
    {
        while (char.IsWhiteSpace(Current))
        {
            _at++;
        }
    }

    private bool TryReadSeparator()
    {
        if (Error is not null)
        {
            return false;
        }

        var start = _at;
        SkipSpace();
        if (IsSeparator(Current) || (Current is 'x' && _at > start && _at + 1 < _end && char.IsWhiteSpace(_text[_at + 1])))
        {
            _at++;
            return true;
        }

        _at = start;
        return false;
    }

    private string ReadDigits(bool allowPoint)
    {
        var digits = new System.Text.StringBuilder();
        while (_at < _end)
        {
            if (Digit(Current) is { } digit)
            {
                digits.Append((char)('0' + digit));
            }
            else if (allowPoint && Current == '.' && digits.Length > 0 && _at + 1 < _end && Digit(_text[_at + 1]) is not null)
            {
                digits.Append('.');
                allowPoint = false;
            }
            else
            {
                break;
            }

            _at++;
        }

        return digits.ToString();
    }

    /// <summary>The count after an atom or a bracket; leaves a charge such as the "2+" of "Ca2+" unread.</summary>
    private double? ReadCount(bool wholeIon)
    {
        var start = _at;
        var digits = ReadDigits(allowPoint: false);
        if (digits.Length == 0)
        {
            return 1;
        }

        // Subscript digits are counts by their shape; only plain digits before a final sign can be meant as a charge.
        var closesWithSign = _at == _end - 1 && IsSign(Current) && Digit(_text[start]) is not null && char.IsAsciiDigit(_text[start]);
        if (closesWithSign)
        {
            var oneDigit = digits.Length == 1;
            if (wholeIon && oneDigit && (IsPlus(Current) || _normal[^1] == ')'))
            {
                _at = start;
                return 1;
            }

            if (wholeIon || !oneDigit)
            {
                return FailValue(start, "This can be read as a count or as a charge; write the charge as ^2- or -2");
            }
        }

        if (!int.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out var count) || count > MaxCount)
        {
            return FailValue(start, $"A count is at most {MaxCount}");
        }

        if (count == 0)
        {
            return FailValue(start, "A count of zero");
        }

        if (count != 1)
        {
            _normal.Append(CultureInfo.InvariantCulture, $"{count}");
        }

        return count;
    }

    /// <summary>
    /// Reads what stands at the end: "^2+", "+2", "2+" after a space or bracket, "++", superscripts; 0 when nothing does.
    /// </summary>
    private int? ReadCharge()
    {
        var start = _at;
        SkipSpace();
        if (Current == '^')
        {
            _at++;
        }

        var before = ReadChargeDigits();
        if (!IsSign(Current))
        {
            if (before.Length > 0 || (_at > start && _text[_at - 1] == '^'))
            {
                var spaced = char.IsWhiteSpace(_text[start]) && _at < _end;
                FailNull(
                    spaced ? start : _at, spaced ? Describe(' ') : _at < _end ? Describe(Current) : "A charge needs its sign, as in 2+");
                return null;
            }

            _at = start;
            return 0;
        }

        var sign = Current;
        var signs = 0;
        while (IsSign(Current) && IsPlus(Current) == IsPlus(sign))
        {
            signs++;
            _at++;
        }

        var after = ReadChargeDigits();
        if (before.Length > 0 && (after.Length > 0 || signs > 1))
        {
            FailNull(start, "The charge is written twice");
            return null;
        }

        var size = signs;
        var digits = before + after;
        if (digits.Length > 0
            && (!int.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out size) || signs > 1 || size == 0))
        {
            FailNull(start, "This charge cannot be read");
            return null;
        }

        if (size > MaxCharge)
        {
            FailNull(start, $"A charge is at most {MaxCharge}");
            return null;
        }

        return IsPlus(sign) ? size : -size;
    }

    private string ReadChargeDigits()
    {
        var digits = new System.Text.StringBuilder();
        while (_at < _end && (Digit(Current) ?? Superscript(Current)) is { } digit)
        {
            digits.Append((char)('0' + digit));
            _at++;
        }

        return digits.ToString();
    }
}
