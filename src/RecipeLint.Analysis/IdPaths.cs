using System.Globalization;
using RecipeLint.Recipes;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Analysis;

/// <summary>
/// Turns a pointer into a path of ids ("/steps/3/amount" into "steps/edta/amount"), which stays the same when lines or steps are inserted.
/// Never throws: where there is no id the index stands.
/// </summary>
public static class IdPath
{
    /// <summary>Keys by which an entry of a list is known, in this order.</summary>
    private static readonly string[] IdKeys = ["id", "name", "rule"];

    public static string Of(StockDocument stock, JsonPointer pointer) =>
        Join(pointer.Tokens, "steps", item => stock.Steps.FirstOrDefault(s => s.Place.Pointer.Value == item)?.Id);

    public static string Of(RecipeDocument recipe, JsonPointer pointer) =>
        Join(pointer.Tokens, "doses", item => recipe.Doses.FirstOrDefault(d => d.Place.Pointer.Value == item)?.Id);

    /// <summary>
    /// The path of a place in any file of the workspace: typed documents know their ids, other files are asked for "id" or "name".
    /// </summary>
    public static string Of(Workspace workspace, Place place)
    {
        if (workspace.FindStock(place.File) is { } stock)
        {
            return Of(stock, place.Pointer);
        }

        if (workspace.FindRecipe(place.File) is { } recipe)
        {
            return Of(recipe, place.Pointer);
        }

        return workspace.Sources.GetValueOrDefault(place.File)?.Tree is { } tree
            ? Of(tree.Root, place.Pointer.Tokens)
            : string.Join('/', place.Pointer.Tokens);
    }

    private static string Join(IReadOnlyList<string> tokens, string list, Func<string, string?> idOf)
    {
        if (tokens.Count < 2 || tokens[0] != list)
        {
            return string.Join('/', tokens);
        }

        var id = idOf($"/{list}/{tokens[1]}") ?? tokens[1];
        return string.Join('/', [list, id, .. tokens.Skip(2)]);
    }

    private static string Of(JsonItem root, IReadOnlyList<string> tokens)
    {
        var path = new List<string>(tokens.Count);
        JsonItem? item = root;
        foreach (var token in tokens)
        {
            if (item?.Kind == JsonKind.Array && int.TryParse(token, NumberStyles.None, CultureInfo.InvariantCulture, out var index))
            {
                item = index < item.Items.Count ? item.Items[index] : null;
                path.Add(IdOf(item) ?? token);
            }
            else
            {
                item = item?.Kind == JsonKind.Object ? item[token] : null;
                path.Add(token);
            }
        }

        return string.Join('/', path);
    }

    private static string? IdOf(JsonItem? item) =>
        item?.Kind != JsonKind.Object
            ? null
            : IdKeys.Select(k => item[k]).FirstOrDefault(v => v is { Kind: JsonKind.Text, Text.Length: > 0 })?.Text;
}
