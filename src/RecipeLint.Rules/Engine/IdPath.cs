using RecipeLint.Recipes;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Engine;

/// <summary>Turns a pointer into a path of ids ("steps/edta/amount"), which stays the same when steps are inserted before it.</summary>
internal static class IdPath
{
    internal static string Of(Workspace workspace, Place place)
    {
        var tokens = place.Pointer.Tokens;
        if (tokens.Count == 0)
        {
            return "";
        }

        var id = tokens.Count > 1 ? IdAt(workspace, place.File, new JsonPointer("").Child(tokens[0]).Child(tokens[1])) : null;
        return id is null ? string.Join('/', tokens) : string.Join('/', [tokens[0], id, .. tokens.Skip(2)]);
    }

    private static string? IdAt(Workspace workspace, string file, JsonPointer pointer) =>
        workspace.FindStock(file)?.Steps.FirstOrDefault(s => s.Place.Pointer == pointer)?.Id
        ?? workspace.Recipes.FirstOrDefault(r => r.File == file)?.Doses.FirstOrDefault(d => d.Place.Pointer == pointer)?.Id;
}
