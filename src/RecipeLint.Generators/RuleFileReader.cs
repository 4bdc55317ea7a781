using System.Text.Json;
using System.Text.RegularExpressions;

namespace RecipeLint.Generators;

/// <summary>Reads a rule.json and says everything that is wrong with it, each with its field.</summary>
internal sealed class RuleFileReader
{
    private static readonly string[] _fields =
    [
        "$schema", "id", "name", "family", "level", "certainty", "scope", "title", "options", "since", "sources", "problemKind", "preview",
    ];

    private static readonly string[] _optionFields = ["name", "description", "default", "unit", "source"];

    private static readonly string[] _sourceFields = ["text", "confidence"];

    private readonly RuleText _file;
    private readonly List<Problem> _problems = [];

    internal RuleFileReader(RuleText file) => _file = file;

    internal IReadOnlyList<Problem> Problems => _problems;

    /// <summary>Null when so much is missing that no source can be made of it.</summary>
    internal RuleFile? Read()
    {
        try
        {
            using var document = JsonDocument.Parse(_file.Text);
            return document.RootElement.ValueKind == JsonValueKind.Object ? ReadRule(document.RootElement) : Broken("not a JSON object");
        }
        catch (JsonException e)
        {
            return Broken($"not JSON: {e.Message}");
        }
    }

    private RuleFile? Broken(string message)
    {
        _problems.Add(new Problem(message, null));
        return null;
    }

    private RuleFile? ReadRule(JsonElement root)
    {
        RefuseUnknown(root, _fields, "");
        var id = Text(root, "id", "");
        var name = Text(root, "name", "");
        var family = Text(root, "family", "");
        Demand(id is null || Regex.IsMatch(id, "^RL[0-9]{4}$"), "'id' must be RL and four digits", "id");
        Demand(name is null || name == _file.Folder, $"'name' is '{name}', but its folder is '{_file.Folder}'", "name");
        Demand(family is null || family == _file.Family, $"'family' is '{family}', but its folder lies in '{_file.Family}'", "family");
        var level = OneOf(root, "level", "note", "warning", "error");
        var certainty = OneOf(root, "certainty", "computed", "estimate", "practice");
        var scope = OneOf(root, "scope", "stock", "recipe", "workspace");
        var title = Text(root, "title", "");
        Demand(
            !root.TryGetProperty("preview", out var preview) || preview.ValueKind == JsonValueKind.True,
            "'preview' is true or left out", "preview");
        var since = Text(root, "since", "");
        Demand(since is null || Regex.IsMatch(since, @"^[0-9]+\.[0-9]+\.[0-9]+$"), "'since' must be a version such as 0.1.0", "since");
        var kinds = ReadKinds(root);
        var sources = ReadSources(root);
        var options = Items(root, "options").Select((o, at) => ReadOption(o, at)).OfType<OptionField>().ToList();
        foreach (var twice in options.GroupBy(o => o.Name).Where(g => g.Count() > 1))
        {
            _problems.Add(new Problem($"option '{twice.Key}' stands there twice", "options"));
        }

        return id is null || name != _file.Folder || family != _file.Family ? null : new RuleFile(_file, id, name!, family!, options)
        {
            Level = level ?? "note",
            Certainty = certainty ?? "estimate",
            Scope = scope ?? "workspace",
            Title = title ?? "",
            Since = since ?? "",
            IsPreview = preview.ValueKind == JsonValueKind.True,
            Sources = sources,
            ProblemKinds = kinds,
        };
    }

