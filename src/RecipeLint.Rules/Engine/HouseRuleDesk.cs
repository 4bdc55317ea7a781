using System.Globalization;
using System.Text.Json;
using RecipeLint.Analysis;
using RecipeLint.Recipes.Schema;
using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Engine;

/// <summary>Holds the facts of one file against the rules of its shop.</summary>
/// <param name="document">Writes the facts of a file as JSON; null where it has none.</param>
internal sealed class HouseRuleDesk(Facts facts, Func<Facts, string, ReadOnlyMemory<byte>?> document)
{
    /// <summary>The most findings of one rule in one file.</summary>
    private const int MostFindings = 100;

    private static readonly JsonDocumentOptions _options = new() { MaxDepth = 64 };

    /// <summary>What the rules of the shop have to say of a stock or recipe; nothing is computed where there are none.</summary>
    public IEnumerable<Finding> Judge(string file, HouseRuleScope scope)
    {
        var rules = facts.Workspace.SettingsFor(file).HouseRules.Where(r => r.LooksAt == scope).ToList();
        if (rules.Count == 0 || document(facts, file) is not { } bytes)
        {
            return [];
        }

        using var json = JsonDocument.Parse(bytes, _options);
        var values = Count(json.RootElement);
        return [.. rules.SelectMany(r => Judge(r, file, json.RootElement, values))];
    }

    private IEnumerable<Finding> Judge(HouseRuleDocument rule, string file, JsonElement root, int values)
    {
        var descriptor = HouseRules.Descriptor(rule);
        IReadOnlyList<JsonPointer> misfits;
        try
        {
            misfits = rule.Must.Misfits(root, values);
        }
        catch (HouseSchemaTooMuchException)
        {
            var message = string.Create(
                CultureInfo.InvariantCulture,
                $"The house rule '{rule.Name.Value}' was not asked: its schema has {rule.Must.Parts:N0} parts and the facts of '{file}' "
                    + $"{values:N0} values, ")
                + "too much to be worked through. Make the schema smaller or name the part of the facts that it is about.";
            return [Find(descriptor, new Place(rule.File, JsonPointer.Root.Child("must"), PlacePart.Key), message)];
        }

        return misfits
            .Select(at => Find(rule, descriptor, file, root, at))
            .DistinctBy(f => (f.Place.File, f.Place.Pointer.Value))
            .Take(MostFindings);
    }

    private Finding Find(HouseRuleDocument rule, RuleDescriptor descriptor, string file, JsonElement root, JsonPointer at)
    {
        var way = FactPath.Of(root, at);
        var message = $"{FactText.Fill(rule.Message, root, way)} {rule.Reason}";
        var value = way.Value is { ValueKind: JsonValueKind.Number } number && number.TryGetDouble(out var read) && double.IsFinite(read)
            ? read : (double?)null;
        return Find(descriptor, way.PlaceIn(facts.Workspace) ?? Place.Whole(file), message) with
        {
            Values = value is { } known && way.Tokens.Count > 0 ? [new NamedValue(way.Tokens[^1], known, "")] : [],
            Related = way.Contributors(),
        };
    }

    private Finding Find(RuleDescriptor descriptor, Place place, string message) => new()
    {
        Rule = descriptor,
        Level = descriptor.Level,
        Certainty = descriptor.Certainty,
        Place = place,
        IdPath = IdPath.Of(facts.Workspace, place),
        Told = new(message),
    };

    private static int Count(JsonElement element) => element.ValueKind switch
    {
        JsonValueKind.Object => 1 + element.EnumerateObject().Sum(m => Count(m.Value)),
        JsonValueKind.Array => 1 + element.EnumerateArray().Sum(Count),
        _ => 1,
    };
}
