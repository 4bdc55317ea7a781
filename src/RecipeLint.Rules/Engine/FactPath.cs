using System.Globalization;
using System.Text.Json;
using RecipeLint.Recipes;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Engine;

/// <summary>The way from the root of a facts document to one of its values.</summary>
/// <param name="Tokens">Keys and indexes from the root down, as far as there is something.</param>
/// <param name="Steps">The values on the way, the root first.</param>
internal sealed record FactPath(IReadOnlyList<string> Tokens, IReadOnlyList<JsonElement> Steps)
{
    /// <summary>Contributors named beside a value, the largest first.</summary>
    private const int MostContributors = 5;

    public JsonElement Value => Steps[^1];

    public static FactPath Of(JsonElement root, JsonPointer at)
    {
        var (tokens, steps) = (new List<string>(), new List<JsonElement> { root });
        foreach (var token in at.Tokens)
        {
            if (Child(steps[^1], token) is not { } next)
            {
                break;
            }

            tokens.Add(token);
            steps.Add(next);
        }

        return new FactPath(tokens, steps);
    }

    public static JsonElement? Child(JsonElement element, string token) => element.ValueKind switch
    {
        JsonValueKind.Object when element.TryGetProperty(token, out var member) => member,
        JsonValueKind.Array when int.TryParse(token, NumberStyles.None, CultureInfo.InvariantCulture, out var index)
            && index < element.GetArrayLength() =>
            element[index],
        _ => null,
    };

    /// <summary>
    /// Where the nearest locator on the way back points to; of a mass or volume the amount it was read from. Null where there is none.
    /// </summary>
    public Place? PlaceIn(Workspace workspace)
    {
        for (var i = Steps.Count - 1; i >= 0; i--)
        {
            if (Locator(Steps[i]) is { } place)
            {
                var tree = workspace.Sources.GetValueOrDefault(place.File)?.Tree;
                return i == Steps.Count - 2 && Written(Tokens[^1]) is { } key && tree?.Find(place.Child(key).Pointer) is not null
                    ? place.Child(key) : place;
            }
        }

        return null;
    }

    /// <summary>Who brought how much of an element, where the value is one's.</summary>
    public IReadOnlyList<RelatedPlace> Contributors()
    {
        var list = Steps.Select(ContributionsOf).LastOrDefault(s => s.ValueKind == JsonValueKind.Array);
        return list.ValueKind != JsonValueKind.Array ? [] :
        [
            .. list.EnumerateArray()
                .Select(c => (Place: Locator(c), Label: c.GetProperty("label")
                    .GetString(), Amount: Number(c.GetProperty("concentration_mg_per_L"))))
                .Where(c => c.Place is not null && c.Amount > 0)
                .OrderByDescending(c => c.Amount)
                .Take(MostContributors)
                .Select(c => new RelatedPlace(c.Place!, string.Create(CultureInfo.InvariantCulture, $"{c.Label}: {c.Amount:G4} mg/L"))),
        ];
    }

    private static JsonElement ContributionsOf(JsonElement element) =>
        element.ValueKind == JsonValueKind.Object && element.TryGetProperty("contributions", out var found) ? found : default;

    private static double Number(JsonElement element) => element.ValueKind == JsonValueKind.Number ? element.GetDouble() : 0;

    private static string? Written(string fact) => fact switch
    {
        "mass_g" or "volume_L" or "amount_mol" => "amount",
        "assay_fraction" => "assay",
        "dose_mL_per_L" => "dose",
        _ => null,
    };

    private static Place? Locator(JsonElement element) =>
        element.ValueKind == JsonValueKind.Object && element.TryGetProperty("locator", out var locator)
            && locator.ValueKind == JsonValueKind.Object
            ? new Place(locator.GetProperty("file").GetString()!, new JsonPointer(locator.GetProperty("pointer").GetString()!))
            : null;
}
