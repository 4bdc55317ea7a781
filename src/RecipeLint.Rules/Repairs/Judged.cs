using RecipeLint.Analysis;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Recipes;
using RecipeLint.Recipes.Files;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Repairs;

/// <summary>Files read, analysed and judged: the whole way through, for a state of the files that may exist only in memory.</summary>
public sealed record Judged(Workspace Workspace, Facts Facts, LintResult Result)
{
    /// <param name="asked">Files and folders, as the user wrote them or full.</param>
    /// <param name="memory">Facts to take over where nothing they follow from has changed; null computes all.</param>
    public static Judged Of(
        IFileTree files, IReadOnlyList<string> asked, LoadOptions load, EngineOptions engine, FactsMemory? memory = null)
    {
        var workspace = WorkspaceLoader.Load(files, asked, load);
        var facts = Analyzer.Analyse(workspace, memory);
        return new Judged(workspace, facts, LintEngine.Judge(facts, engine));
    }

    /// <summary>True when a file was read whole, so that every rule could judge it.</summary>
    public bool IsComplete(string file) =>
        Facts.FindStock(file)?.IsComplete
        ?? Facts.FindRecipe(file)?.IsComplete
        ?? (Workspace.Sources.GetValueOrDefault(file)?.Tree is not null
            && Workspace.Stocks.All(s => s.File != file)
            && Workspace.Recipes.All(r => r.File != file));
}
