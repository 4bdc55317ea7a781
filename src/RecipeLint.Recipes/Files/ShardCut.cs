using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Schema;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Files;

/// <summary>
/// Cuts what was asked for into shards by shop, so that no finding depends on the cut: the files of one settings file stay together, and
/// so do shops that name each other's files or are served by the same list of substances, profile or rule. Files without settings are one
/// shop.
/// </summary>
internal static class ShardCut
{
    /// <summary>The paths of one shard, in their order. The next shop always goes to the shard with the fewest files.</summary>
    public static IReadOnlyList<string> Of(IFileTree files, string root, IReadOnlyList<string> paths, LoadOptions options, Shard shard)
    {
        var filled = new List<string>[shard.Of];
        for (var i = 0; i < filled.Length; i++)
        {
            filled[i] = [];
        }

        foreach (var shop in Groups(files, root, paths, options).Among(paths))
        {
            filled.MinBy(f => f.Count)!.AddRange(shop);
        }

        var own = filled[shard.Number - 1];
        own.Sort(StringComparer.Ordinal);
        return own;
    }

    private static FileGroups Groups(IFileTree files, string root, IReadOnlyList<string> paths, LoadOptions options)
    {
        var groups = new FileGroups();
        var shops = new Dictionary<string, string>(StringComparer.Ordinal);
        var serving = new HashSet<string>(StringComparer.Ordinal);
        foreach (var path in paths)
        {
            var folder = FilePaths.FolderOf(path);
            var shop = ShopOf(folder);
            groups.Join(Key(shop), path);
            foreach (var named in NamedFiles.In(files.Read(path, JsonReading.DefaultSizeLimit).Bytes ?? [], _ => true))
            {
                if (FilePaths.Resolve(folder, named) is { } full)
                {
                    groups.Join(path, full);
                    groups.Join(path, Key(ShopOf(FilePaths.FolderOf(full))));
                }
            }

            if (DocumentKinds.FromFileName(path) is DocumentKind.Substances or DocumentKind.Profile or DocumentKind.HouseRule)
            {
                serving.Add(shop.Length > 0 ? shop : folder);
            }
        }

        // A folder's lists serve all shops below it.
        foreach (var shop in shops.Values.Distinct(StringComparer.Ordinal).Where(s => s.Length > 0).ToList())
        {
            foreach (var above in FilePaths.Upwards(shop, root).Where(serving.Contains))
            {
                groups.Join(Key(shop), Key(ShopOf(above)));
            }
        }

        return groups;

        string ShopOf(string folder)
        {
            if (options.NoConfig || options.ConfigFile is not null)
            {
                return "";
            }

            if (!shops.TryGetValue(folder, out var known))
            {
                known = FilePaths.Upwards(folder, root)
                    .FirstOrDefault(f => files.Kind(FilePaths.Join(f, DocumentKinds.SettingsFileName)) == EntryKind.File) ?? "";
                shops.Add(folder, known);
            }

            return known;
        }
    }

    /// <summary>No path of a file looks like this.</summary>
    private static string Key(string shop) => "shop\n" + shop;
}
