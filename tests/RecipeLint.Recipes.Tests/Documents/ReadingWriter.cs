using System.Collections;
using System.Globalization;
using System.Reflection;
using System.Text;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Schema;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Tests.Documents;

/// <summary>
/// Writes out what reading made of some files: every value that a document holds by itself, in its base unit, with its place as line and
/// column, and every problem word for word. What follows from other values (a mass in kilograms beside the grams) is left out, and so is
/// what belongs to a substance of the built-in catalogue, which is named.
/// </summary>
internal sealed class ReadingWriter(Workspace workspace)
{
    private static readonly Dictionary<Type, PropertyInfo[]> _stored = [];

    /// <summary>By reference: whose value of the built-in catalogue an object is.</summary>
    private static readonly Lazy<Dictionary<object, string>> _builtIn = new(FindBuiltIn);

    private readonly StringBuilder _text = new();

    /// <summary>Documents and problems, file by file.</summary>
    public static string Of(Workspace workspace)
    {
        var writer = new ReadingWriter(workspace);
        foreach (var file in workspace.Sources.Keys.Order(StringComparer.Ordinal))
        {
            writer.WriteFile(file);
        }

        return writer._text.ToString();
    }

    public static string Number(double value) => value.ToString("G9", CultureInfo.InvariantCulture);

    /// <summary>A problem without its place: kind, words, what is offered and the numbers for machines.</summary>
    public static void Details(
        StringBuilder text, string message, IEnumerable<string> suggestions, IEnumerable<NamedValue> values, string indent)
    {
        text.Append(indent).Append(message).Append('\n');
        foreach (var suggestion in suggestions)
        {
            text.Append(indent).Append("? ").Append(suggestion).Append('\n');
        }

        foreach (var value in values)
        {
            text.Append(indent).Append("= ").Append(value.Name).Append(' ').Append(Number(value.Value));
            text.Append(value.Unit.Length > 0 ? " " : "").Append(value.Unit).Append('\n');
        }
    }

    private void WriteFile(string file)
    {
        _text.Append("==== ").Append(file).Append('\n');
        object?[] read =
        [
            workspace.FindStock(file), workspace.FindRecipe(file), workspace.FindWater(file), workspace.FindProfile(file),
            workspace.SubstanceFiles.FirstOrDefault(s => s.File == file), workspace.Batches.FirstOrDefault(b => b.File == file),
            workspace.SettingsFor("any.stock.json") is { } settings && settings.File == file ? settings : null,
        ];
        foreach (var document in read.OfType<object>())
        {
            _text.Append(document.GetType().Name).Append('\n');
            Members(document, 1);
        }

        foreach (var problem in workspace.ProblemsOf(file))
        {
            _text.Append("! ").Append(problem.Kind).Append(' ').Append(At(problem.Place)).Append(problem.IsHarmless ? " harmless" : "");
            _text.Append('\n');
            Details(_text, problem.Message, problem.Suggestions, problem.Values, "  ");
            foreach (var related in problem.Related)
            {
                _text.Append("  ").Append(At(related.Place)).Append(": ").Append(related.Label).Append('\n');
            }
        }
    }

    private void Members(object value, int depth)
    {
        foreach (var property in Stored(value.GetType()))
        {
            if (property.GetValue(value) is { } member && !IsEmpty(member) && !(member is 0.0 && property.PropertyType == typeof(double)))
            {
                _text.Append(' ', 2 * depth).Append(property.Name).Append(':');
                Value(member, depth);
            }
        }
    }

    /// <summary>Behind its name: on the same line where it is a word or a number, else below.</summary>
    private void Value(object value, int depth)
    {
        if (Short(value) is { } text)
        {
            _text.Append(' ').Append(text).Append('\n');
        }
        else if (value is IDictionary map)
        {
            _text.Append('\n');
            foreach (DictionaryEntry entry in map)
            {
                _text.Append(' ', 2 * (depth + 1)).Append(entry.Key).Append(':');
                Value(entry.Value!, depth + 1);
            }
        }
        else if (value is IEnumerable list)
        {
            _text.Append('\n');
            foreach (var entry in list)
            {
                _text.Append(' ', 2 * (depth + 1)).Append('-');
                Value(entry, depth + 1);
            }
        }
        else
        {
            _text.Append(' ').Append(NameOf(value.GetType())).Append('\n');
            Members(value, depth + 1);
        }
    }

