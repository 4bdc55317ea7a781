using RecipeLint.House.Tests.Figures;
using RecipeLint.House.Tests.Reading;

namespace RecipeLint.House.Tests;

/// <summary>
/// The house keeps its order: dependencies run one way between projects and between the folders inside them, and no method, class or line
/// outgrows what is declared. A figure that is not yet at its aim may not get worse (Tables/limits.json).
/// </summary>
public sealed class HouseTests
{
    private static readonly string[] _downwards =
    [
        "RecipeLint", "RecipeLint.Editor", "RecipeLint.Reports", "RecipeLint.Advice", "RecipeLint.Rules", "RecipeLint.Analysis", "RecipeLint.Recipes", "RecipeLint.Chemistry",
        "RecipeLint.Generators",
    ];

    private static readonly Lazy<IReadOnlyList<Figure>> _figures = new(() => HouseFigures.Of(Checkout.Here));

    public static TheoryData<string> Limited => [.. HouseFigures.Aims.Keys];

    [Fact]
    public void ProjectsDependDownwardsOnly()
    {
        foreach (var project in Checkout.Here.Projects)
        {
            var at = Array.IndexOf(_downwards, project.Name);
            Assert.True(at >= 0, $"{project.Name} has no storey in this test: add it where it belongs.");
            Assert.All(project.Declared, d => Assert.True(Array.IndexOf(_downwards, d) > at, $"{project.Name} refers to {d}, which is not below it."));
        }
    }

    [Fact]
    public void NamespacesFollowTheFolders()
    {
        // What the compiler looks for in a namespace of the platform has to stand there.
        var astray = Checkout.Here.Projects.SelectMany(p => p.Files
            .Where(f => f.Namespace.Length > 0 && !f.Namespace.StartsWith("System.", StringComparison.Ordinal) && !Follows(p.Name, f))
            .Select(f => $"{f.Path} declares {f.Namespace}"));
        Assert.Empty(astray);
    }

    /// <summary>The list of rules is made while building and not seen by the sources alone, so its name is looked for by itself.</summary>
    [Fact]
    public void TheEngineDoesNotAskWhichRulesThereAre()
    {
        var rules = Checkout.Here.Projects.Single(p => p.Name == "RecipeLint.Rules");
        var below = rules.Files.Where(f => f.Namespace is "RecipeLint.Rules.Engine" or "RecipeLint.Rules.Repairs").ToList();
        Assert.NotEmpty(below);
        Assert.Empty(below.Where(f => f.Tree.GetRoot().DescendantTokens().Any(t => t.ValueText == "RuleList")).Select(f => f.Path));
    }

    [Theory]
    [MemberData(nameof(Limited))]
    public void NoFigureGetsWorse(string what)
    {
        var figure = _figures.Value.Single(f => f.What == what);
        var limit = HouseTable.Limits()[what];
        Assert.True(
            figure.Count <= limit,
            $"{what}: {figure.Count}, at most {limit} allowed. {figure.Detail}\n{string.Join('\n', figure.Places.Take(60))}");
    }

    [Fact]
    public void FiguresAreWrittenDownOnRequest()
    {
        HouseTable.Update(_figures.Value);
        Assert.All(HouseFigures.Aims, a => Assert.True(HouseTable.Limits()[a.Key] >= a.Value, $"The limit of \"{a.Key}\" lies below its aim."));
        Assert.All(_figures.Value, f => Assert.Contains($"| {f.What} |", HouseTable.Text(), StringComparison.Ordinal));
    }

    /// <summary>The namespace is that of the folder, or of a folder above it: a rule's own folder is a drawer, not a room.</summary>
    private static bool Follows(string project, SourceFile file)
    {
        var folder = file.Folder.Length == 0 ? project : $"{project}.{file.Folder.Replace('/', '.')}";
        return folder == file.Namespace || folder.StartsWith(file.Namespace + ".", StringComparison.Ordinal);
    }
}
