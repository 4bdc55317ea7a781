using System.Globalization;
using RecipeLint.Recipes.Files;

namespace RecipeLint.Shell;

/// <summary>
/// A file that a command reads besides the shop, such as a baseline, a table or a log. Pipes and devices are refused, never waited for, and
/// nothing larger than a bound is taken into memory.
/// </summary>
internal static class NamedFile
{
    /// <param name="named">As the user wrote it.</param>
    /// <param name="called">What it is in messages, with a blank behind it ("the baseline "); empty where the name says it.</param>
    /// <param name="limit">In bytes.</param>
    /// <param name="missing">What to do where it is not there; empty where that is plain.</param>
    /// <exception cref="UsageException">It is not there, no regular file, too large, or cannot be read.</exception>
    public static byte[] Read(Surroundings world, string named, string called, int limit, string missing = "")
    {
        if (named.Length == 0)
        {
            throw new UsageException($"{called}'' names no file.");
        }

        var files = world.Files(world.CurrentDirectory);
        var read = files.Read(files.FullPath(named), limit);
        return read switch
        {
            { Bytes: { } bytes } => bytes,
            { TooLarge: not null } => throw new UsageException(string.Create(
                CultureInfo.InvariantCulture, $"{called}'{named}' is larger than {limit / 1_000_000} MB, so it is not read.")),
            _ => throw new UsageException(files.Kind(files.FullPath(named)) switch
            {
                EntryKind.Missing => $"{called}'{named}' does not exist{missing}.",
                EntryKind.File => $"{called}'{named}' cannot be read: {read.Failure ?? "it is no file"}.",
                EntryKind.Folder or EntryKind.LinkedFolder => $"{called}'{named}' is a folder; name a file in it.",
                _ => $"{called}'{named}' is no regular file.",
            }),
        };
    }

    /// <summary>The same; null where nothing stands there.</summary>
    /// <inheritdoc cref="Read"/>
    public static byte[]? ReadIfThere(Surroundings world, string named, string called, int limit)
    {
        var files = world.Files(world.CurrentDirectory);
        return files.Kind(files.FullPath(named)) == EntryKind.Missing ? null : Read(world, named, called, limit);
    }
}
