using RecipeLint.Recipes.Fields;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Documents;

/// <summary>Reports what an import kept because it could not tell where it belongs.</summary>
internal static class NotUnderstoodReader
{
    public const string Key = "notUnderstood";

    public static void Report(JsonItem root, FieldReader fields)
    {
        if (root[Key] is not { Kind: JsonKind.Array } list)
        {
            return;
        }

        foreach (var entry in list.Items.Where(i => i.Kind == JsonKind.Text))
        {
            fields.Report(
                ProblemKind.ImportNotUnderstood,
                entry,
                $"This was in the table and could not be placed: '{Wording.Shorten(entry.Text)}'.");
        }
    }
}
