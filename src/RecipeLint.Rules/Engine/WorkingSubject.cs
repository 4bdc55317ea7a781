using RecipeLint.Analysis;
using RecipeLint.Recipes.Documents;

namespace RecipeLint.Rules.Engine;

/// <summary>
/// What is worked out for one file: a stock with the recipes that dose it, a recipe with the stocks it doses, a water. The file itself
/// comes first.
/// </summary>
/// <param name="File">The file that was asked for.</param>
public sealed record WorkingSubject(
    string File, Facts Facts, IReadOnlyList<StockFacts> Stocks, IReadOnlyList<RecipeFacts> Recipes, IReadOnlyList<WaterDocument> Waters)
{
    /// <summary>The files a finding may stand in to count as one of the subject's.</summary>
    public IReadOnlySet<string> Files { get; } =
        Stocks.Select(s => s.Stock.File)
            .Concat(Recipes.Select(r => r.Recipe.File))
            .Concat(Waters.Select(w => w.File))
            .Append(File)
            .ToHashSet(StringComparer.Ordinal);

    /// <summary>
    /// Where a file stands in the order in which a subject is worked out: stocks, recipes, waters; the highest number for a file that is
    /// none of them.
    /// </summary>
    public int RankOf(string file)
    {
        var rank = Stocks.Select(s => s.Stock.File)
            .Concat(Recipes.Select(r => r.Recipe.File))
            .Concat(Waters.Select(w => w.File))
            .Append(File)
            .ToList()
            .IndexOf(file);
        return rank < 0 ? int.MaxValue : rank;
    }

    public static WorkingSubject Of(Facts facts, string file)
    {
        if (facts.FindStock(file) is { } stock)
        {
            var users = facts.RecipesWith(file);
            return new WorkingSubject(
                file, facts, [stock], users, [.. stock.Waters.Select(w => w.Water).OfType<WaterDocument>().Distinct()]);
        }

        if (facts.FindRecipe(file) is { } recipe)
        {
            var stocks = recipe.Doses.Select(d => d.Stock).OfType<StockFacts>().DistinctBy(s => s.Stock.File).ToList();
            return new WorkingSubject(file, facts, stocks, [recipe], recipe.Water?.Water is { } water ? [water] : []);
        }

        return new WorkingSubject(file, facts, [], [], facts.Workspace.FindWater(file) is { } own ? [own] : []);
    }
}
