using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Documents;

/// <summary>Stocks that are made from each other.</summary>
internal static class ReferenceLoops
{
    /// <summary>
    /// Reports each loop once, at the step of its first file (by path) that leads into the loop, and takes that step's reference away,
    /// so that whoever follows references comes to an end.
    /// </summary>
    public static (IReadOnlyList<StockDocument> Stocks, IReadOnlyList<Problem> Problems) Break(IReadOnlyList<StockDocument> stocks)
    {
        var byFile = stocks.ToDictionary(s => s.File, StringComparer.Ordinal);
        var problems = new List<Problem>();
        foreach (var file in byFile.Keys.Order(StringComparer.Ordinal).ToArray())
        {
            while (FindLoop(file, byFile) is { } loop)
            {
                problems.Add(Describe(loop));
                byFile[file] = Without(byFile[file], loop[0]);
            }
        }

        return ([.. stocks.Select(s => byFile[s.File])], problems);
    }

    /// <summary>A shortest way from a stock back to itself, as the steps taken; null when there is none.</summary>
    private static List<AliquotStep>? FindLoop(string start, Dictionary<string, StockDocument> byFile)
    {
        var cameBy = new Dictionary<string, AliquotStep>(StringComparer.Ordinal);
        var pending = new Queue<string>([start]);
        while (pending.TryDequeue(out var file))
        {
            foreach (var step in byFile[file].Steps.OfType<AliquotStep>().Where(s => s.StockFile is not null && byFile.ContainsKey(s.StockFile)))
            {
                if (step.StockFile == start)
                {
                    return WayBack(start, step, cameBy);
                }

                if (cameBy.TryAdd(step.StockFile!, step))
                {
                    pending.Enqueue(step.StockFile!);
                }
            }
        }

        return null;
    }

    private static List<AliquotStep> WayBack(string start, AliquotStep last, Dictionary<string, AliquotStep> cameBy)
    {
        var way = new List<AliquotStep> { last };
        while (way[0].Place.File != start)
        {
            way.Insert(0, cameBy[way[0].Place.File]);
        }

        return way;
    }

    private static Problem Describe(List<AliquotStep> loop)
    {
        var first = loop[0];
        var way = string.Join(", which is made from ", loop.Select(s => $"'{s.StockFile}'").Take(6));
        return new Problem(
            ProblemKind.ReferenceLoop,
            first.What.Place,
            $"'{first.Place.File}' is made from {way}: it would have to be there before it is made. Take one of these steps out.")
        {
            Related = [.. loop.Skip(1).Select(s => new RelatedPlace(s.What.Place, $"leads on to '{s.StockFile}'"))],
        };
    }

    private static StockDocument Without(StockDocument stock, AliquotStep step) => stock with
    {
        Steps = [.. stock.Steps.Select(s => ReferenceEquals(s, step) ? step with { StockFile = null } : s)],
        IsComplete = false,
    };
}
