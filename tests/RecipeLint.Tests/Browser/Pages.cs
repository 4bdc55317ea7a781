using RecipeLint.Reports.Handbook;
using RecipeLint.Reports.Tests.Support;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests.Browser;

/// <summary>Every kind of page, written once for all tests that open them.</summary>
public sealed class Pages : IDisposable
{
    private readonly Scratch _folder = new();

    public Pages()
    {
        Made("recipe", "report", "examples/quillmere/recipes/lettuce.recipe.json");
        Made("findings", "report", "examples/quillmere-first-draft/recipes/seedlings.recipe.json");
        Made("stock", "report", "examples/quillmere-first-draft/stocks/part-b.stock.json");
        Made("trace", "report", "examples/quillmere/stocks/trace.stock.json");
        Made("water", "report", "examples/quillmere/water/rain.water.json");
        Made("broken", "report", "examples/quillmere-first-draft/stocks/basil.stock.json");
        Made("overview", "report", "examples");
        foreach (var file in RuleHandbook.Make("0.1.0"))
        {
            _folder.Write("book/" + file.Path, file.Text);
        }

        foreach (var path in new[] { "index", "first-week", "week/day-1", "rules/calcium-with-sulfate", "files-and-units", "reading-a-finding" })
        {
            All["book-" + path[(path.LastIndexOf('/') + 1)..]] = Path.Combine(_folder.Path, "book", path + ".html");
        }
    }

    /// <summary>Full paths by the name of the kind.</summary>
    public Dictionary<string, string> All { get; } = new(StringComparer.Ordinal);

    public void Dispose() => _folder.Dispose();

    private void Made(string name, params string[] arguments)
    {
        var path = Path.Combine(_folder.Path, name + ".html");
        var answer = Cli.RunIn(Repository.Root, null, [.. arguments, "-o", path]);
        Assert.True(answer.Code == 0, answer.Error);
        All[name] = path;
    }
}
