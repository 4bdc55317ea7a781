using RecipeLint.Recipes.Fields;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Schema;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Files;

/// <summary>Reads, parses and checks each file once.</summary>
/// <param name="files">Where bytes come from.</param>
/// <param name="root">Full path of the repository root.</param>
/// <param name="sizeLimit">In bytes.</param>
/// <param name="kept">What earlier runs have parsed; null parses anew.</param>
/// <param name="repeated">What this run has parsed for other files of the same contents.</param>
internal sealed class SourceStore(IFileTree files, string root, int sizeLimit, ParsedFiles? kept, RepeatedContents repeated)
{
    private readonly Dictionary<string, SourceFile> _sources = new(StringComparer.Ordinal);
    private readonly List<Problem> _problems = [];

    public IReadOnlyDictionary<string, SourceFile> Sources => _sources;

    /// <summary>In the order files were read.</summary>
    public IReadOnlyList<Problem> Problems => _problems;

    /// <summary>Why files could not be read at all, by path; each is also among the problems.</summary>
    public Dictionary<string, string> Failures { get; } = new(StringComparer.Ordinal);

    public void Report(IEnumerable<Problem> problems) => _problems.AddRange(problems);

    /// <summary>
    /// A path as problems name it: relative to the root, or full where it lies elsewhere (a settings file named by hand).
    /// </summary>
    public string PathOf(string full) => FilePaths.IsWithin(full, root) ? FilePaths.Below(full, root) : full;

    public string FullPathOf(string path) =>
        path.StartsWith('/') || path.AsSpan(0, Math.Min(2, path.Length)).EndsWith(":") ? path : FilePaths.Join(root, path);

    public bool Has(string path) => _sources.ContainsKey(path);

    /// <summary>Lists a file whose bytes are not looked at, and says why.</summary>
    public void Refuse(Problem problem)
    {
        _sources[problem.Place.File] = new SourceFile(problem.Place.File, []);
        _problems.Add(problem);
    }

    /// <summary>
    /// Reads a file and what its kind makes of it; default when it has no tree or is too big to be looked into. Problems of bytes, shape
    /// and content come out in this order.
    /// </summary>
    public T? Read<T>(string path, DocumentKind kind, Func<FieldReader, JsonItem, T?> read) =>
        Take(Look(path, kind, (fields, item, _) => read(fields, item)));

    /// <summary>The same of a file that serves many: whoever shares the list of what serves reads it once.</summary>
    public T? ReadShared<T>(ServingFiles served, string path, DocumentKind kind, Func<FieldReader, JsonItem, SourceFile, T?> read) =>
        Take(served.Once(path, kind, () => Look(path, kind, read)));

    private T? Take<T>(FileRead<T> file)
    {
        _sources[file.Source.Path] = file.Source;
        _problems.AddRange(file.Problems);
        if (file.Failure is { } failure)
        {
            Failures[file.Source.Path] = failure;
        }

        return file.Document;
    }

    private FileRead<T> Look<T>(string path, DocumentKind kind, Func<FieldReader, JsonItem, SourceFile, T?> read)
    {
        var bytes = files.Read(FullPathOf(path), sizeLimit);
        if (bytes.Bytes is null)
        {
            return bytes.TooLarge is { } size
                ? new FileRead<T>(new SourceFile(path, []), [JsonReading.TooLarge(path, size, sizeLimit)], default, null)
                : new FileRead<T>(
                    new SourceFile(path, []),
                    [new Problem(ProblemKind.MalformedFile, Place.Whole(path), $"This file cannot be read: {bytes.Failure}.")],
                    default,
                    $"cannot be read: {bytes.Failure}");
        }

        var (parsed, shape, canBeRead) = kept?.Read(path, bytes.Bytes, kind, sizeLimit)
            ?? repeated.Read(path, bytes.Bytes, kind, sizeLimit);
        if (!canBeRead || parsed.Source.Tree is not { } tree)
        {
            return new FileRead<T>(parsed.Source, [.. parsed.Problems, .. shape], default, null);
        }

        var fields = new FieldReader(parsed.Source, parsed.Problems.Concat(shape));
        var document = read(fields, tree.Root, parsed.Source);
        return new FileRead<T>(parsed.Source, [.. parsed.Problems, .. shape, .. fields.Close()], document, null);
    }
}

/// <summary>What one file came to.</summary>
/// <param name="Source">Without bytes where they could not be had.</param>
/// <param name="Problems">Of bytes, shape and content, in this order.</param>
/// <param name="Document">Default where it cannot be used.</param>
/// <param name="Failure">Why its bytes could not be had; null where they could.</param>
internal sealed record FileRead<T>(SourceFile Source, IReadOnlyList<Problem> Problems, T? Document, string? Failure);
