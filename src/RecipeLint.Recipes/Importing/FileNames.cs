using System.Globalization;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Importing;

/// <summary>Names for the files of an import, each given once.</summary>
internal sealed class FileNames(string fallback, string ending)
{
    private readonly HashSet<string> _given = new(StringComparer.Ordinal);

    public string For(string name)
    {
        var slug = Slug.Of(name.Length > 80 ? name[..80] : name);
        var stem = slug.Length > 0 ? slug : fallback;
        var free = stem;
        for (var i = 2; !_given.Add(free); i++)
        {
            free = string.Create(CultureInfo.InvariantCulture, $"{stem}-{i}");
        }

        return free + ending;
    }
}
