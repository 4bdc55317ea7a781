using System.Runtime.CompilerServices;

namespace RecipeLint.Rules.Tests.Folders;

/// <summary>A folder under rules/ as it stands in the repository.</summary>
public sealed record RuleFolder(string Family, string Name, string Path)
{
    public static string Root { get; } = System.IO.Path.GetFullPath(
        System.IO.Path.Combine(System.IO.Path.GetDirectoryName(ThisFile())!, "..", "..", "..", "rules"));

    public static IReadOnlyList<RuleFolder> All { get; } =
    [
        .. Directory.GetDirectories(Root)
            .SelectMany(Directory.GetDirectories)
            .Select(p => new RuleFolder(System.IO.Path.GetFileName(System.IO.Path.GetDirectoryName(p)!), System.IO.Path.GetFileName(p), p))
            .OrderBy(f => f.Family, StringComparer.Ordinal)
            .ThenBy(f => f.Name, StringComparer.Ordinal),
    ];

    public static RuleFolder Find(string name) => All.Single(f => f.Name == name);

    public static TheoryData<string> Names() => [.. All.Select(f => f.Name)];

    public IReadOnlyList<ExampleFolder> Failing => Examples("failing-");

    public IReadOnlyList<ExampleFolder> Passing => Examples("passing-");

    private List<ExampleFolder> Examples(string prefix) =>
    [
        .. Directory.GetDirectories(Path, prefix + "*")
            .Order(StringComparer.Ordinal)
            .Select(p => new ExampleFolder(this, System.IO.Path.GetFileName(p), p)),
    ];

    private static string ThisFile([CallerFilePath] string path = "") => path;
}

/// <summary>One failing-WHAT or passing-WHAT folder.</summary>
public sealed record ExampleFolder(RuleFolder Rule, string Name, string Path)
{
    public string ExpectedFile => System.IO.Path.Combine(Path, "expected.json");

    public override string ToString() => $"rules/{Rule.Family}/{Rule.Name}/{Name}";
}
