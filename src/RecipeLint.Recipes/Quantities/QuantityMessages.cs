using System.Globalization;
using System.Text.RegularExpressions;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Quantities;

/// <summary>The words for what a quantity text has wrong.</summary>
internal static partial class QuantityMessages
{
    /// <summary>What laboratories write where they found nothing, in small letters and without stops and blanks.</summary>
    private static readonly string[] _nothingFound =
        ["nd", "n/d", "notdetected", "notdetectable", "trace", "traces", "tr", "bdl", "bld", "lod", "loq", "none", "nil", "-", "–"];

    public static QuantityFault NotAQuantity(Due due, string found, int start, int length) =>
        new(ProblemKind.WrongShape, start, length, SaysNothingFound(due, found)
            ? $"'{Wording.Shorten(found)}' says that hardly any was found. Leave the key out, or write what it can be as a range up to the "
                + "least the method finds, such as '0..0.1 mg/L'."
            : $"'{Wording.Shorten(found)}' is not {Wanted(due)}. Write it such as {Examples(due)}.");

    /// <summary>True for a word of a laboratory's report where a concentration is due.</summary>
    private static bool SaysNothingFound(Due due, string text) =>
        !due.IsAmount && due.Accepts.Contains(Dimension.MassConcentration)
        && _nothingFound.Contains(
            string.Concat(text.Where(c => !char.IsWhiteSpace(c) && c is not ('.' or '<'))), StringComparer.OrdinalIgnoreCase);

    public static QuantityFault TooLong(Due due, string text) =>
        new(ProblemKind.WrongShape, 0, text.Length,
            $"A text of {text.Length.ToString(CultureInfo.InvariantCulture)} characters is not {Wanted(due)}. Write it such as "
                + $"{Examples(due)}.");

    public static QuantityFault Fraction(string text, int start, int length, string repaired) =>
        new(
            ProblemKind.WrongShape,
            start,
            length,
            $"'{Wording.Shorten(text.Substring(start, length))}' is a fraction; numbers here are decimal, such as '{repaired}'.")
        {
            Suggestions = [repaired],
        };

    public static QuantityFault NotANumber(string text, ScannedNumber number) =>
        new(
            ProblemKind.WrongShape,
            number.Start,
            number.End - number.Start,
            $"'{Wording.Shorten(Part(text, number))}' is not a number. Write it with digits and one decimal point.");

    /// <summary>The whole text is such a number, once its unit is counted in.</summary>
    public static QuantityFault OutOfRange(string text) =>
        OutOfRange(text, new ScannedNumber(NumberState.OutOfRange, 0, text.Length, 0, []));

    public static QuantityFault OutOfRange(string text, ScannedNumber number) =>
        new(ProblemKind.ImplausibleAmount, number.Start, number.End - number.Start,
            $"'{Wording.Shorten(Part(text, number))}' is a number beyond anything that can be weighed, measured or computed with.");

    public static QuantityFault AmbiguousNumber(string text, ScannedNumber number, string rest)
    {
        var part = Part(text, number);
        var start = number.Start;
        var length = number.End - number.Start;
        var repaired = number.Readings.Select(r => text[..start] + r + text[number.End..]).ToArray();
        if (number.Readings.Count == 1)
        {
            return new QuantityFault(ProblemKind.AmbiguousNumber, start, length,
                $"'{Wording.Shorten(part)}' groups its digits in a way that reads differently from country to country. Write it without "
                    + $"grouping and with a decimal point: '{repaired[0]}'.")
            {
                Suggestions = repaired,
                Values = [new NamedValue("reading", NumberScanner.Value(number.Readings[0]), rest)],
            };
        }

        var low = NumberScanner.Value(number.Readings[0]);
        var high = NumberScanner.Value(number.Readings[1]);
        var factor = low == 0 ? 0 : high / low;
        var values = new List<NamedValue> { new("as decimal", low, rest), new("as grouped digits", high, rest) };
        var gap = "";
        if (factor > 0 && double.IsFinite(factor))
        {
            values.Add(new NamedValue("factor", factor, ""));
            gap = $", a factor of {Text(factor)}";
        }

        return new QuantityFault(ProblemKind.AmbiguousNumber, start, length,
            $"'{Wording.Shorten(part)}' can be read as {number.Readings[0]} or as {number.Readings[1]}{gap}. "
            + $"Write it with a decimal point and without grouping: {Quoted(repaired)}.")
        {
            Suggestions = repaired,
            Values = values,
        };
    }

    public static QuantityFault NoUnit(Due due, string text, int at)
    {
        var (before, behind) = (text[..at].Trim(), text[at..].TrimEnd());
        var suggestions = due.UsualUnits.Select(u => $"{before} {u}{(behind.Length > 0 ? " " : "")}{behind}")
            .Where(s => behind.Length == 0 || QuantityReader.TryRead(s, due, out _, out _)).ToArray();
        return new QuantityFault(ProblemKind.NumberWithoutUnit, 0, text.Length,
            $"'{Wording.Shorten(text.Trim())}' has no unit; {Wanted(due)} is due. Write the unit behind the number, such as "
                + $"{(suggestions.Length > 0 ? Quoted(suggestions) : Examples(due))}.")
        {
            Suggestions = suggestions,
        };
    }

