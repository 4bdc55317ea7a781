using System.Diagnostics;
using System.Formats.Tar;
using RecipeLint.Recipes.Files;

namespace RecipeLint.Shell;

/// <summary>
/// Files as a revision of the repository around the current folder has them, in memory and under the paths they have on the disk.
/// </summary>
internal static class GitRevision
{
    /// <summary>
    /// True when the text names a revision of the repository around the folder; false also where git or a repository is missing.
    /// </summary>
    public static bool IsOne(string folder, string revision) =>
        revision.Length > 0
            && revision[0] != '-'
            && Run(folder, ["rev-parse", "--verify", "--quiet", "--end-of-options", revision + "^{tree}"]) is not null;

    /// <exception cref="UsageException">The repository cannot be read.</exception>
    public static IFileTree Files(string folder, string revision)
    {
        if (Run(folder, ["rev-parse", "--show-toplevel"]) is not { } top
            || Run(folder, ["-C", Text(top), "archive", "--format=tar", revision + "^{tree}"]) is not { } archive)
        {
            throw new UsageException($"the revision '{revision}' cannot be read from the repository.");
        }

        var root = Text(top).Replace('\\', '/');
        var tree = new MemoryFileTree(folder.Replace('\\', '/')).AddFolder($"{root}/.git");
        using var reader = new TarReader(new MemoryStream(archive));
        while (reader.GetNextEntry(copyData: true) is { } entry)
        {
            if (entry.EntryType is TarEntryType.RegularFile or TarEntryType.V7RegularFile
                && entry.Name.EndsWith(".json", StringComparison.OrdinalIgnoreCase))
            {
                using var bytes = new MemoryStream();
                entry.DataStream?.CopyTo(bytes);
                tree.Add($"{root}/{entry.Name}", bytes.ToArray());
            }
            else if (entry.EntryType == TarEntryType.Directory)
            {
                tree.AddFolder($"{root}/{entry.Name.TrimEnd('/')}");
            }
        }

        return tree;
    }

    private static string Text(byte[] output) => System.Text.Encoding.UTF8.GetString(output).TrimEnd('\r', '\n');

    /// <summary>What git writes; null when it fails or is not there.</summary>
    private static byte[]? Run(string folder, string[] arguments)
    {
        var start = new ProcessStartInfo("git", arguments)
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        try
        {
            using var process = Process.Start(start)!;
            var errors = process.StandardError.ReadToEndAsync();
            using var output = new MemoryStream();
            process.StandardOutput.BaseStream.CopyTo(output);
            errors.Wait();
            process.WaitForExit();
            return process.ExitCode == 0 ? output.ToArray() : null;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            // No git on this machine.
            return null;
        }
    }
}
