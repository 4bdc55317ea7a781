using RecipeLint.Analysis.Profiles;
using RecipeLint.Recipes.Files;

namespace RecipeLint.Shell;

/// <summary>What a command was asked to look at, before anything is read.</summary>
/// <param name="Files">Where files are read from, standard input included.</param>
/// <param name="Asked">Files and folders, as the user wrote them.</param>
/// <param name="FromStandardInput">The file that standard input stands for, as the user wrote it; null when none does.</param>
internal sealed record Input(IFileTree Files, IReadOnlyList<string> Asked, LoadOptions Load, string? FromStandardInput)
{
    /// <exception cref="UsageException">The options do not go together.</exception>
    public static Input Of(Surroundings world, string[] paths, string? stdinName, string? config, bool noConfig)
    {
        if (config is not null && noConfig)
        {
            throw new UsageException("'--config' and '--no-config' exclude each other.");
        }

        IFileTree files = world.Files(world.CurrentDirectory);
        var asked = paths;
        if (paths.Contains("-"))
        {
            if (stdinName is null)
            {
                throw new UsageException("'-' reads standard input; say with '--stdin-name' which file it stands for.");
            }

            files = new OverlayFileTree(files, files.FullPath(stdinName), ReadAll(world));
            asked = [.. paths.Select(p => p == "-" ? stdinName : p)];
        }
        else if (stdinName is not null)
        {
            throw new UsageException("'--stdin-name' goes with the path '-'.");
        }

        return new Input(
            files, asked, new LoadOptions { ConfigFile = config, NoConfig = noConfig, Profiles = ProfileLibrary.AllNames }, stdinName);
    }

    private static byte[] ReadAll(Surroundings world)
    {
        using var input = world.StandardInput();
        using var memory = new MemoryStream();
        input.CopyTo(memory);
        return memory.ToArray();
    }
}
