using System.Text;
using RecipeLint.Recipes.Files;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Tests.Documents;

/// <summary>A repository in memory. The text between « and » is where the one problem has to be.</summary>
internal sealed class InMemoryShop
{
    private readonly MemoryFileTree _files = new MemoryFileTree("/shop").AddFolder("/shop/.git");
    private (string File, LineSpan Span)? _marked;

    public LoadOptions Options { get; init; } = new();

    public MemoryFileTree Files => _files;

    public static InMemoryShop Of(params ReadOnlySpan<(string Path, string Text)> files)
    {
        var shop = new InMemoryShop();
        foreach (var (path, text) in files)
        {
            shop.Add(path, text);
        }

        return shop;
    }

    public InMemoryShop Add(string path, string text)
    {
        var start = text.IndexOf('«', StringComparison.Ordinal);
        if (start >= 0)
        {
            text = text.Remove(start, 1);
            var end = text.IndexOf('»', StringComparison.Ordinal);
            text = text.Remove(end, 1);
            _marked = (path, new LineSpan(PositionOf(text, start), PositionOf(text, end)));
        }

        _files.Add(path, text);
        return this;
    }

    public Workspace Load(params string[] asked) => WorkspaceLoader.Load(_files, asked.Length > 0 ? asked : ["."], Options);

    /// <summary>Loads everything, expects exactly one problem, of this kind and at the marked place.</summary>
    public Problem Single(ProblemKind kind)
    {
        var workspace = Load();
        var problem = Assert.Single(workspace.Problems);
        Assert.Equal(kind, problem.Kind);
        var source = workspace.Sources[problem.Place.File];
        Assert.Equal(_marked!.Value.File, problem.Place.File);
        Assert.Equal(_marked.Value.Span, source.ToLines(source.Resolve(problem.Place)));
        return problem;
    }

    /// <summary>Loads everything and expects nothing wrong.</summary>
    public Workspace Clean()
    {
        var workspace = Load();
        Assert.Empty(workspace.Problems);
        Assert.Empty(workspace.Unusable);
        return workspace;
    }

    private static LinePosition PositionOf(string text, int offset)
    {
        var source = new SourceFile("", Encoding.UTF8.GetBytes(text));
        return source.ToPosition(Encoding.UTF8.GetByteCount(text.AsSpan(0, offset)));
    }
}
