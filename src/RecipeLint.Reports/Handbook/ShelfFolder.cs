using System.Text;
using System.Text.Json;
using RecipeLint.Analysis.Profiles;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Recipes;
using RecipeLint.Recipes.Files;
using RecipeLint.Rules;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.Handbook;

/// <summary>A small folder of files that travels with the program: an example of a rule, or one side of an exercise.</summary>
/// <param name="Name">"failing-epsom-in-part-a".</param>
/// <param name="Files">By path inside the folder, sorted.</param>
/// <param name="Reasons">Why other rules speak here too, by rule name.</param>
internal sealed record ShelfFolder(
    string Name, IReadOnlyList<(string Path, byte[] Bytes)> Files, IReadOnlyDictionary<string, string> Reasons)
{
    private const string Expectations = "expected.json";

    private static readonly Dictionary<string, string> _spelled = new(StringComparer.Ordinal)
    {
        ["epsom"] = "Epsom salt",
        ["edta"] = "EDTA",
        ["dtpa"] = "DTPA",
        ["eddha"] = "EDDHA",
        ["mkp"] = "MKP",
        ["dkp"] = "DKP",
        ["map"] = "MAP",
        ["dap"] = "DAP",
        ["ph"] = "pH",
        ["ec"] = "EC",
        ["p"] = "P",
        ["p2o5"] = "P2O5",
        ["us"] = "US",
        ["utf"] = "UTF",
        ["windows"] = "Windows",
    };

    /// <summary>
    /// The day the folders are judged on, so that a suppression with a date ages in none of them and the pages stay the same.
    /// </summary>
    private static readonly DateOnly _today = new(2026, 11, 25);

    public bool IsFailing => Name.StartsWith("failing-", StringComparison.Ordinal);

    /// <summary>The name in words: "Epsom in part A". A folder's name has no capitals, so those of the trade are put back.</summary>
    public string Title
    {
        get
        {
            var words = Name[(Name.IndexOf('-', StringComparison.Ordinal) + 1)..].Split('-');
            for (var i = 0; i < words.Length; i++)
            {
                words[i] = i > 0 && words[i - 1] == "part" && words[i].Length == 1
                    ? words[i].ToUpperInvariant()
                    : _spelled.GetValueOrDefault(words[i], words[i]);
            }

            var text = string.Join(' ', words);
            return _spelled.ContainsKey(Name.Split('-').ElementAtOrDefault(1) ?? "") ? text : char.ToUpperInvariant(text[0]) + text[1..];
        }
    }

    /// <summary>All folders below a resource path such as "examples/precipitation/calcium-with-sulfate/", sorted by name.</summary>
    public static IReadOnlyList<ShelfFolder> Below(string prefix)
    {
        var all = EmbeddedText.Names(prefix)
            .Select(n => (Folder: n[prefix.Length..].Split('/')[0], Name: n))
            .Where(n => n.Name.Length > prefix.Length + n.Folder.Length)
            .GroupBy(n => n.Folder, StringComparer.Ordinal)
            .OrderBy(g => g.Key, StringComparer.Ordinal);
        return [.. all.Select(g => Read(g.Key, [.. g.Select(n => n.Name)], prefix.Length + g.Key.Length + 1))];
    }

    /// <summary>Loads, analyses and judges the folder as the program would, in memory.</summary>
    public JudgedFolder Judge()
    {
        var tree = new MemoryFileTree("/example").AddFolder("/example");
        foreach (var (path, bytes) in Files)
        {
            tree.Add(path, bytes);
        }

        var workspace = WorkspaceLoader.Load(tree, ["."], new LoadOptions { Profiles = ProfileLibrary.AllNames });
        var result = LintEngine.Judge(Analyzer.Analyse(workspace), new EngineOptions { Today = _today, Rules = RuleList.All });
        return result.Faults.Count > 0
            ? throw new InvalidOperationException(result.Faults[0].Message, result.Faults[0].Cause)
            : new JudgedFolder(this, workspace, PlacedFinding.InOrder(result.Findings, workspace.Sources));
    }

    private static ShelfFolder Read(string name, IReadOnlyList<string> resources, int skip)
    {
        var files = new List<(string Path, byte[] Bytes)>();
        var reasons = new SortedDictionary<string, string>(StringComparer.Ordinal);
        foreach (var resource in resources.Order(StringComparer.Ordinal))
        {
            var bytes = EmbeddedText.Bytes(resource);
            if (resource[skip..] == Expectations)
            {
                using var document = JsonDocument.Parse(bytes);
                foreach (var also in document.RootElement.GetProperty("also").EnumerateArray())
                {
                    var rule = also.GetProperty("rule").GetString()!;
                    var reason = also.GetProperty("reason").GetString()!;
                    reasons[rule] = reasons.TryGetValue(rule, out var before) && before != reason ? $"{before} {reason}" : reason;
                }
            }
            else
            {
                files.Add((resource[skip..], bytes));
            }
        }

        return new ShelfFolder(name, files, reasons);
    }
}

/// <summary>A folder with what the rules say of it.</summary>
internal sealed record JudgedFolder(ShelfFolder Folder, Workspace Workspace, IReadOnlyList<PlacedFinding> Findings)
{
    public IEnumerable<PlacedFinding> Of(RuleDescriptor rule) => Findings.Where(f => f.Finding.Rule.Name == rule.Name);

    public IEnumerable<PlacedFinding> NotOf(RuleDescriptor rule) => Findings.Where(f => f.Finding.Rule.Name != rule.Name);
}

/// <summary>Files embedded in this assembly, named with forward slashes.</summary>
internal static class EmbeddedText
{
    // A build on Windows puts backslashes into the folder part of a resource name.
    private static readonly Dictionary<string, string> _resources = typeof(EmbeddedText).Assembly.GetManifestResourceNames()
        .ToDictionary(n => n.Replace('\\', '/'), StringComparer.Ordinal);

    public static IEnumerable<string> Names(string prefix) =>
        _resources.Keys.Where(n => n.StartsWith(prefix, StringComparison.Ordinal)).Order(StringComparer.Ordinal);

    public static byte[] Bytes(string name)
    {
        using var stream = typeof(EmbeddedText).Assembly.GetManifestResourceStream(_resources[name])
            ?? throw new FileNotFoundException($"The program lacks its part '{name}'.");
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }

    /// <summary>UTF-8 text with plain line feeds, however the sources were checked out.</summary>
    public static string Read(string name) => Encoding.UTF8.GetString(Bytes(name)).ReplaceLineEndings("\n");
}