    /// <summary>What a hand or a packet holds: every one holds another mass.</summary>
    private static readonly string[] _handMeasures =
    [
        "pinch", "pinches", "dash", "handful", "handfuls", "scoop", "scoops", "capful", "capfuls", "sachet", "sachets", "smidgen",
    ];

    public static QuantityFault UnknownUnit(Due due, string text, int start, string unit, IReadOnlyList<string> suggestions)
    {
        if (_handMeasures.Contains(unit, StringComparer.OrdinalIgnoreCase))
        {
            return new QuantityFault(ProblemKind.UnknownUnit, start, unit.Length,
                $"'{unit}' is another mass each time. Weigh it once, and write the mass, such as '1.5 g'.");
        }

        if (Times().Match(text) is { Success: true } times)
        {
            var product = NumberScanner.Value(times.Groups[1].Value) * NumberScanner.Value(times.Groups[2].Value);
            return new QuantityFault(ProblemKind.UnknownUnit, start, unit.Length,
                $"'{Wording.Shorten(text.Trim())}' multiplies. Write the amount in one: '{Text(product)} {times.Groups[3].Value}'.");
        }

        var repaired = suggestions.Select(s => text[..start] + s + text[(start + unit.Length)..]).ToArray();
        var hint = suggestions.Count > 0 ? $" Did you mean {Quoted(suggestions)}?"
            : due.UsualUnits.Count > 0 ? $" Write a unit such as {Quoted(due.UsualUnits)}."
            : $" Write the value such as {Examples(due)}.";
        return new QuantityFault(
            ProblemKind.UnknownUnit, start, unit.Length,
            $"'{Wording.Shorten(unit)}' is not a unit known here.{hint}")
        { Suggestions = repaired };
    }

    public static QuantityFault AmbiguousUnit(string text, int start, string unit, UnitReading.Several several)
    {
        var repaired = several.Readings.Select(s => text[..start] + s + text[(start + unit.Length)..]).ToArray();
        return new QuantityFault(ProblemKind.AmbiguousUnit, start, unit.Length,
            $"'{Wording.Shorten(unit)}' has more than one meaning. {several.Advice} Write {Quoted(several.Readings)}.")
        {
            Suggestions = repaired,
            Values = several.Factor is { } factor ? [new NamedValue("factor", factor, "")] : [],
        };
    }

    /// <summary>A single number is shown on both scales; ranges and tolerances only name the scales.</summary>
    public static QuantityFault ConductivityInPpm(string text, int start, string unit, UnitReading.Several scales)
    {
        var number = NumberScanner.Scan(text, text.Length - text.TrimStart().Length);
        var isSingle =
            number.State == NumberState.Read && text[number.End..start].Trim().Length == 0 && start + unit.Length >= text.TrimEnd().Length;
        var readings = isSingle ? ContextualUnits.ConductivityReadings(number.Value) : [];
        var advice = isSingle
            ? $"Write {Quoted(readings)}, whichever the meter means."
            : "Write it in mS/cm: divided by 500 or by 700, whichever the meter means.";
        return new QuantityFault(
            ProblemKind.AmbiguousUnit, start, unit.Length, $"A conductivity in 'ppm' has more than one meaning. {scales.Advice} {advice}")
        {
            Suggestions = readings,
            Values = scales.Factor is { } factor ? [new NamedValue("factor", factor, "")] : [],
        };
    }

    public static QuantityFault WrongDimension(Due due, string text, string unit, IReadOnlyList<Dimension> found)
    {
        var hint = (found.Contains(Dimension.Mass), due.Accepts.Contains(Dimension.Volume), unit) is (true, true, "oz")
            ? " For a volume write 'US fl oz' or 'UK fl oz'."
            : "";
        return new QuantityFault(ProblemKind.WrongDimension, 0, text.Length,
            $"'{Wording.Shorten(text.Trim())}' is {found[0].Words()}, but {Wanted(due)} is due, such as {Examples(due)}.{hint}");
    }

    public static QuantityFault Trailing(string text, int start, string good, string rest) =>
        new(ProblemKind.WrongShape, start, rest.Length,
            $"After '{Wording.Shorten(good)}' comes '{Wording.Shorten(rest)}', which is not part of a quantity. Put remarks into a 'note'.")
        {
            Suggestions = [good],
        };

    /// <summary>"210 mg/L CaCO3": what it counts as without the word that says so.</summary>
    public static QuantityFault BasisWithoutAs(string text, int start, string good, string rest, string basis)
    {
        var repaired = $"{good} as {basis}";
        return new QuantityFault(ProblemKind.WrongShape, start, rest.Length,
            $"'{Wording.Shorten(rest)}' stands behind the value without 'as'. Write what it counts as: '{Wording.Shorten(repaired)}'.")
        {
            Suggestions = [repaired],
        };
    }

