using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Fields;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Documents;

/// <summary>Reads how warm something stands: a temperature, a range of them, or the name of a site of the shop.</summary>
internal static class StorageReader
{
    /// <summary>Null where nothing is written, or nothing that can be read (then it is reported).</summary>
    public static Located<Interval<Temperature>>? Read(JsonItem? at, FieldReader fields, Resolution resolution)
    {
        if (at is { Kind: JsonKind.Text } && !LooksLikeTemperature(at.Text))
        {
            return resolution.FindSite(at, fields) is { } site ? new Located<Interval<Temperature>>(site.At, fields.At(at)) : null;
        }

        if (fields.Located(at, Due.Temperatures, q => q.Temperatures) is not { } storage)
        {
            return null;
        }

        Plausibility.Storage(storage.Value, at!, fields);
        return storage;
    }

    /// <summary>Names of sites begin with a letter; what begins with a digit or a sign is meant as a temperature.</summary>
    private static bool LooksLikeTemperature(string text)
    {
        var start = text.TrimStart();
        return start.Length == 0 || !char.IsLetter(start[0]);
    }
}
