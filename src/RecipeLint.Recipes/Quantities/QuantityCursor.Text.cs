using System.Buffers;
using System.Text.RegularExpressions;

namespace RecipeLint.Recipes.Quantities;

/// <content>Numbers, words and separators.</content>
internal sealed partial class QuantityCursor
{
    private static readonly SearchValues<char> FractionGlyphs = SearchValues.Create("¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞");

    private static readonly string[] _roughly = ["approximately", "approx", "about", "roughly", "around", "circa", "ca", "c.", "~", "≈"];

    private double? Number()
    {
        var number = NumberScanner.Scan(text, _at);
        switch (number.State)
        {
            case NumberState.Read when due.IsAmount && NumberScanner.IsGroupedByPoint(text[number.Start..number.End]):
                var written = text[number.Start..number.End];
                string[] readings = [written.TrimEnd('0').TrimEnd('.'), written.Replace(".", "", StringComparison.Ordinal)];
                var both = number with { State = NumberState.Ambiguous, Readings = readings };
                Fail(QuantityMessages.AmbiguousNumber(text, both, UnitParser.Normalise(text[number.End..])));
                return null;
            case NumberState.Read:
                _at = number.End;
                // "1½", "1 ½".
                if (text.AsSpan(_at).TrimStart() is { Length: > 0 } behind && FractionGlyphs.Contains(behind[0]))
                {
                    return NoNumber(number.Start);
                }

                return number.Value;
            case NumberState.Ambiguous when MixedFraction() is { } mixed:
                Fail(mixed);
                return null;
            case NumberState.Ambiguous:
                Fail(QuantityMessages.AmbiguousNumber(text, number, UnitParser.Normalise(text[number.End..])));
                return null;
            case NumberState.Malformed:
                Fail(QuantityMessages.NotANumber(text, number));
                return null;
            case NumberState.OutOfRange:
                Fail(QuantityMessages.OutOfRange(text, number));
                return null;
            default:
                return NoNumber(_at);
        }
    }

    private double? NoNumber(int start)
    {
        var glyph = text.AsSpan(start).IndexOfAny(FractionGlyphs);
        var leading = glyph > 0 ? text.AsSpan(start, glyph).Trim() : "";
        if (glyph >= 0 && leading.IndexOfAnyExceptInRange('0', '9') < 0 && leading.Length < 10)
        {
            var value = char.GetNumericValue(text[start + glyph]) + (leading.Length > 0 ? NumberScanner.Value(leading.ToString()) : 0);
            Fail(QuantityMessages.Fraction(
                text, start, glyph + 1, text[..start] + QuantityMessages.Text(value) + text[(start + glyph + 1)..]));
        }
        else
        {
            var found = text.Trim();
            Fail(Roughly(found) ?? QuantityMessages.NotAQuantity(due, found.Length > 0 ? found : text, 0, text.Length));
        }

        return null;
    }

    /// <summary>"about 3 g", "~3 g", "ca. 3 g"; null where no quantity stands behind the word.</summary>
    private QuantityFault? Roughly(string found)
    {
        var word = _roughly.FirstOrDefault(w => found.StartsWith(w, StringComparison.OrdinalIgnoreCase));
        var rest = word is null ? "" : found[word.Length..].TrimStart(' ', '.');
        return rest.Length > 0 && QuantityReader.TryRead(rest, due, out _, out _) ? QuantityMessages.Roughly(due, text, word!, rest) : null;
    }

    /// <summary>"1 1/2 tsp"; null for anything else.</summary>
    private QuantityFault? MixedFraction()
    {
        var match = WholeAndFraction().Match(text, _at);
        if (!match.Success)
        {
            return null;
        }

        double Part(int group) => NumberScanner.Value(match.Groups[group].Value);
        var value = Part(1) + (Part(2) / Part(3));
        return double.IsFinite(value)
            ? QuantityMessages.Fraction(
                text, match.Groups[1].Index, match.Index + match.Length - match.Groups[1].Index,
                QuantityMessages.Text(value) + text[(match.Index + match.Length)..])
            : null;
    }

    [GeneratedRegex(@"\G\s*([0-9]{1,6}) ([0-9]{1,3})/([1-9][0-9]{0,2})(?![0-9./,])", RegexOptions.CultureInvariant)]
    private static partial Regex WholeAndFraction();

    /// <summary>"1/2 L".</summary>
    private bool LooksLikeFraction(double first)
    {
        if (!Peek('/'))
        {
            return false;
        }

        var below = NumberScanner.Scan(text, _at + 1);
        if (below.State != NumberState.Read || below.Value == 0 || !double.IsFinite(first / below.Value))
        {
            return false;
        }

        var start = text.Length - text.TrimStart().Length;
        Fail(QuantityMessages.Fraction(text, start, below.End - start, QuantityMessages.Text(first / below.Value) + text[below.End..]));
        return true;
    }

    /// <summary>"4-30 °C".</summary>
    private bool LooksLikeHyphenRange(double first)
    {
        if (_at >= text.Length || text[_at] is not ('-' or '–' or '—' or '…'))
        {
            return false;
        }

        var next = _at + 1;
        while (next < text.Length && char.IsWhiteSpace(text[next]))
        {
            next++;
        }

        if (NumberScanner.Scan(text, next).State == NumberState.None)
        {
            return false;
        }

        var repaired = $"{text[.._at].TrimEnd()}..{text[next..]}";
        Fail(QuantityMessages.HyphenRange(text, _at, 1, repaired));
        return true;
    }

    /// <summary>Everything up to a tolerance, a range, a basis or the end.</summary>
    private string TakeUnit()
    {
        var start = _at;
        while (_at < text.Length && PeekTolerance() == 0 && !PeekRange() && !PeekAs())
        {
            _at++;
        }

        var unit = text[start.._at].TrimEnd();
        return unit;
    }

    private string TakeWord()
    {
        var start = _at;
        while (_at < text.Length && !char.IsWhiteSpace(text[_at]) && PeekTolerance() == 0)
        {
            _at++;
        }

        return text[start.._at];
    }

    private bool TakePrefix(string prefix)
    {
        if (!text.AsSpan(_at).StartsWith(prefix, StringComparison.OrdinalIgnoreCase))
        {
            return false;
        }

        _at += prefix.Length;
        SkipSpace();
        return true;
    }

    private bool Peek(char c) => _at < text.Length && text[_at] == c;

    private bool PeekRange() => text.AsSpan(_at).StartsWith("..", StringComparison.Ordinal);

    private int PeekTolerance()
    {
        var rest = text.AsSpan(_at);
        return rest.StartsWith("±", StringComparison.Ordinal) ? 1
            : rest.StartsWith("+/-", StringComparison.Ordinal) ? 3
            : rest.StartsWith("+-", StringComparison.Ordinal) ? 2
            : 0;
    }

    private bool PeekAs() =>
        _at > 0 && char.IsWhiteSpace(text[_at - 1]) && text.AsSpan(_at).StartsWith("as ", StringComparison.Ordinal);

    private void SkipSpace()
    {
        while (_at < text.Length && char.IsWhiteSpace(text[_at]))
        {
            _at++;
        }
    }
}