    private OptionField? ReadOption(JsonElement option, int at)
    {
        var where = $"options[{at}]";
        if (option.ValueKind != JsonValueKind.Object)
        {
            _problems.Add(new Problem($"'{where}' must be an object", "options"));
            return null;
        }

        var name = Text(option, "name", where);
        where = name is null ? where : $"option '{name}'";
        RefuseUnknown(option, _optionFields, where);
        var description = Text(option, "description", where);
        var unit = Text(option, "unit", where, mayBeEmpty: true);
        var source = Text(option, "source", where);
        if (!option.TryGetProperty("default", out var standard) || standard.ValueKind is not (JsonValueKind.Number or JsonValueKind.String))
        {
            _problems.Add(new Problem($"{where}: 'default' is missing; write a number, or a word in quotes", name ?? "options"));
            return null;
        }

        if (standard.ValueKind == JsonValueKind.String && double.TryParse(standard.GetString(), out _))
        {
            _problems.Add(new Problem($"{where}: 'default' is a number in quotes; write it without", name ?? "options"));
        }

        if (name is null || description is null || unit is null)
        {
            return null;
        }

        if (!Regex.IsMatch(name, "^[a-z][a-zA-Z0-9]*$"))
        {
            _problems.Add(new Problem($"{where}: 'name' must be camelCase", name));
            return null;
        }

        var isNumber = standard.ValueKind == JsonValueKind.Number;
        return new OptionField(name, description, isNumber ? standard.GetRawText() : standard.GetString()!, isNumber, unit, source ?? "");
    }

    private List<SourceField> ReadSources(JsonElement root)
    {
        var at = 0;
        var sources = new List<SourceField>();
        foreach (var source in Items(root, "sources"))
        {
            var where = $"sources[{at++}]";
            if (source.ValueKind != JsonValueKind.Object)
            {
                _problems.Add(new Problem($"'{where}' must be an object", "sources"));
                continue;
            }

            RefuseUnknown(source, _sourceFields, where);
            sources.Add(new SourceField(
                Text(source, "text", where) ?? "", OneOf(source, "confidence", "found", "memory", "derived", "practice") ?? ""));
        }

        Demand(at > 0, "'sources' is empty; no rule without a source", "sources");
        return sources;
    }

    /// <summary>One word or a list of them; which words there are the compiler knows.</summary>
    private List<string> ReadKinds(JsonElement root)
    {
        if (!root.TryGetProperty("problemKind", out var kinds))
        {
            return [];
        }

        List<JsonElement> items = kinds.ValueKind == JsonValueKind.Array ? [.. kinds.EnumerateArray()] : [kinds];
        List<string> words =
        [
            .. items.Where(k => k.ValueKind == JsonValueKind.String).Select(k => k.GetString()!)
                .Where(k => Regex.IsMatch(k, "^[A-Z][A-Za-z]*$")),
        ];
        Demand(words.Count == items.Count, "'problemKind' must be a kind of reading problem or a list of them", "problemKind");
        return words;
    }

    private IReadOnlyList<JsonElement> Items(JsonElement root, string field)
    {
        if (root.TryGetProperty(field, out var items) && items.ValueKind == JsonValueKind.Array)
        {
            return [.. items.EnumerateArray()];
        }

        _problems.Add(new Problem($"'{field}' is missing; write a list in square brackets", field));
        return [];
    }

    private string? Text(JsonElement item, string field, string where, bool mayBeEmpty = false)
    {
        if (item.TryGetProperty(field, out var value) && value.ValueKind == JsonValueKind.String
            && (mayBeEmpty || !string.IsNullOrWhiteSpace(value.GetString())))
        {
            return value.GetString();
        }

        _problems.Add(new Problem($"{(where.Length > 0 ? where + ": " : "")}'{field}' is missing; write a text in quotes", field));
        return null;
    }

    private string? OneOf(JsonElement item, string field, params string[] words)
    {
        if (Text(item, field, "") is not { } word)
        {
            return null;
        }

        Demand(words.Contains(word), $"'{field}' is '{word}'; write one of {string.Join(", ", words)}", field);
        return words.Contains(word) ? word : null;
    }

    private void RefuseUnknown(JsonElement item, string[] fields, string where)
    {
        foreach (var member in item.EnumerateObject().Where(m => !fields.Contains(m.Name)))
        {
            _problems.Add(new Problem($"{(where.Length > 0 ? where + ": " : "")}unknown field '{member.Name}'", member.Name));
        }
    }

    private void Demand(bool holds, string message, string field)
    {
        if (!holds)
        {
            _problems.Add(new Problem(message, field));
        }
    }
}
