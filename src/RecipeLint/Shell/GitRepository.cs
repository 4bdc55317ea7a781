using System.ComponentModel;
using System.Diagnostics;
using System.Globalization;
using System.Text;
using RecipeLint.Recipes.Files;

namespace RecipeLint.Shell;

/// <summary>
/// A repository, asked through git itself as a process: what has changed, and the files of a revision or of the index, in memory and under
/// the paths they have on the disk. Nothing is written and nothing fetched.
/// </summary>
internal sealed class GitRepository
{
    private const string RegularMode = "100";
    private const string LinkMode = "120000";

    private GitRepository(string top) => Top = top;

    /// <summary>Full path of the working tree, with forward slashes and without links.</summary>
    public string Top { get; }

    /// <summary>The repository that a folder lies in.</summary>
    /// <exception cref="UsageException">No git, or no repository there.</exception>
    public static GitRepository Around(string folder)
    {
        // Whoever sets this, as git does for its hooks, means the repository of the current folder.
        folder = Environment.GetEnvironmentVariable("GIT_DIR") is { Length: > 0 } ? Directory.GetCurrentDirectory() : folder;
        var answer = Run(folder, null, "rev-parse", "--show-toplevel")
            ?? throw new UsageException("there is no git on this machine, which knows what has changed.");
        return answer.Code == 0 && Line(answer.Out) is { Length: > 0 } top
            ? new GitRepository(top.Replace('\\', '/'))
            : throw new UsageException($"'{folder}' lies in no repository that git can read ({Complaint(answer)}).");
    }

    /// <summary>
    /// True when the text names a revision of the repository around the folder; false also where git or a repository is missing.
    /// </summary>
    public static bool IsRevision(string folder, string text) =>
        text.Length > 0 && text[0] != '-'
            && Run(folder, null, "rev-parse", "--verify", "--quiet", "--end-of-options", text + "^{tree}") is { Code: 0 };

    /// <summary>
    /// What changes since a revision are counted from: where this branch left it, so that what others did there since does not count; the
    /// revision itself where the two have nothing in common.
    /// </summary>
    /// <exception cref="UsageException">The repository does not know the revision.</exception>
    public string BaseOf(string revision)
    {
        if (!IsRevision(Top, revision))
        {
            var isShallow = Run(Top, null, "rev-parse", "--is-shallow-repository") is { Code: 0 } answer && Line(answer.Out) == "true";
            throw new UsageException($"the repository knows no revision '{revision}'" + (isShallow
                ? "; it is a shallow clone, which has only its newest revisions, so fetch more of them."
                : Branches() is { Length: > 0 } branches
                ? $"; it has the branch {string.Join(", ", branches.Select(b => $"'{b}'"))}."
                : "."));
        }

        return Run(Top, null, "merge-base", revision, "HEAD") is { Code: 0 } common ? Line(common.Out) : revision + "^{tree}";
    }

    /// <summary>The first few branches by name: who asks for 'main' may have a 'master'.</summary>
    private string[] Branches() =>
        Run(Top, null, "for-each-ref", "--format=%(refname:short)", "--count=3", "refs/heads") is { Code: 0 } answer
            ? Line(answer.Out).Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
            : [];

    /// <summary>
    /// Full paths of our files that differ between a revision and the working tree, deleted ones and those that git does not know yet among
    /// them. Git only lists what it holds; contents are compared here (<see cref="BlobDigest"/>).
    /// </summary>
    public IReadOnlyList<string> ChangedSince(string revision)
    {
        var before = Entries(Ask("ls-tree", "-r", "-z", "--full-tree", revision), fields => (fields[0], fields[2]))
            .Where(e => IsRead(e.Path, e.Mode)).ToList();
        // "H a.stock.json", with an S for what a sparse working tree leaves out.
        var known = Split(Ask("ls-files", "-t", "--full-name", "-z")).ToLookup(l => $"{Top}/{l[2..]}", l => l[0], StringComparer.Ordinal);
        var held = before.Select(e => e.Path).ToHashSet(StringComparer.Ordinal);
        return
        [
            .. before
                .Where(e => !BlobDigest.IsOf(e.Path, e.Id, e.Mode == LinkMode) && !(known[e.Path].Contains('S') && !Path.Exists(e.Path)))
                .Select(e => e.Path)
                .Concat(known.Select(k => k.Key).Where(p => !held.Contains(p)))
                .Concat(Paths("ls-files", "--others", "--exclude-standard", "--full-name", "-z"))
                .Distinct(StringComparer.Ordinal),
        ];
    }

    /// <summary>Full paths of the files whose content in the index differs from the newest revision, deleted ones among them.</summary>
    public IReadOnlyList<string> Staged() => [.. Paths("diff", "--cached", "--name-only", "-z", "--no-renames", "--no-ext-diff", "--")];

    /// <summary>The newest revision; null in a repository that has none yet.</summary>
    public string? Newest() => IsRevision(Top, "HEAD") ? "HEAD" : null;

    /// <summary>The files of a revision.</summary>
    /// <param name="currentFolder">The folder that relative paths start from.</param>
    public IFileTree FilesOf(string revision, string currentFolder) =>
        Tree(Ask("ls-tree", "-r", "-z", "--full-tree", revision), currentFolder, fields => (fields[0], fields[2]));

    /// <summary>The files as they are staged.</summary>
    /// <exception cref="UsageException">A merge is under way, so the index holds several states of a file.</exception>
    public IFileTree StagedFiles(string currentFolder) => Tree(
        Ask("ls-files", "--stage", "--full-name", "-z"),
        currentFolder,
        fields => fields[2] == "0" ? (fields[0], fields[1])
            : throw new UsageException("a merge is under way and some files have several states; resolve it, stage them, and ask again."));

