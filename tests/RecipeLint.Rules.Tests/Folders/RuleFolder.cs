namespace RecipeLint.Rules.Tests.Folders;

/// <summary>A folder under rules/ as it stands in the repository.</summary>
public sealed record RuleFolder(string Family, string Name, string Path)
{
    /// <summary>Where RecipeLint.sln stands.</summary>
    public static string Repository { get; } = RepositoryRoot();

    public static string Root { get; } = System.IO.Path.Combine(Repository, "rules");

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

    /// <summary>Upwards from the test's own folder: paths of source files are mapped away in a deterministic build.</summary>
    private static string RepositoryRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(System.IO.Path.Combine(folder.FullName, "RecipeLint.sln")))
        {
            folder = folder.Parent ?? throw new InvalidOperationException("No RecipeLint.sln above the test folder.");
        }

        return folder.FullName;
    }
}

/// <summary>One failing-WHAT or passing-WHAT folder.</summary>
public sealed record ExampleFolder(RuleFolder Rule, string Name, string Path)
{
    public string ExpectedFile => System.IO.Path.Combine(Path, "expected.json");

    public override string ToString() => $"rules/{Rule.Family}/{Rule.Name}/{Name}";
}
