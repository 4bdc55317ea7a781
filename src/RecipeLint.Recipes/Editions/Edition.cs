using System.Security.Cryptography;
using System.Text;
using RecipeLint.Recipes.Batches;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Json;

namespace RecipeLint.Recipes.Editions;

/// <summary>
/// Which text of a stock or recipe a batch was mixed from: a digest of what the file says of the mixing, and of the stocks and waters that
/// it takes. White space, comments, names and notes do not count; a weight that is changed gives another edition, and so does the same
/// weight written otherwise. Pure.
/// </summary>
public static class Edition
{
    /// <summary>Digits that are kept: enough to tell the editions of one file apart.</summary>
    private const int Digits = 12;

    private static readonly HashSet<string> Silent = new(StringComparer.Ordinal) { "$schema", "name", "note" };

    /// <summary>Twelve hexadecimal digits; null where the file was not read as JSON.</summary>
    /// <param name="file">A stock or recipe file, relative to the workspace root.</param>
    public static string? Of(Workspace workspace, string file)
    {
        var files = new SortedSet<string>(StringComparer.Ordinal);
        var text = new StringBuilder();
        Collect(workspace, file, files);
        foreach (var name in files.Where(f => f != file).Prepend(file))
        {
            if (!workspace.Sources.TryGetValue(name, out var source) || source.Tree is not { } tree)
            {
                return null;
            }

            Write(text, tree.Root);
            text.Append('\n');
        }

        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())))[..Digits];
    }

    /// <summary>True where the record names an edition and the file is another one by now.</summary>
    public static bool IsEarlier(Workspace workspace, BatchDocument batch) =>
        batch is { Edition: { } edition, MixedFrom: { } file } && Of(workspace, file) is { } now && now != edition.Value;

    private static void Collect(Workspace workspace, string? file, SortedSet<string> files)
    {
        if (file is null || !files.Add(file))
        {
            return;
        }

        if (workspace.FindStock(file) is { } stock)
        {
            foreach (var step in stock.Steps)
            {
                Collect(
                    workspace,
                    step switch
                    {
                        AliquotStep aliquot => aliquot.StockFile,
                        PourStep pour => pour.Of?.Value.File,
                        TopUpStep topUp => topUp.Of?.Value.File,
                        _ => null,
                    },
                    files);
            }
        }
        else if (workspace.FindRecipe(file) is { } recipe)
        {
            Collect(workspace, recipe.Water?.Value.File, files);
            foreach (var dose in recipe.Doses.OfType<StockDose>())
            {
                Collect(workspace, dose.StockFile, files);
            }
        }
    }

    private static void Write(StringBuilder text, JsonItem item)
    {
        switch (item.Kind)
        {
            case JsonKind.Object:
                text.Append('{');
                foreach (var member in item.Members.Where(m => !Silent.Contains(m.Name)).OrderBy(m => m.Name, StringComparer.Ordinal))
                {
                    Text(text, member.Name);
                    Write(text, member.Value);
                }

                text.Append('}');
                break;
            case JsonKind.Array:
                text.Append('[');
                foreach (var below in item.Items)
                {
                    Write(text, below);
                }

                text.Append(']');
                break;
            case JsonKind.Text:
                Text(text, item.Text);
                break;
            default:
                text.Append(item.Kind == JsonKind.Number ? item.Text : item.Kind.ToString()).Append(' ');
                break;
        }
    }

    /// <summary>With its length, so that no two texts run into one.</summary>
    private static void Text(StringBuilder text, string written) => text.Append(written.Length).Append(':').Append(written);
}