    private MemoryFileTree Tree(byte[] listing, string currentFolder, Func<string[], (string Mode, string Id)> read)
    {
        var tree = new MemoryFileTree(currentFolder.Replace('\\', '/')).AddFolder($"{Top}/.git");
        var wanted = new List<(string Path, string Id, bool IsLink)>();
        foreach (var (path, mode, id) in Entries(listing, read))
        {
            tree.AddFolder(path[..path.LastIndexOf('/')]);
            if (IsRead(path, mode))
            {
                wanted.Add((path, id, mode == LinkMode));
            }
        }

        foreach (var ((path, _, isLink), bytes) in wanted.Zip(Contents([.. wanted.Select(w => w.Id)])))
        {
            _ = isLink ? tree.AddLink(path, Encoding.UTF8.GetString(bytes)) : tree.Add(path, bytes);
        }

        return tree;
    }

    /// <summary>Whether a file can have to do with us.</summary>
    private static bool IsRead(string path, string mode) => mode == LinkMode || (mode.StartsWith(RegularMode, StringComparison.Ordinal)
        && (path.EndsWith(".json", StringComparison.OrdinalIgnoreCase) || path.EndsWith("/.gitignore", StringComparison.Ordinal)));

    /// <summary>The entries of a listing: fields, a tab, a path.</summary>
    private IEnumerable<(string Path, string Mode, string Id)> Entries(byte[] listing, Func<string[], (string Mode, string Id)> read)
    {
        foreach (var entry in Split(listing))
        {
            var tab = entry.IndexOf('\t', StringComparison.Ordinal);
            var (mode, id) = read(entry[..tab].Split(' '));
            yield return ($"{Top}/{entry[(tab + 1)..]}", mode, id);
        }
    }

    /// <summary>What objects hold, in the order asked, by one process for all.</summary>
    private List<byte[]> Contents(IReadOnlyList<string> ids)
    {
        var answer = Run(Top, string.Concat(ids.Select(id => id + "\n")), "cat-file", "--batch");
        var found = new List<byte[]>(ids.Count);
        var at = 0;
        while (answer is { Code: 0 } && found.Count < ids.Count)
        {
            var end = Array.IndexOf(answer.Out, (byte)'\n', at);
            var head = end < 0 ? [] : Encoding.ASCII.GetString(answer.Out, at, end - at).Split(' ');
            if (head.Length != 3 || !int.TryParse(head[2], NumberStyles.None, CultureInfo.InvariantCulture, out var size))
            {
                break;
            }

            found.Add(answer.Out[(end + 1)..(end + 1 + size)]);
            at = end + size + 2;
        }

        return found.Count == ids.Count
            ? found
            : throw new UsageException("git does not give out every file of the repository; an incomplete clone has only some of them.");
    }

    private IEnumerable<string> Paths(params string[] arguments) => Split(Ask(arguments)).Select(p => $"{Top}/{p}");

    /// <exception cref="UsageException">Git fails.</exception>
    private byte[] Ask(params string[] arguments) => Run(Top, null, arguments) switch
    {
        { Code: 0 } answer => answer.Out,
        { } answer => throw new UsageException($"git cannot read the repository: {Complaint(answer)}."),
        null => throw new UsageException("there is no git on this machine, which knows what has changed."),
    };

    private static string[] Split(byte[] output) =>
        Encoding.UTF8.GetString(output).Split('\0', StringSplitOptions.RemoveEmptyEntries);

    private static string Line(byte[] output) => Encoding.UTF8.GetString(output).TrimEnd('\r', '\n');

    /// <summary>The first thing that git complains of.</summary>
    private static string Complaint(Answer answer) => answer.Error.Split('\n')[0].Trim() is { Length: > 0 } said
        ? said.TrimEnd('.')
        : string.Create(CultureInfo.InvariantCulture, $"exit code {answer.Code}");

    /// <summary>What git answers; null where there is none on this machine.</summary>
    private static Answer? Run(string folder, string? input, params string[] arguments)
    {
        // Whatever program the repository's own settings name is anybody's: no monitor, no hook, no pager, and nothing is fetched by any
        // way.
        var start = new ProcessStartInfo(
            "git", ["--no-pager", "--no-optional-locks", "-c", "core.fsmonitor=false", "-c", "core.hooksPath=/dev/null", .. arguments])
        {
            WorkingDirectory = folder,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        (start.Environment["GIT_NO_LAZY_FETCH"], start.Environment["GIT_ALLOW_PROTOCOL"]) = ("1", "none");
        (start.Environment["GIT_TERMINAL_PROMPT"], start.Environment["LC_ALL"]) = ("0", "C");
        try
        {
            using var process = Process.Start(start)!;
            var errors = process.StandardError.ReadToEndAsync();
            var asked = Task.Run(() =>
            {
                using var to = process.StandardInput;
                to.Write(input);
            });
            using var output = new MemoryStream();
            process.StandardOutput.BaseStream.CopyTo(output);
            process.WaitForExit();
            try
            {
                asked.Wait();
            }
            catch (AggregateException) when (process.ExitCode != 0)
            {
                // Git ended before it had read everything; its exit code says so.
            }

            return new Answer(process.ExitCode, output.ToArray(), errors.Result);
        }
        catch (Win32Exception)
        {
            return null;
        }
    }

    private sealed record Answer(int Code, byte[] Out, string Error);
}
