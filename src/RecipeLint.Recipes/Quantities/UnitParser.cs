using System.Globalization;
using System.Text;

namespace RecipeLint.Recipes.Quantities;

/// <summary>Reads unit texts: simple units from the table and quotients of them such as "g/100 L" or "oz per 100 US gal".</summary>
internal static class UnitParser
{
    /// <param name="text">Without the number and without surrounding space.</param>
    public static UnitReading Parse(string text)
    {
        var normal = Normalise(text);
        if (Simple(normal) is { } whole)
        {
            return whole;
        }

        var (cut, width) = FindDivision(normal);
        if (cut < 0)
        {
            return new UnitReading.Unknown(UnitSuggestions.For(normal));
        }

        var above = normal[..cut].Trim();
        var below = normal[(cut + width)..].Trim();
        var (count, belowUnit) = SplitCount(below);
        var numerator = Simple(above);
        var denominator = Simple(belowUnit);
        var belowPrefix = below[..^belowUnit.Length];
        return (numerator, denominator) switch
        {
            (UnitReading.Several several, _) => Widen(several, r => $"{r}/{below}"),
            (_, UnitReading.Several several) => Widen(several, r => $"{above}/{belowPrefix}{r}"),
            (UnitReading.Known top, UnitReading.Known bottom) when count > 0 => Divide(top, bottom, count, belowPrefix),
            // "g/0 L": both are known, and the number between them cannot be used.
            (not null, not null) => new UnitReading.Unknown([]),
            _ => new UnitReading.Unknown(UnitSuggestions.ForQuotient(
                above, numerator is not null, belowPrefix, belowUnit, denominator is not null)),
        };
    }

    /// <summary>Brackets and runs of white space become one space, every spelling of micro and degree the standard one.</summary>
    public static string Normalise(string text)
    {
        var builder = new StringBuilder(text.Length);
        foreach (var c in text)
        {
            var one = c switch
            {
                '\u03BC' => 'µ',
                '\u00BA' or '\u02DA' => '°',
                '(' or ')' => ' ',
                _ when char.IsWhiteSpace(c) => ' ',
                _ => c,
            };
            if (one != ' ' || (builder.Length > 0 && builder[^1] != ' '))
            {
                builder.Append(one);
            }
        }

        return builder.ToString().TrimEnd();
    }

    private static UnitReading? Simple(string text)
    {
        if (UnitTable.BySymbol.TryGetValue(text, out var unit) || UnitTable.ByWord.TryGetValue(text, out unit))
        {
            IReadOnlyList<Dimension> dimensions = unit.Also is { } also ? [unit.Dimension, also] : [unit.Dimension];
            return new UnitReading.Known(unit.Symbol, dimensions, unit.Factor)
            {
                Offset = unit.Offset,
                Uncertainty = unit.Uncertainty,
                Basis = unit.Basis,
            };
        }

        return UnitTable.AmbiguousBySpelling.TryGetValue(text, out var ambiguous)
            ? new UnitReading.Several(ambiguous.Advice, ambiguous.Readings, ambiguous.Factor)
            : null;
    }

    private static (int Cut, int Width) FindDivision(string text)
    {
        var slash = text.IndexOf('/', StringComparison.Ordinal);
        if (slash >= 0)
        {
            return text.IndexOf('/', slash + 1) < 0 ? (slash, 1) : (-1, 0);
        }

        return (text.IndexOf(" per ", StringComparison.OrdinalIgnoreCase), 5);
    }

    /// <summary>Splits "100 L" into 100 and "L"; a count of 0 means that the number cannot be used.</summary>
    private static (double Count, string Unit) SplitCount(string text)
    {
        var end = 0;
        while (end < text.Length && (char.IsAsciiDigit(text[end]) || text[end] == '.'))
        {
            end++;
        }

        if (end == 0)
        {
            return (1, text);
        }

        var usable = double.TryParse(text[..end], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var count)
            && double.IsFinite(count);
        return (usable ? count : 0, text[end..].TrimStart());
    }

    private static UnitReading Divide(UnitReading.Known top, UnitReading.Known bottom, double count, string prefix)
    {
        var dimensions = top.Dimensions[0].Per(bottom.Dimensions[0]);
        if (dimensions.Count == 0 || bottom.Dimensions[0] == Dimension.Drops || !double.IsFinite(top.Factor / (bottom.Factor * count)))
        {
            return new UnitReading.Unknown([]);
        }

        var factor = top.Dimensions[0] == Dimension.Drops ? DropLitres : top.Factor;
        return new UnitReading.Known($"{top.Symbol}/{prefix}{bottom.Symbol}", dimensions, factor / (bottom.Factor * count))
        {
            Uncertainty = Worst(top.Uncertainty, bottom.Uncertainty),
        };
    }

    /// <summary>A drop is 0.05 mL give or take 20 % (common practice, no source).</summary>
    public const double DropLitres = 5e-5;

    private static double? Worst(double? one, double? other) => one is null ? other : Math.Max(one.Value, other ?? 0);

    private static UnitReading.Several Widen(UnitReading.Several several, Func<string, string> build) =>
        several with { Readings = [.. several.Readings.Select(build)] };
}
