using System.Text.Json;

namespace RecipeLint.House.Tests.Reading;

/// <summary>A checkout of this repository, read as source: nothing of it needs to be built, so that an older one is counted the same way.</summary>
internal sealed class Checkout
{
    private Checkout(string root)
    {
        Root = root;
        Projects = SourceProject.Load(root);
        Rules = RuleFiles().Select(r => r.GetProperty("name").GetString()!).ToHashSet(StringComparer.Ordinal);
        Options = RuleFiles().Where(r => r.TryGetProperty("options", out _))
            .SelectMany(r => r.GetProperty("options").EnumerateArray().Select(o => o.GetProperty("name").GetString()!))
            .ToHashSet(StringComparer.Ordinal);
        Ions = ReadIons();
        References = [.. Projects.SelectMany(ReferenceReader.Of)];
    }

    public string Root { get; }

    public IReadOnlyList<SourceProject> Projects { get; }

    /// <summary>Names of all rules, from their folders.</summary>
    public IReadOnlySet<string> Rules { get; }

    /// <summary>Names of the options of all rules.</summary>
    public IReadOnlySet<string> Options { get; }

    /// <summary>Names of the components of a solution, such as "Ca+2", from the data of the equilibrium.</summary>
    public IReadOnlySet<string> Ions { get; }

    /// <summary>Every use of a type or member of this house by another namespace of it.</summary>
    public IReadOnlyList<Reference> References { get; }

    public static Checkout Here { get; } = new(FindRoot());

    /// <summary>Another checkout, for a comparison.</summary>
    public static Checkout At(string root) => new(Path.GetFullPath(root));

    private static string FindRoot()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "RecipeLint.sln"))) return folder.FullName;
        }

        throw new InvalidOperationException("No RecipeLint.sln above the test folder.");
    }

    private IEnumerable<JsonElement> RuleFiles() => Directory.EnumerateFiles(Path.Combine(Root, "rules"), "rule.json", SearchOption.AllDirectories)
        .Select(f => JsonDocument.Parse(File.ReadAllText(f)).RootElement);

    private HashSet<string> ReadIons()
    {
        var data = Path.Combine(Root, "src", "RecipeLint.Chemistry", "Data");
        var file = Directory.EnumerateFiles(data, "components.json", SearchOption.AllDirectories).First(f => f.Contains("thermo", StringComparison.Ordinal));
        using var document = JsonDocument.Parse(File.ReadAllText(file));
        return [.. document.RootElement.GetProperty("components").EnumerateArray().Select(c => c.GetProperty("name").GetString()!)];
    }
}
