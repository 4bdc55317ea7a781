namespace RecipeLint.Fuzz;

/// <summary>
/// The command line over files on the disk, for commands that write: nothing half-written stays, a refusal changes nothing, and only what was
/// named may change.
/// </summary>
internal static class DiskRun
{
    private static readonly string _base = Directory.Exists("/dev/shm") ? "/dev/shm" : Path.GetTempPath();

    /// <param name="mayChange">Paths that the command may write; "*" for new files of any name.</param>
    public static Execution Of(IReadOnlyDictionary<string, byte[]> files, string answers, IReadOnlyCollection<string> mayChange, params string[] arguments) =>
        new(() => ProgramRun.Shown(files, arguments) + answers, () => Run(files, answers, mayChange, arguments));

    public static void Run(IReadOnlyDictionary<string, byte[]> files, string answers, IReadOnlyCollection<string> mayChange, params string[] arguments)
    {
        var folder = Directory.CreateDirectory(Path.Combine(_base, $"recipelint-fuzz-{Environment.ProcessId}")).FullName;
        try
        {
            foreach (var (path, bytes) in files)
            {
                var full = Path.Combine(folder, path);
                Directory.CreateDirectory(Path.GetDirectoryName(full)!);
                File.WriteAllBytes(full, bytes);
            }

            var before = Everything(folder);
            var (code, _) = ProgramRun.Judged(files, arguments, answers, folder, world => world with { InIsTerminal = false });
            AssertOnlyAsked(arguments[0], before, Everything(folder), code, mayChange);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static void AssertOnlyAsked(string command, Dictionary<string, byte[]> before, Dictionary<string, byte[]> after, int code, IReadOnlyCollection<string> mayChange)
    {
        foreach (var (path, bytes) in after)
        {
            var isNew = !before.TryGetValue(path, out var old);
            var changed = isNew || !old.AsSpan().SequenceEqual(bytes);
            if (path.EndsWith(".partial", StringComparison.Ordinal))
            {
                throw new BrokenPromiseException($"{command}: left a file behind\n{path}");
            }

            if (changed && code == 2 && command != "learn")
            {
                throw new BrokenPromiseException($"{command}: refused and wrote\n{path}");
            }

            if (changed && !mayChange.Contains(path) && !(isNew && (mayChange.Contains("*") || command is "init" or "learn")))
            {
                throw new BrokenPromiseException($"{command}: changed what nobody named\n{path}");
            }
        }

        if (before.Keys.FirstOrDefault(p => !after.ContainsKey(p)) is { } gone)
        {
            throw new BrokenPromiseException($"{command}: a file is gone\n{gone}");
        }
    }

    private static Dictionary<string, byte[]> Everything(string folder) => Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories)
        .ToDictionary(f => Path.GetRelativePath(folder, f).Replace('\\', '/'), File.ReadAllBytes, StringComparer.Ordinal);
}
