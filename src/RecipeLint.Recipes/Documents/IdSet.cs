using System.Globalization;
using RecipeLint.Recipes.Fields;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Documents;

/// <summary>
/// Ids of the entries of one list. Stated ids come first, so that the id made for an unnamed entry never takes one that someone wrote;
/// made ids that collide count up: "potassium-nitrate", "potassium-nitrate-2".
/// </summary>
internal sealed class IdSet
{
    private const int LongestMade = 60;

    private readonly Dictionary<string, JsonItem> _stated = new(StringComparer.Ordinal);
    private readonly HashSet<string> _used;

    /// <summary>Collects the stated ids and reports those stated twice.</summary>
    public IdSet(IEnumerable<JsonItem> entries, FieldReader fields)
    {
        foreach (var id in entries.Select(e => e["id"]).OfType<JsonItem>().Where(i => i.Kind == JsonKind.Text))
        {
            if (!_stated.TryAdd(id.Text, id))
            {
                fields.Report(new Problem(
                    ProblemKind.DuplicateKey,
                    fields.At(id),
                    $"The id '{Wording.Shorten(id.Text)}' is taken in this file. Give this entry one of its own.")
                {
                    Related = [new RelatedPlace(fields.At(_stated[id.Text]), "first used here")],
                });
            }
        }

        _used = [.. _stated.Keys];
    }

    /// <summary>The id an entry states, or one made from a name.</summary>
    public string For(JsonItem entry, string name)
    {
        if (entry["id"] is { Kind: JsonKind.Text } stated && _stated.GetValueOrDefault(stated.Text) == stated)
        {
            return stated.Text;
        }

        return Free(entry["id"] is { Kind: JsonKind.Text } twice ? twice.Text : Made(name));
    }

    private static string Made(string name) =>
        Slug.Of(name.Length > LongestMade ? name[..LongestMade] : name) is { Length: > 0 } made ? made : "entry";

    private string Free(string name)
    {
        var id = name;
        for (var count = 2; !_used.Add(id); count++)
        {
            id = $"{name}-{count.ToString(CultureInfo.InvariantCulture)}";
        }

        return id;
    }
}