    /// <summary>On one line; null for what needs several.</summary>
    private string? Short(object value) => value switch
    {
        string text => $"\"{text}\"",
        double number => Number(number),
        int or bool or Enum => string.Create(CultureInfo.InvariantCulture, $"{value}"),
        DateOnly day => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        Place place => At(place),
        byte[] bytes => Encoding.UTF8.GetString(bytes),
        Element element => element.Symbol,
        Formula formula => formula.Text,
        ElementContent content => Content(content),
        HouseSchema => "(a schema)",
        _ when _builtIn.Value.TryGetValue(value, out var owner) => $"(as {owner})",
        _ when Located(value) is { } located => located,
        _ when value is not IEnumerable && Stored(value.GetType()) is { Length: > 0 and <= 4 } few
            && few.Select(p => (p.Name, Value: p.GetValue(value))).ToList() is var parts
            && parts.TrueForAll(p => p.Value is null or string or ValueType) => Pieces(value, parts),
        _ => null,
    };

    private string Pieces(object value, List<(string Name, object? Value)> parts)
    {
        var stated = parts.Where(p => p.Value is not null).ToList();
        var type = value is ValueType && stated.Count == 1 ? "" : NameOf(value.GetType()) + " ";
        return type + string.Join(", ", stated.Select(p => stated.Count == 1 && value is ValueType ? $"{Short(p.Value!)} {p.Name}"
            : $"{p.Name} {Short(p.Value!)}"));
    }

    private string? Located(object value)
    {
        var type = value.GetType();
        if (!type.IsGenericType || type.GetGenericTypeDefinition() != typeof(Located<>))
        {
            return null;
        }

        var (inner, place) = (type.GetProperty("Value")!.GetValue(value)!, (Place)type.GetProperty("Place")!.GetValue(value)!);
        return Short(inner) is { } text ? $"{text} @ {At(place)}" : null;
    }

    /// <summary>Line, column and the column one past the end; with the file in front where it is another.</summary>
    private string At(Place place)
    {
        if (!workspace.Sources.TryGetValue(place.File, out var source))
        {
            return place.ToString();
        }

        var span = source.ToLines(source.Resolve(place));
        var end = span.End.Line == span.Start.Line ? "" : $"{span.End.Line}:";
        return string.Create(CultureInfo.InvariantCulture, $"{span.Start.Line}:{span.Start.Column}-{end}{span.End.Column}");
    }

    private static string Content(ElementContent content) => string.Join(
        ", ",
        content.Elements.Select(e => $"{e.Symbol} {Number(content[e])}")
            .Concat(Enum.GetValues<NitrogenForm>().Where(f => content[f] != 0).Select(f => $"N as {f} {Number(content[f])}")));

    private static bool IsEmpty(object value) =>
        value is false or "" || (value is ICollection { Count: 0 }) || (value is ElementContent content && !content.Elements.Any())
        || (value is IEnumerable list and not string && !list.GetEnumerator().MoveNext());

    private static string NameOf(Type type) => type.Name.Split('`')[0];

    /// <summary>What is set, not what is computed from it.</summary>
    private static PropertyInfo[] Stored(Type type)
    {
        if (!_stored.TryGetValue(type, out var properties))
        {
            properties = [.. type.GetProperties().Where(p => p.CanWrite && p.GetIndexParameters().Length == 0)];
            _stored[type] = properties;
        }

        return properties;
    }

    private static Dictionary<object, string> FindBuiltIn()
    {
        var found = new Dictionary<object, string>(ReferenceEqualityComparer.Instance);
        foreach (var substance in SubstanceCatalogue.BuiltIn.Substances)
        {
            found.TryAdd(substance, substance.Id);
            foreach (var property in Stored(typeof(Substance)).Where(p => !p.PropertyType.IsValueType && p.PropertyType != typeof(string)))
            {
                if (property.GetValue(substance) is { } value and not (Formula or ElementContent) && !IsEmpty(value))
                {
                    found.TryAdd(value, substance.Id);
                }
            }
        }

        return found;
    }
}
