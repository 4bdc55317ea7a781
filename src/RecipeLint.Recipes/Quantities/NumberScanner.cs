using System.Globalization;
using System.Text;

namespace RecipeLint.Recipes.Quantities;

internal enum NumberState
{
    /// <summary>No number stands there.</summary>
    None,
    Read,

    /// <summary>Commas, spaces or several points: see the readings.</summary>
    Ambiguous,

    /// <summary>Digits and signs that are no number ("1.2.3").</summary>
    Malformed,

    /// <summary>Beyond what can be computed with, or so small that it became zero.</summary>
    OutOfRange,
}

/// <summary>A number found in a text.</summary>
/// <param name="Start">Offset of its first character.</param>
/// <param name="End">One past its last character.</param>
/// <param name="Readings">What an ambiguous number can be, decimal reading first, spelled so that it reads back unambiguously.</param>
internal readonly record struct ScannedNumber(NumberState State, int Start, int End, double Value, IReadOnlyList<string> Readings);

/// <summary>
/// Finds numbers as people write them. Only a decimal point is taken; groups of three digits are joined where a no-break or thin
/// space holds them together (SI Brochure, 9th ed., 5.4.4), every other grouping has more than one reading.
/// </summary>
internal static class NumberScanner
{
    public static ScannedNumber Scan(string text, int start)
    {
        var end = start;
        if (end < text.Length && text[end] is '+' or '-' or '\u2212')
        {
            end++;
        }

        var digits = end;
        if (!StartsNumber(text, end))
        {
            return new ScannedNumber(NumberState.None, start, start, 0, []);
        }

        end = RunEnd(text, end);
        var mantissa = text[digits..end];
        var exponentEnd = ExponentEnd(text, end);
        var exponent = text[end..exponentEnd].Replace('\u2212', '-');
        var sign = text[start] is '-' or '\u2212' ? "-" : "";

        var plain = JoinFirmGroups(mantissa);
        if (plain is not null && plain.Count(c => c == '.') <= 1)
        {
            return Parsed(sign + plain + exponent, start, exponentEnd);
        }

        var readings = Readings(mantissa).Where(r => IsFinite(sign + r + exponent)).Select(r => sign + r + exponent).ToArray();
        return new ScannedNumber(readings.Length > 0 ? NumberState.Ambiguous : NumberState.Malformed, start, exponentEnd, 0, readings);
    }

    /// <summary>Reads a number that the scanner itself spelled.</summary>
    public static double Value(string number) => double.Parse(number, NumberStyles.Float, CultureInfo.InvariantCulture);

    /// <summary>
    /// "1.000" and "12.500": a point before three digits that end in 0 groups thousands in half of the world. Other digits are a scale's
    /// reading.
    /// </summary>
    public static bool IsGroupedByPoint(string number)
    {
        var point = number.IndexOf('.', StringComparison.Ordinal);
        return point is >= 1 and <= 3 && number.Length == point + 4 && number[0] is >= '1' and <= '9' && number[^1] == '0'
            && number.Where((_, i) => i != point).All(char.IsAsciiDigit);
    }

    private static ScannedNumber Parsed(string number, int start, int end)
    {
        var value = Value(number);
        var mantissa = number.AsSpan();
        var exponent = mantissa.IndexOfAny('e', 'E');
        var nonZero = (exponent < 0 ? mantissa : mantissa[..exponent]).IndexOfAnyInRange('1', '9') >= 0;
        var usable = double.IsFinite(value) && (value != 0 || !nonZero);
        return new ScannedNumber(usable ? NumberState.Read : NumberState.OutOfRange, start, end, value, []);
    }

    private static bool IsFinite(string number) => double.IsFinite(Value(number));

    private static bool StartsNumber(string text, int at) =>
        at < text.Length && (char.IsAsciiDigit(text[at]) || (text[at] == '.' && DigitAt(text, at + 1)));

    private static bool DigitAt(string text, int at) => at < text.Length && char.IsAsciiDigit(text[at]);

    private static int RunEnd(string text, int at)
    {
        while (at < text.Length)
        {
            if (char.IsAsciiDigit(text[at]) || (IsSeparator(text[at]) && DigitAt(text, at + 1)))
            {
                at++;
            }
            else
            {
                break;
            }
        }

        return at;
    }

    private static int ExponentEnd(string text, int at)
    {
        if (at >= text.Length || text[at] is not ('e' or 'E'))
        {
            return at;
        }

        var end = at + 1;
        if (end < text.Length && text[end] is '+' or '-' or '\u2212')
        {
            end++;
        }

        if (!DigitAt(text, end))
        {
            return at;
        }

        while (DigitAt(text, end))
        {
            end++;
        }

        return end;
    }

    private static bool IsSeparator(char c) => c is '.' or ',' or ' ' or '\'' or '’' or '_' || IsFirmSpace(c);

    private static bool IsFirmSpace(char c) => c is '\u00A0' or '\u2009' or '\u202F';

    /// <summary>The digits without firm spaces between groups of three; null when other separators or odd groups stand there.</summary>
    private static string? JoinFirmGroups(string mantissa)
    {
        var point = mantissa.IndexOf('.', StringComparison.Ordinal);
        var whole = point < 0 ? mantissa : mantissa[..point];
        var rest = point < 0 ? "" : mantissa[point..];
        if (rest.Any(c => !char.IsAsciiDigit(c) && c != '.'))
        {
            return null;
        }

        if (whole.All(char.IsAsciiDigit))
        {
            return whole + rest;
        }

        if (!whole.All(c => char.IsAsciiDigit(c) || IsFirmSpace(c)))
        {
            return null;
        }

        var groups = whole.Split(['\u00A0', '\u2009', '\u202F']);
        return groups[0].Length is >= 1 and <= 3 && groups.Skip(1).All(g => g.Length == 3) ? string.Concat(groups) + rest : null;
    }

    private static IEnumerable<string> Readings(string mantissa)
    {
        var separators = mantissa.Where(c => !char.IsAsciiDigit(c)).ToArray();
        var digits = Keep(mantissa, null);
        if (separators.Length == 1)
        {
            if (separators[0] is not ('\'' or '’' or '_'))
            {
                // "1.000" would be asked about again.
                var point = Keep(mantissa, separators[0]);
                yield return IsGroupedByPoint(point) ? point.TrimEnd('0').TrimEnd('.') : point;
            }

            yield return digits;
        }
        else if (separators.Distinct().Count() == 1)
        {
            // "1.2.3" groups nothing; "1,000,000" and "1.000.000" do.
            if (mantissa.Split(separators[0]).Skip(1).All(g => g.Length == 3))
            {
                yield return digits;
            }
        }
        else
        {
            var last = separators[^1];
            if (last is '.' or ',' && separators.Count(c => c == last) == 1)
            {
                yield return Keep(mantissa, last);
            }
        }
    }

    /// <summary>The digits, with the one separator named turned into a decimal point. Leading zeros of a grouped reading go.</summary>
    private static string Keep(string mantissa, char? point)
    {
        var builder = new StringBuilder(mantissa.Length);
        foreach (var c in mantissa)
        {
            if (char.IsAsciiDigit(c))
            {
                builder.Append(c);
            }
            else if (c == point)
            {
                builder.Append('.');
            }
        }

        while (builder.Length > 1 && builder[0] == '0' && builder[1] != '.')
        {
            builder.Remove(0, 1);
        }

        return builder.ToString();
    }
}
