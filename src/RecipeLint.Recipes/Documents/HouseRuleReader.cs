using RecipeLint.Recipes.Fields;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Schema;
using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Documents;

/// <summary>Reads one *.rule.json. A rule that cannot be used is reported and judges nothing.</summary>
internal sealed class HouseRuleReader(FieldReader fields, SourceFile source)
{
    /// <summary>The rule; null where something it needs is missing or cannot be used (reported).</summary>
    public HouseRuleDocument? Read(JsonItem root)
    {
        var must = ReadSchema(root["must"]);
        var failing = Examples(root["failing"]);
        var passing = Examples(root["passing"]);
        if (must is null || fields.Text(root["id"]) is not { } id || fields.Text(root["name"]) is not { } name
            || fields.Text(root["level"]) is not { } level || fields.Text(root["message"]) is not { } message
                || fields.Text(root["reason"]) is not { } reason
            || !IsId(id.Value)
            || fields.Word<HouseRuleScope>(root["looksAt"], ("stock", HouseRuleScope.Stock),
                ("recipe", HouseRuleScope.Recipe)) is not { } scope)
        {
            return null;
        }

        return new HouseRuleDocument
        {
            File = fields.File,
            Id = id,
            Name = name,
            Level = level.Value,
            LooksAt = scope.Value,
            Title = fields.Text(root["title"])?.Value ?? reason.Value,
            Message = message.Value,
            Reason = reason.Value,
            Explanation = fields.Text(root["explanation"])?.Value ?? "",
            Must = must,
            Failing = failing,
            Passing = passing,
        };
    }

    /// <summary>Another id was reported as one of the wrong form; a rule that went by it could speak as a built-in one.</summary>
    private static bool IsId(string id) =>
        id.Length == 6 && id.StartsWith("HR", StringComparison.Ordinal) && id[2..].All(char.IsAsciiDigit);

    private HouseSchema? ReadSchema(JsonItem? item)
    {
        if (item is not { Kind: JsonKind.Object or JsonKind.True or JsonKind.False })
        {
            return null;
        }

        var schema = HouseSchema.Read(source, item, out var faults);
        foreach (var fault in faults)
        {
            var place = fields.At(fault.At);
            fields.Report(new Problem(ProblemKind.WrongShape, fault.At.KeySpan is null ? place
                : place.Key, fault.Message)
            { Suggestions = fault.Suggestions });
        }

        return schema;
    }

    private List<HouseRuleExample> Examples(JsonItem? list)
    {
        var examples = new List<HouseRuleExample>();
        foreach (var entry in list is { Kind: JsonKind.Array } ? list.Items : [])
        {
            if (fields.Text(entry["file"]) is not { } file || entry["files"] is not { Kind: JsonKind.Object } files)
            {
                continue;
            }

            var contents = new SortedDictionary<string, byte[]>(StringComparer.Ordinal);
            foreach (var member in files.Members)
            {
                contents[member.Name] = source.DecodableBytes.Slice(member.Value.Span.Start, member.Value.Span.Length).ToArray();
            }

            if (!contents.ContainsKey(file.Value))
            {
                fields.Report(new Problem(
                    ProblemKind.MissingReference,
                    file.Place,
                    $"'{Wording.Shorten(file.Value)}' is none of the files of this example. Write the name of one that stands under "
                        + "\"files\"."));
                continue;
            }

            var what = fields.Text(entry["what"])?.Value ?? file.Value;
            examples.Add(new HouseRuleExample(what, file.Value, contents, fields.Text(entry["at"])?.Value, fields.At(entry)));
        }

        return examples;
    }
}