    /// <summary>"3 lb 4 oz": one quantity in two units.</summary>
    public static QuantityFault TwoUnits(string text, string repaired) =>
        new(
            ProblemKind.WrongShape,
            0,
            text.Length,
            $"'{Wording.Shorten(text.Trim())}' is one amount in two units. Write it in one: '{repaired}'.")
        {
            Suggestions = [repaired],
        };

    /// <summary>"about 3 g": how sure it is belongs into a tolerance.</summary>
    public static QuantityFault Roughly(Due due, string text, string word, string rest) =>
        new(ProblemKind.WrongShape, 0, text.Length,
            $"'{Wording.Shorten(word)}' says nothing that can be computed. Write '{Wording.Shorten(rest)}'"
            + (due.AllowTolerance ? $", and how sure it is behind it: '{Wording.Shorten(rest)} ± 5 %'." : "."))
        {
            Suggestions = [rest],
        };

    public static QuantityFault NoRange(Due due, string text) =>
        new(
            ProblemKind.WrongShape,
            0,
            text.Length,
            $"'{Wording.Shorten(text.Trim())}' is a range, but one value is due, such as {Examples(due)}.");

    public static QuantityFault HyphenRange(string text, int start, int length, string repaired) =>
        new(
            ProblemKind.WrongShape,
            start,
            length,
            $"A range is written with two points, because a hyphen can be a minus sign: '{repaired}'.")
        {
            Suggestions = [repaired],
        };

    public static QuantityFault BackwardRange(string text) =>
        new(
            ProblemKind.WrongShape,
            0,
            text.Length,
            $"The range '{Wording.Shorten(text.Trim())}' runs from high to low. Write the lower end first.");

    public static QuantityFault NoTolerance(Due due, string text, int start) =>
        new(
            ProblemKind.WrongShape,
            start,
            text.Length - start,
            $"A tolerance has no meaning here; {Wanted(due)} is due, such as {Examples(due)}.");

    public static QuantityFault BadTolerance(string text, int start) =>
        new(ProblemKind.WrongShape, start, text.Length - start,
            $"'{Wording.Shorten(text[start..].Trim())}' is not a tolerance. Write it such as '± 5 %' or '± 0.2' in the unit of the value.");

    public static QuantityFault WideTolerance(string text, int start, double percent) =>
        new(ProblemKind.ImplausibleAmount, start, text.Length - start, $"A tolerance of {Text(percent)} % leaves nothing of the value.")
        {
            Values = [new NamedValue("tolerance", percent, "%")],
        };

    public static QuantityFault BadBasis(Due due, string text, int start, string basis)
    {
        if (due.Bases.Count == 0)
        {
            return new QuantityFault(
                ProblemKind.WrongShape,
                start,
                basis.Length,
                $"'as {Wording.Shorten(basis)}' has no meaning here; the value counts as what it is.");
        }

        var near = due.Bases.Where(b => b.Equals(basis, StringComparison.OrdinalIgnoreCase)).DefaultIfEmpty().First();
        IReadOnlyList<string> offered = near is null ? due.Bases : [near];
        return new QuantityFault(
            ProblemKind.UnknownUnit,
            start,
            basis.Length,
            $"A value here cannot be counted 'as {Wording.Shorten(basis)}'. Write 'as' with {Quoted(offered)}.")
        {
            Suggestions = [.. offered.Select(b => text[..start] + b + text[(start + basis.Length)..])],
        };
    }

    public static QuantityFault ImpliedBasis(Due due, string unit, int start, string basis) =>
        new(ProblemKind.WrongDimension, start, unit.Length,
            $"'{Wording.Shorten(unit)}' counts as {basis}, which has no meaning here. Write the value such as {Examples(due)}.");

    public static QuantityFault NoPrefix(Due due, string text) =>
        new(
            ProblemKind.WrongShape,
            0,
            text.Length,
            $"'{Wording.Shorten(text.Trim())}' does not say '{due.Prefix}'. Write it such as {Examples(due)}.");

    /// <summary>"a mass or a volume".</summary>
    public static string Wanted(Due due) =>
        due.Prefix is null ? string.Join(" or ", due.Accepts.Take(3).Select(d => d.Words())) : $"a {due.Prefix}";

    public static string Text(double value) => Wording.Number(value, 4);

    private static string Examples(Due due) => Quoted([.. due.Examples.Take(2)]);

    private static string Quoted(IReadOnlyList<string> texts) => Wording.Join([.. texts.Select(t => $"'{Wording.Shorten(t)}'")], "or");

    /// <summary>"2 x 12 g".</summary>
    [GeneratedRegex(
        @"^\s*([0-9]{1,6}(?:\.[0-9]{1,6})?)\s*[x×*]\s*([0-9]{1,6}(?:\.[0-9]{1,6})?)\s*(\S{1,12})\s*$",
        RegexOptions.CultureInvariant)]
    private static partial Regex Times();

    private static string Part(string text, ScannedNumber number) => text[number.Start..number.End];
}
