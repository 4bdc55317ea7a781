using System.Collections.Concurrent;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Profiles;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Recipes;
using RecipeLint.Recipes.Files;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Tests.Folders;

/// <summary>One example folder, read, analysed and judged by every rule the way the program does it.</summary>
public sealed record ExampleRun(Workspace Workspace, LintResult Result)
{
    /// <summary>The files of the example, in memory.</summary>
    public required MemoryFileTree Files { get; init; }

    public required Facts Facts { get; init; }

    /// <summary>The day the examples are judged on, so that a suppression with a date ages in none of them.</summary>
    public static EngineOptions Engine { get; } = new() { Today = new(2026, 11, 25), Rules = RuleList.All };

    public static LoadOptions Load { get; } = new() { Profiles = ProfileLibrary.AllNames };

    private static readonly ConcurrentDictionary<string, ExampleRun> _runs = new();

    public static ExampleRun Of(ExampleFolder example) => _runs.GetOrAdd(example.Path, Run);

    /// <summary>The line a finding stands on, 1-based.</summary>
    public int LineOf(Finding finding)
    {
        var source = Workspace.Sources[finding.Place.File];
        return source.ToLines(source.Resolve(finding.Place)).Start.Line;
    }

    public ExpectedFinding Describe(Finding finding) =>
        new(finding.Rule.Name, finding.Place.File, finding.IdPath, LineOf(finding), Words.Of(finding.Level));

    private static ExampleRun Run(string folder)
    {
        // Through memory, so that the repository this one is checked out in is not taken for the example's.
        var files = new MemoryFileTree("/example").AddFolder("/example/.git");
        foreach (var path in Directory.GetFiles(folder, "*", SearchOption.AllDirectories).Where(p => Path.GetFileName(p) != "expected.json"))
        {
            files.Add(Path.GetRelativePath(folder, path).Replace('\\', '/'), File.ReadAllBytes(path));
        }

        var workspace = WorkspaceLoader.Load(files, ["."], Load);
        var facts = Analyzer.Analyse(workspace);
        return new ExampleRun(workspace, LintEngine.Judge(facts, Engine)) { Files = files, Facts = facts };
    }
}
