using System.Text;
using RecipeLint.Recipes;
using RecipeLint.Recipes.Schema;

namespace RecipeLint.Shell;

/// <summary>
/// A file that a report goes to. It appears whole or not at all, and never in the place of something it must not replace.
/// </summary>
internal sealed record OutputFile(string FullPath)
{
    /// <summary>The file of a path as the user wrote it.</summary>
    /// <param name="inputs">What was read; null where nothing was.</param>
    /// <param name="takesDevice">True where a device or pipe gets the report as it is; a page there helps nobody.</param>
    /// <exception cref="UsageException">It is a folder, a device, an input, named like an input, or its folder is not there.</exception>
    public static OutputFile Of(Surroundings world, string path, Workspace? inputs, bool takesDevice = false)
    {
        if (path.Length == 0)
        {
            throw new UsageException("cannot write to a file without a name.");
        }

        var full = Path.GetFullPath(path, world.CurrentDirectory);
        var reason = Directory.Exists(full) || path.EndsWith('/') || path.EndsWith(Path.DirectorySeparatorChar) ? "it is a folder"
            : !takesDevice && WholeFiles.IsSpecial(full) ? "it is a device"
            : Path.GetDirectoryName(full) is not { } folder || !Directory.Exists(folder) ? "its folder does not exist"
            : (inputs is not null && IsInput(full, inputs)) || (File.Exists(full) && DocumentKinds.FromFileName(Real(full)) is not null)
                ? "it is one of the files read"
            : DocumentKinds.FromFileName(full) is not null ? "its name is that of a file that is read; a report would be taken for one"
            : null;
        return reason is null ? new OutputFile(full) : throw new UsageException($"cannot write '{path}': {reason}.");
    }

    public void Write(Action<TextWriter> write) => WholeFiles.Deliver([Whole(write)]);

    /// <summary>The file as it will stand on the disk, for whoever writes it together with others.</summary>
    public WholeFile Whole(Action<TextWriter> write)
    {
        using var text = new MemoryStream();
        using (var writer =
            new StreamWriter(text, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false), leaveOpen: true) { NewLine = "\n" })
        {
            write(writer);
        }

        return new WholeFile(FullPath, text.ToArray());
    }

    private static bool IsInput(string full, Workspace inputs)
    {
        var comparison = OperatingSystem.IsWindows() ? StringComparison.OrdinalIgnoreCase : StringComparison.Ordinal;
        var real = Real(full);
        return inputs.Sources.Keys.Any(f => string.Equals(Real(Path.GetFullPath(Path.Combine(inputs.Root, f))), real, comparison));
    }

    private static string Real(string full) =>
        File.Exists(full) && File.ResolveLinkTarget(full, returnFinalTarget: true) is { } target ? target.FullName : full;
}
