using System.Text;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Profiles;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Recipes;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Files;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Tests.Folders;

namespace RecipeLint.Rules.Tests.Mutations;

/// <summary>An invented shop whose files raise no warning: what the mutants are made from.</summary>
internal sealed class CleanShop
{
    private readonly MemoryFileTree _files = new MemoryFileTree("/shop").AddFolder("/shop");

    private CleanShop(string name, string folder)
    {
        Name = name;
        foreach (var path in Directory.GetFiles(folder, "*.json", SearchOption.AllDirectories).Order(StringComparer.Ordinal))
        {
            _files.Add(Path.GetRelativePath(folder, path).Replace('\\', '/'), File.ReadAllBytes(path));
        }

        Workspace = Load(_files);
        Facts = Analyzer.Analyse(Workspace);
    }

    /// <summary>The clean example of the repository, and a second shop beside this test with hard water, vinegar, acid dosing and labels.</summary>
    internal static IReadOnlyList<CleanShop> All { get; } =
    [
        new("quillmere", Path.Combine(RuleFolder.Repository, "examples", "quillmere")),
        new("tarnhollow", Path.Combine(RuleFolder.Repository, "tests", "RecipeLint.Rules.Tests", "Mutations", "tarnhollow")),
    ];

    internal string Name { get; }

    internal Workspace Workspace { get; }

    internal Facts Facts { get; }

    /// <summary>The one recipe of the shop.</summary>
    internal RecipeFacts Recipe => Facts.Recipes.Single();

    /// <summary>Every line of a stock that puts something in, in the order of files and steps.</summary>
    internal IReadOnlyList<Line> Lines =>
    [
        .. Facts.Stocks.SelectMany(s => s.Stock.Steps.Select((step, index) => (step, index))
            .Where(p => p.step is AddStep or AliquotStep)
            .Select(p => new Line(s, p.step, p.index, Root(s.Stock.File)["steps"]!.Items[p.index]))),
    ];

    internal JsonItem Root(string file) => Workspace.Sources[file].Tree!.Root;

    /// <summary>The text of a value as it stands in its file.</summary>
    internal string TextOf(string file, JsonItem item) => Workspace.Sources[file].Excerpt(item.Span);

    /// <summary>A file with some spans exchanged for other text.</summary>
    internal FileText Edit(string file, params (ByteSpan Span, string Text)[] edits)
    {
        var bytes = Workspace.Sources[file].Bytes.ToArray();
        foreach (var (span, text) in edits.OrderByDescending(e => e.Span.Start))
        {
            bytes = [.. bytes[..span.Start], .. Encoding.UTF8.GetBytes(text), .. bytes[span.End..]];
        }

        return new FileText(file, bytes);
    }

    /// <summary>A list of a file put together anew from the texts of its items, set out as before.</summary>
    internal (ByteSpan Span, string Text) List(string file, JsonItem list, IEnumerable<string> items)
    {
        var source = Workspace.Sources[file];
        var between = list.Items.Count > 1 ? source.Excerpt(new ByteSpan(list.Items[0].Span.End, list.Items[1].Span.Start - list.Items[0].Span.End)) : ",\n    ";
        var inner = new ByteSpan(list.Items[0].Span.Start, list.Items[^1].Span.End - list.Items[0].Span.Start);
        return (inner, string.Join(between, items));
    }

    /// <summary>A member taken out with its comma.</summary>
    internal (ByteSpan Span, string Text) Without(string file, JsonItem parent, string key)
    {
        var members = parent.Members;
        var at = members.Select((m, i) => (m, i)).First(p => p.m.Name == key).i;
        var start = at > 0 ? members[at - 1].Value.Span.End : members[at].Value.KeySpan!.Value.Start;
        var end = at > 0 ? members[at].Value.Span.End : members[1].Value.KeySpan!.Value.Start;
        return (new ByteSpan(start, end - start), "");
    }

    /// <summary>The facts of the shop with a mutant's files in place of its own.</summary>
    internal Facts FactsOf(Mutant mutant) =>
        Analyzer.Analyse(Load(mutant.Files.Aggregate((IFileTree)_files, (tree, file) => new OverlayFileTree(tree, file.Path, file.Bytes))));

    /// <param name="rules">Null for all.</param>
    internal static LintResult Judge(Facts facts, IReadOnlyList<Rule>? rules = null) =>
        LintEngine.Judge(facts, new EngineOptions { Today = new DateOnly(2026, 11, 25), Rules = rules ?? RuleList.All });

    private static Workspace Load(IFileTree files) => WorkspaceLoader.Load(files, ["."], new LoadOptions { Profiles = ProfileLibrary.AllNames });
}

/// <summary>One step that puts something in.</summary>
/// <param name="Item">The step as it stands in the file.</param>
internal sealed record Line(StockFacts Stock, Step Step, int Index, JsonItem Item)
{
    internal string File => Stock.Stock.File;

    internal Place Place => Step.Place;

    /// <summary>What it brings; more than one entry for a part of another stock.</summary>
    internal IReadOnlyList<AdditionFacts> Additions => [.. Stock.Additions.Where(a => a.Place == Step.Place)];

    internal string What => Item["add"]!.Text;

    internal string Amount => Item["amount"]!.Text;

    internal string Called => $"{Short.Of(File)} {Step.Id}";
}

internal static class Short
{
    /// <summary>"stocks/part-a.stock.json" as "part-a".</summary>
    internal static string Of(string file) => file[(file.LastIndexOf('/') + 1)..].Split('.')[0];
}
