using System.Text;
using RecipeLint.Shell;

namespace RecipeLint.Commands;

/// <summary>Files that are written only where none stands yet: all of them or none.</summary>
internal static class NewFiles
{
    /// <param name="target">Full path of the folder.</param>
    /// <param name="named">The folder as it is called in messages; empty to call files by their path in it.</param>
    /// <exception cref="UsageException">The folder is a file, or one of the files is there already.</exception>
    public static void Refuse(string target, string named, IEnumerable<string> paths)
    {
        if (File.Exists(target))
        {
            throw new UsageException($"'{(named.Length > 0 ? named : target)}' is a file, not a folder; nothing was written.");
        }

        foreach (var path in paths)
        {
            if (Path.Exists(Path.Combine(target, path)))
            {
                throw new UsageException($"'{Path.Combine(named, path)}' is there already and stays as it is; nothing was written.");
            }
        }
    }

    /// <inheritdoc cref="Refuse"/>
    /// <param name="world">Is told what was written.</param>
    /// <param name="target">Full path of the folder.</param>
    /// <param name="named">The folder as it is called in messages.</param>
    /// <param name="files">By path in the folder.</param>
    /// <param name="beside">Written with them or not at all; null for none.</param>
    public static void Write(
        Surroundings world, string target, string named, IReadOnlyList<(string Path, string Text)> files, WholeFile? beside = null)
    {
        Refuse(target, named, files.Select(f => f.Path));
        WholeFiles.Write(
        [
            .. files.Select(f => new WholeFile(Path.Combine(target, f.Path), Encoding.UTF8.GetBytes(f.Text))
            {
                IsNew = true,
                MakesFolder = true,
            }),
            .. beside is null ? Array.Empty<WholeFile>() : [beside],
        ]);
        foreach (var (path, _) in files)
        {
            world.Tell("wrote " + Path.Combine(named, path));
        }
    }
}
