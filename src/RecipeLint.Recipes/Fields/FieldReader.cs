using System.Globalization;
using System.Text;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Fields;

/// <summary>
/// Reads single values of one file and collects what is wrong with them. Values of the wrong JSON kind are passed over in silence:
/// the schema has reported them, and nothing is reported twice.
/// </summary>
internal sealed class FieldReader
{
    private readonly SourceFile _source;
    private readonly HashSet<string> _reported;
    private readonly ProblemList _problems = new();

    /// <param name="earlier">What parsing and schema have reported for this file.</param>
    public FieldReader(SourceFile source, IEnumerable<Problem> earlier)
    {
        _source = source;
        _reported =
        [
            .. earlier.Where(p => p.Kind is ProblemKind.WrongShape or ProblemKind.NumberWithoutUnit or ProblemKind.ImplausibleAmount
                && p.Place.Part == PlacePart.Value)
                .Select(p => p.Place.Pointer.Value),
        ];
    }

    public string File => _source.Path;

    public IReadOnlyList<Problem> Close() => _problems.Close();

    public Place At(JsonItem item) => new(File, item.Pointer);

    /// <summary>Adds a problem, unless parsing or the schema have refused the very same value.</summary>
    public void Report(Problem problem)
    {
        if (problem.Place.Part != PlacePart.Value || !_reported.Contains(problem.Place.Pointer.Value))
        {
            _problems.Add(problem);
        }
    }

    public void Report(ProblemKind kind, JsonItem item, string message, params IEnumerable<string> suggestions) =>
        Report(new Problem(kind, At(item), message) { Suggestions = [.. suggestions] });

    /// <summary>A text; null when absent or of another kind.</summary>
    public Located<string>? Text(JsonItem? item) => item is { Kind: JsonKind.Text } ? new Located<string>(item.Text, At(item)) : null;

    /// <summary>A day as year-month-day; null when absent or no day (reported).</summary>
    public Located<DateOnly>? Date(JsonItem? item)
    {
        if (item is not { Kind: JsonKind.Text })
        {
            return null;
        }

        if (DateOnly.TryParseExact(item.Text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date))
        {
            return new Located<DateOnly>(date, At(item));
        }

        Report(
            ProblemKind.WrongShape,
            item,
            $"'{Wording.Shorten(item.Text)}' is not a date. Write year-month-day, such as \"2027-03-01\".");
        return null;
    }

    public string? Note(JsonItem item) => Text(item["note"])?.Value;

    /// <summary>One of a few words; null when absent or none of them.</summary>
    public Located<T>? Word<T>(JsonItem? item, params ReadOnlySpan<(string Word, T Value)> words)
    {
        if (item is { Kind: JsonKind.Text })
        {
            foreach (var (word, value) in words)
            {
                if (item.Text == word)
                {
                    return new Located<T>(value, At(item));
                }
            }
        }

        return null;
    }

    /// <summary>A JSON number as written in the file; null when it is none or too large to be one.</summary>
    public static double? Number(JsonItem? item) =>
        item is { Kind: JsonKind.Number }
        && double.TryParse(item.Text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value)
        && double.IsFinite(value)
            ? value
            : null;

    public Quantity? Quantity(JsonItem? item, Due due)
    {
        if (item is null)
        {
            return null;
        }

        if (item.Kind == JsonKind.Number)
        {
            return BareNumber(item, due);
        }

        if (item.Kind != JsonKind.Text)
        {
            return null;
        }

        if (QuantityReader.TryRead(item.Text, due, out var quantity, out var fault))
        {
            return quantity;
        }

        Report(fault, item);
        return null;
    }

    public Tolerance? Tolerance(JsonItem? item, Dimension dimension)
    {
        if (item is not { Kind: JsonKind.Text })
        {
            return null;
        }

        if (QuantityReader.TryReadTolerance(item.Text, dimension, out var tolerance, out var fault))
        {
            return tolerance;
        }

        Report(fault, item);
        return null;
    }

    /// <summary>A quantity with one value, at its place.</summary>
    public Located<T>? Located<T>(JsonItem? item, Due due, Func<Quantity, T> convert) =>
        Quantity(item, due) is { } quantity ? new Located<T>(convert(quantity), At(item!)) : null;

    public void Implausible(JsonItem item, string message, params IEnumerable<NamedValue> values) =>
        Report(new Problem(ProblemKind.ImplausibleAmount, At(item), message) { Values = [.. values] });

    /// <summary>The same for an amount that only does not fit the batch it is for.</summary>
    public void Implausible(JsonItem item, string message, Place batch, params IEnumerable<NamedValue> values) =>
        Report(new Problem(ProblemKind.ImplausibleAmount, At(item), message)
        {
            Values = [.. values],
            Related = [new RelatedPlace(batch, "the volume it has to fit into")],
        });

    public void Report(QuantityFault fault, JsonItem item) =>
        Report(new Problem(fault.Kind, PlaceInside(item, fault), fault.Message) { Suggestions = fault.Suggestions, Values = fault.Values });

    private Quantity? BareNumber(JsonItem item, Due due)
    {
        if (!due.Accepts.Contains(Dimension.Number) || due.Prefix is not null)
        {
            var suggestions = due.UsualUnits.Select(u => $"\"{item.Text} {u}\"").ToArray();
            var example = suggestions.Length > 0 ? suggestions[0] : $"\"{due.Examples[0]}\"";
            Report(
                ProblemKind.NumberWithoutUnit,
                item,
                $"'{Wording.Shorten(item.Text)}' has no unit. Write a text with number and unit, such as {example}.",
                suggestions);
            return null;
        }

        if (Number(item) is { } value && NumberBounds.Hold(value))
        {
            return new Quantity(Dimension.Number, value, value, "");
        }

        Report(ProblemKind.ImplausibleAmount, item, $"'{Wording.Shorten(item.Text)}' is a number beyond anything that can be measured.");
        return null;
    }

    /// <summary>The offending part of a text where the file spells it without escapes, else the whole value.</summary>
    private Place PlaceInside(JsonItem item, QuantityFault fault)
    {
        var place = At(item);
        var length = Encoding.UTF8.GetByteCount(item.Text);
        var whole = fault.Start == 0 && fault.Length == item.Text.Length;
        if (whole
            || fault.Length == 0
            || item.Span.Length != length + 2
            || SplitsPair(item.Text, fault.Start)
            || SplitsPair(item.Text, fault.Start + fault.Length))
        {
            return place;
        }

        var before = Encoding.UTF8.GetByteCount(item.Text.AsSpan(0, fault.Start));
        var inside = Encoding.UTF8.GetByteCount(item.Text.AsSpan(fault.Start, fault.Length));
        return place with { Range = new ByteSpan(item.Span.Start + 1 + before, inside) };
    }

    private static bool SplitsPair(string text, int at) =>
        at > 0 && at < text.Length && char.IsLowSurrogate(text[at]) && char.IsHighSurrogate(text[at - 1]);
}
