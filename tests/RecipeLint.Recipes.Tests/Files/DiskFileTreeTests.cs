using RecipeLint.Recipes.Files;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Tests.Files;

public sealed class DiskFileTreeTests : IDisposable
{
    private const string Stock = """{"format": 1, "makes": "1 L", "steps": [{"stir": "well"}]}""";

    private readonly string _folder = Directory.CreateTempSubdirectory("recipelint-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void FilesOfTheDiskAreReadFromTheRepositoryRoot()
    {
        Write("shop/.git/HEAD", "");
        Write("shop/recipelint.json", "{}");
        Write("shop/stocks/a.stock.json", Stock);
        Write("shop/recipes/r.recipe.json", """{"format": 1, "final": "1 L", "doses": [{"stock": "../stocks/a.stock.json", "dose": "1:100"}]}""");
        var workspace = WorkspaceLoader.Load(new DiskFileTree(Path.Combine(_folder, "shop", "recipes")), ["r.recipe.json"], new LoadOptions());
        Assert.Empty(workspace.Problems);
        Assert.EndsWith("/shop", workspace.Root, StringComparison.Ordinal);
        Assert.Equal(["recipelint.json", "recipes/r.recipe.json", "stocks/a.stock.json"], workspace.Sources.Keys);
    }

    [Fact]
    public void LinksToFilesAreFollowedInsideTheRepositoryOnly()
    {
        if (OperatingSystem.IsWindows())
        {
            // Making links needs a privilege there.
            return;
        }

        Write("shop/.git/HEAD", "");
        Write("shop/a.stock.json", Stock);
        Write("outside.stock.json", Stock);
        File.CreateSymbolicLink(Path.Combine(_folder, "shop", "inside.stock.json"), "a.stock.json");
        File.CreateSymbolicLink(Path.Combine(_folder, "shop", "out.stock.json"), "../outside.stock.json");
        File.CreateSymbolicLink(Path.Combine(_folder, "shop", "round.stock.json"), "round.stock.json");
        File.CreateSymbolicLink(Path.Combine(_folder, "shop", "dangling.stock.json"), "none.stock.json");
        Directory.CreateSymbolicLink(Path.Combine(_folder, "shop", "again"), ".");
        Directory.CreateSymbolicLink(Path.Combine(_folder, "shop", "up"), "..");
        Write("shop/r.recipe.json", """{"format": 1, "final": "1 L", "doses": [{"stock": "up/outside.stock.json", "dose": "1:100"}]}""");
        var workspace = WorkspaceLoader.Load(new DiskFileTree(_folder), ["shop"], new LoadOptions());
        Assert.Equal(["a.stock.json", "inside.stock.json"], workspace.Stocks.Select(s => s.File));
        Assert.Equal(
            [("out.stock.json", ProblemKind.ReferenceLeavesRepository), ("r.recipe.json", ProblemKind.ReferenceLeavesRepository)],
            workspace.Problems.Select(p => (p.Place.File, p.Kind)));
        Assert.Empty(workspace.Unusable);
        var named = WorkspaceLoader.Load(new DiskFileTree(_folder), ["shop/out.stock.json"], new LoadOptions());
        Assert.Equal([new UnusablePath("shop/out.stock.json", "leads out of the repository")], named.Unusable);
    }

    [Fact]
    public void ARepositoryBehindALinkIsStillOne()
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        Write("real/.git/HEAD", "");
        Write("real/a.stock.json", Stock);
        Write("real/r.recipe.json", """{"format": 1, "final": "1 L", "doses": [{"stock": "a.stock.json", "dose": "1:100"}]}""");
        Directory.CreateSymbolicLink(Path.Combine(_folder, "linked"), "real");
        var workspace = WorkspaceLoader.Load(new DiskFileTree(Path.Combine(_folder, "linked")), ["r.recipe.json"], new LoadOptions());
        Assert.Empty(workspace.Problems);
        Assert.Single(workspace.Stocks);
    }

    [Fact]
    public void PipesSocketsAndDevicesAreNoFilesAndNeverOpened()
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        using var make = System.Diagnostics.Process.Start("mkfifo", Path.Combine(_folder, "p.stock.json"));
        make.WaitForExit();
        Write("empty.stock.json", "");
        using var socket = new System.Net.Sockets.Socket(System.Net.Sockets.AddressFamily.Unix, System.Net.Sockets.SocketType.Stream, System.Net.Sockets.ProtocolType.Unspecified);
        socket.Bind(new System.Net.Sockets.UnixDomainSocketEndPoint(Path.Combine(_folder, "s.stock.json")));
        File.CreateSymbolicLink(Path.Combine(_folder, "l.stock.json"), "p.stock.json");
        File.CreateSymbolicLink(Path.Combine(_folder, "z.stock.json"), "/dev/zero");
        var files = new DiskFileTree(_folder);
        foreach (var name in (string[])["p.stock.json", "s.stock.json", "l.stock.json", "z.stock.json"])
        {
            Assert.Equal(EntryKind.Other, files.Kind(files.FullPath(name)));
            Assert.Equal("it is not a regular file", files.Read(files.FullPath(name), 100).Failure);
            var named = WorkspaceLoader.Load(files, [name], new LoadOptions());
            Assert.Equal([new UnusablePath(name, "is neither a regular file nor a folder")], named.Unusable);
        }

        Assert.Equal(EntryKind.File, files.Kind(files.FullPath("empty.stock.json")));
        Assert.Equal(["empty.stock.json"], WorkspaceLoader.Load(files, ["."], new LoadOptions()).Sources.Keys);
    }

    [Fact]
    public void NothingThatStandsOnADiskThrows()
    {
        var files = new DiskFileTree(_folder);
        Assert.Equal(EntryKind.Missing, files.Kind(files.FullPath("no\0name")));
        Assert.Equal(EntryKind.Missing, files.Kind(files.FullPath(new string('x', 5000))));
        Assert.Empty(files.Names(files.FullPath("none")));
        Assert.NotNull(files.Read(files.FullPath("none"), 10).Failure);
        Assert.NotNull(files.Read(files.FullPath("."), 10).Failure);
        Write("big.json", "12345678901");
        Assert.Equal(11, files.Read(files.FullPath("big.json"), 10).TooLarge);
    }

    private void Write(string path, string text)
    {
        var full = Path.Combine(_folder, path);
        Directory.CreateDirectory(Path.GetDirectoryName(full)!);
        File.WriteAllText(full, text);
    }
}
