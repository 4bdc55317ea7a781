using System.Globalization;
using System.Text;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Profiles;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Recipes;
using RecipeLint.Recipes.Files;

namespace RecipeLint.Advice.Tests.Agreement;

/// <summary>One stock that is asked about from all sides, with the workspace it stands in.</summary>
internal sealed record Bottle(string Name, Workspace Workspace, StockFacts Stock)
{
    internal static LoadOptions Load { get; } = new() { Profiles = ProfileLibrary.AllNames };

    internal static string Repository { get; } = RepositoryRoot();

    /// <summary>Every folder with files of the repository that a shop could have written.</summary>
    public static IReadOnlyList<string> Folders { get; } =
    [
        .. Directory.GetDirectories(Path.Combine(Repository, "rules")).SelectMany(Directory.GetDirectories).SelectMany(Directory.GetDirectories)
            .Concat(Directory.GetDirectories(Path.Combine(Repository, "examples")))
            .Append(Path.Combine(Repository, "tests", "RecipeLint.Rules.Tests", "GoodRecipes"))
            .Select(p => Path.GetRelativePath(Repository, p).Replace('\\', '/'))
            .Order(StringComparer.Ordinal),
    ];

    /// <summary>The facts of a folder of the repository.</summary>
    public static Facts FactsOf(string folder) => Analyzer.Analyse(WorkspaceLoader.Load(Files(folder), ["."], Load));

    /// <summary>The complete stocks of a folder of the repository.</summary>
    public static IReadOnlyList<Bottle> In(string folder) => Of(folder, Files(folder));

    private static MemoryFileTree Files(string folder)
    {
        var root = Path.Combine(Repository, folder);
        var files = new MemoryFileTree("/shop").AddFolder("/shop");
        foreach (var path in Directory.GetFiles(root, "*", SearchOption.AllDirectories).Where(p => Path.GetFileName(p) != "expected.json"))
        {
            files.Add(Path.GetRelativePath(root, path).Replace('\\', '/'), File.ReadAllBytes(path));
        }

        return files;
    }

    /// <summary>A stock of one litre.</summary>
    /// <param name="additions">Grams of each substance.</param>
    public static Bottle Of(string name, int dilution, string keptAt, params IEnumerable<(string Substance, double Grams)> additions)
    {
        var steps = additions.Select(a => string.Create(CultureInfo.InvariantCulture, $"{{\"add\": \"{a.Substance}\", \"amount\": \"{a.Grams:0.########} g\"}}"));
        var text = $$"""
            {"format": 1, "name": "{{name}}", "makes": "1 L", "dose": "1:{{dilution}}", "keep": {"at": "{{keptAt}}", "for": "3 months"},
             "steps": [{"pour": "600 mL"}, {{string.Join(", ", steps)}}, {"topUp": "1 L"}]}
            """;
        return Of(name, new MemoryFileTree("/shop").AddFolder("/shop").Add("a.stock.json", Encoding.UTF8.GetBytes(text))).Single();
    }

    private static IReadOnlyList<Bottle> Of(string name, MemoryFileTree files)
    {
        var workspace = WorkspaceLoader.Load(files, ["."], Load);
        return [.. Analyzer.Analyse(workspace).Stocks
            .Where(s => s.IsComplete && s.ComponentMoles.Any(c => c.Value > 0))
            .Select(s => new Bottle($"{name}: {s.Stock.File}", workspace, s))];
    }

    private static string RepositoryRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "RecipeLint.sln")))
        {
            folder = folder.Parent ?? throw new InvalidOperationException("No RecipeLint.sln above the test folder.");
        }

        return folder.FullName;
    }
}
