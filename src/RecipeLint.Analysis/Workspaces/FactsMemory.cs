using RecipeLint.Recipes;
using RecipeLint.Recipes.Json;

namespace RecipeLint.Analysis.Workspaces;

/// <summary>
/// Facts kept between runs over mostly the same files. The facts of a stock or recipe hold as long as its file and every file that it was
/// read with are the very same sources, so a run that parses with <see cref="RecipeLint.Recipes.Files.ParsedFiles"/> computes only what a
/// change touches; states that were solved for the others stay with them. Not for several threads at once.
/// </summary>
/// <param name="below">Known already, and left as it is: what a change in thought does not touch is taken from there.</param>
public sealed class FactsMemory(FactsMemory? below = null)
{
    private readonly Dictionary<string, Kept<StockFacts>> _stocks = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Kept<RecipeFacts>> _recipes = new(StringComparer.Ordinal);

    /// <summary>How many facts were computed since this memory was made, for whoever wants to see that little is.</summary>
    public int Computed { get; private set; }

    internal StockFacts? Stock(Workspace workspace, string file, Func<StockFacts?> compute) => Of(m => m._stocks, workspace, file, compute);

    internal RecipeFacts? Recipe(Workspace workspace, string file, Func<RecipeFacts?> compute) =>
        Of(m => m._recipes, workspace, file, compute);

    private T? Of<T>(Func<FactsMemory, Dictionary<string, Kept<T>>> of, Workspace workspace, string file, Func<T?> compute)
        where T : class
    {
        if (workspace.WithDrawnOn(file) is not { } drawnOn)
        {
            Computed++;
            return compute();
        }

        SourceFile?[] basis = [.. drawnOn.Select(f => workspace.Sources.GetValueOrDefault(f))];
        var kept = of(this);
        if ((Find(kept) ?? (below is null ? null : Find(of(below)))) is { } known)
        {
            return known.Facts;
        }

        var facts = compute();
        Computed++;
        kept[file] = new Kept<T>(basis, facts);
        return facts;

        Kept<T>? Find(Dictionary<string, Kept<T>> all) => all.GetValueOrDefault(file) is { } found && found.IsOf(basis) ? found : null;
    }

    private sealed record Kept<T>(SourceFile?[] Basis, T? Facts)
        where T : class
    {
        public bool IsOf(SourceFile?[] basis) =>
            basis.Length == Basis.Length && basis.Zip(Basis).All(p => p.First is not null && ReferenceEquals(p.First, p.Second));
    }
}
