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
        Made("bench-sheet", "bench-sheet", "examples/quillmere/stocks/trace.stock.json");
        Made("label", "label", "examples/quillmere/stocks/part-a.stock.json", "--format", "html", "--copies", "3");
        Made("comparison", "compare", "examples/quillmere-first-draft", "examples/quillmere", "--format", "html");
        Made("batch", "bench-sheet", Shop("stocks/part-a.stock.json"), "--actual", Shop("run.batch.json"));
        foreach (var file in RuleHandbook.Make("0.1.0"))
        {
            _folder.Write("book/" + file.Path, file.Text);
        }

        foreach (var path in new[] { "index", "first-week", "week/day-1", "rules/calcium-with-sulfate", "files-and-units", "reading-a-finding", "lessons/precipitation", "lessons/documents", "lessons/weighing" })
        {
            All["book-" + path[(path.LastIndexOf('/') + 1)..]] = Path.Combine(_folder.Path, "book", path + ".html");
        }
    }

    /// <summary>Full paths by the name of the kind.</summary>
    public Dictionary<string, string> All { get; } = new(StringComparer.Ordinal);

    public void Dispose() => _folder.Dispose();

    /// <summary>A file of a copy of the shop that also has a record of a batch.</summary>
    private string Shop(string file)
    {
        var from = Path.Combine(Repository.Root, "examples", "quillmere");
        foreach (var path in Directory.EnumerateFiles(from, "*.json", SearchOption.AllDirectories))
        {
            _folder.Write(Path.Combine("shop", Path.GetRelativePath(from, path)), File.ReadAllText(path));
        }

        _folder.Write(
            "shop/run.batch.json",
            """
            {"format": 1, "stock": "stocks/part-a.stock.json", "made": "2026-03-02", "by": "bench 2",
             "steps": [{"step": "potassium-nitrate", "amount": "20 g", "lot": "24-117"}], "readings": [{"pH": 3.1}],
             "seen": [{"after": "3 days", "at": "8..10 °C", "what": "clear"}]}
            """);
        return Path.Combine(_folder.Path, "shop", file);
    }

    private void Made(string name, params string[] arguments)
    {
        var path = Path.Combine(_folder.Path, name + ".html");
        var answer = Cli.RunIn(Repository.Root, null, [.. arguments, "-o", path]);
        Assert.True(answer.Code == (name == "batch" ? 1 : 0), answer.Error);
        All[name] = path;
    }
}
