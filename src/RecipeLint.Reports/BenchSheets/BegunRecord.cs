using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes;
using RecipeLint.Recipes.Batches;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Editions;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.BenchSheets;

/// <summary>
/// A batch record to be filled in: what it was mixed from, in which edition, on which day, and the steps that something can be recorded of.
/// It states no weight; a step without one went as written.
/// </summary>
public static class BegunRecord
{
    /// <param name="file">A stock or recipe, relative to the workspace root.</param>
    /// <param name="way">To that file from where the record will stand.</param>
    /// <param name="size">How much is made; null for what the file makes.</param>
    public static string Of(Workspace workspace, string file, string way, Volume? size, DateOnly made)
    {
        var recipe = workspace.FindRecipe(file);
        var text = new StringBuilder("{\n  \"format\": 1,\n");
        text.Append(CultureInfo.InvariantCulture, $"  \"{(recipe is null ? "stock" : "recipe")}\": {Quoted(way)},\n");
        if (Edition.Of(workspace, file) is { } edition)
        {
            text.Append(CultureInfo.InvariantCulture, $"  \"edition\": \"{edition}\",\n");
        }

        text.Append(CultureInfo.InvariantCulture, $"  \"made\": \"{made:yyyy-MM-dd}\",\n");
        if (size is { } volume)
        {
            text.Append(CultureInfo.InvariantCulture, $"  \"batch\": {Quoted(Say.Litres(volume.Litres))},\n");
        }

        var steps = recipe is null ? StepsOf(workspace.FindStock(file)) : DosesOf(recipe);
        text.Append("  \"steps\": [");
        text.AppendJoin(",", steps.Select(s => $"\n    {{ \"step\": {Quoted(s)} }}"));
        return text.Append(steps.Count == 0 ? "]\n}\n" : "\n  ]\n}\n").ToString();
    }

    /// <summary>Steps in which something is measured.</summary>
    private static List<string> StepsOf(StockDocument? stock) =>
        [.. (stock?.Steps ?? []).Where(s => s is AddStep or AliquotStep or AdjustStep).Select(s => s.Id)];

    private static List<string> DosesOf(RecipeDocument recipe) =>
        [.. recipe.Doses.Select(d => d.Id), .. recipe.Adjust is null ? [] : new[] { BatchDocument.AdjustId }];

    private static string Quoted(string text) => $"\"{JsonEncodedText.Encode(text, JavaScriptEncoder.UnsafeRelaxedJsonEscaping)}\"";
}
