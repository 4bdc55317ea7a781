using RecipeLint.Analysis.Profiles;
using RecipeLint.Recipes.Files;
using RecipeLint.Recipes.Shop;

namespace RecipeLint.Shell;

/// <summary>The settings of the shop that somebody stands in, for commands that name no file.</summary>
internal static class OwnShop
{
    /// <summary>The nearest settings upwards, with the rules that the shop has written itself; empty ones where there are none.</summary>
    /// <param name="config">As the user wrote it; null for the nearest.</param>
    /// <exception cref="UsageException">A settings file that was named cannot be used.</exception>
    public static ShopSettings Around(Surroundings world, string? config)
    {
        var files = world.Files(world.CurrentDirectory);
        if ((config ?? Nearest(files)) is not { } path)
        {
            return new ShopSettings();
        }

        var workspace = WorkspaceLoader.Load(files, [path], new LoadOptions { Profiles = ProfileLibrary.AllNames });
        Session.RefuseUnusable(workspace);
        return workspace.Asked.Count == 1 ? workspace.SettingsFor(workspace.Asked.Single()) : new ShopSettings();
    }

    private static string? Nearest(IFileTree files)
    {
        for (var at = files.CurrentFolder; ; at = at[..at.LastIndexOf('/')])
        {
            var settings = $"{at.TrimEnd('/')}/{LoadOptions.SettingsFileName}";
            if (files.Kind(settings) == EntryKind.File)
            {
                return settings;
            }

            if (files.Kind($"{at.TrimEnd('/')}/.git") != EntryKind.Missing || at.LastIndexOf('/') <= 0)
            {
                return null;
            }
        }
    }
}
