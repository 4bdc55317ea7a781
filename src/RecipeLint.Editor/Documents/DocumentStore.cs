using RecipeLint.Recipes.Files;

namespace RecipeLint.Editor.Documents;

/// <summary>The open documents, and the files with them in place of what is on the disk.</summary>
internal sealed class DocumentStore(IFileTree disk)
{
    private readonly SortedDictionary<string, OpenDocument> _byPath = new(StringComparer.Ordinal);
    private IFileTree? _files;

    /// <summary>In the order of their paths.</summary>
    public IReadOnlyCollection<OpenDocument> Open => _byPath.Values;

    public IFileTree Files => _files ??= new OverlayFileTree(disk, _byPath.Values.Select(d => KeyValuePair.Create(d.Path, d.Bytes)));

    /// <summary>Null for what is not open.</summary>
    public OpenDocument? Find(string uri) => FileUri.ToPath(uri) is { } path ? At(disk.FullPath(path)) : null;

    public OpenDocument? At(string path) => _byPath.GetValueOrDefault(path);

    /// <summary>Null for an address that is no file.</summary>
    public OpenDocument? Add(string uri, int version, string text)
    {
        if (FileUri.ToPath(uri) is not { } path)
        {
            return null;
        }

        var document = new OpenDocument(uri, disk.FullPath(path), version, text);
        _byPath[document.Path] = document;
        Changed();
        return document;
    }

    public void Remove(OpenDocument document)
    {
        _byPath.Remove(document.Path);
        Changed();
    }

    public void Changed() => _files = null;
}
