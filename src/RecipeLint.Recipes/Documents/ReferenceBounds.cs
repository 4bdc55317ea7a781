using System.Globalization;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Documents;

/// <summary>
/// How far stocks made from stocks are followed. Every way from a stock down to a weight is an entry of its own, and their number doubles
/// with each level.
/// </summary>
internal static class ReferenceBounds
{
    /// <summary>Stocks one above the other; a trace stock from a pre-stock is two (common practice, no source).</summary>
    public const int MostLevels = 12;

    /// <summary>Entries that aliquots bring into one stock, counted along every way.</summary>
    public const int MostEntries = 300;

    /// <summary>Names of a way that are written out.</summary>
    private const int MostNamed = 6;

    /// <summary>
    /// Leaves out the aliquots that would go past a bound, and reports the first of each stock with the way that does. Expects stocks
    /// without loops; does a step of work for each reference, however many ways there are.
    /// </summary>
    public static (IReadOnlyList<StockDocument> Stocks, IReadOnlyList<Problem> Problems) Hold(IReadOnlyList<StockDocument> stocks)
    {
        var byFile = stocks.ToDictionary(s => s.File, StringComparer.Ordinal);
        var reach = new Dictionary<string, Reach>(StringComparer.Ordinal);
        var problems = new List<Problem>();
        foreach (var file in BelowFirst(stocks, byFile))
        {
            byFile[file] = Hold(byFile[file], reach, problems);
        }

        return problems.Count == 0 ? (stocks, []) : ([.. stocks.Select(s => byFile[s.File])], problems);
    }

    private static StockDocument Hold(StockDocument stock, Dictionary<string, Reach> reach, List<Problem> problems)
    {
        var (levels, entries) = (1, 0);
        string? below = null;
        var left = new HashSet<Step>(ReferenceEqualityComparer.Instance);
        foreach (var step in stock.Steps.OfType<AliquotStep>())
        {
            if (step.StockFile is null || !reach.TryGetValue(step.StockFile, out var source))
            {
                continue;
            }

            var brought = entries + source.Entries;
            if (source.Levels >= MostLevels || brought > MostEntries)
            {
                if (left.Count == 0)
                {
                    problems.Add(Describe(stock, step, source, brought, reach));
                }

                left.Add(step);
                continue;
            }

            entries = brought;
            if (source.Levels >= levels)
            {
                (levels, below) = (source.Levels + 1, step.StockFile);
            }
        }

        reach[stock.File] = new Reach(levels, stock.Steps.Count - stock.Steps.Count(s => s is AliquotStep) + entries, below);
        return left.Count == 0 ? stock : stock with
        {
            Steps = [.. stock.Steps.Select(s => left.Contains(s) ? ((AliquotStep)s).LeftOut() : s)],
            IsComplete = false,
        };
    }

    private static Problem Describe(StockDocument stock, AliquotStep step, Reach source, int brought, Dictionary<string, Reach> reach)
    {
        var way = new List<string>();
        for (var at = step.StockFile; at is not null && way.Count < MostNamed; at = reach[at].Below)
        {
            way.Add($"'{at}'");
        }

        var path = string.Join(", which is made from ", way);
        var tooDeep = source.Levels >= MostLevels;
        var much = tooDeep
            ? $"{MostLevels + 1} stocks one above the other"
            : $"{brought.ToString("N0", CultureInfo.InvariantCulture)} entries that come in through other stocks";
        var most = tooDeep ? MostLevels : MostEntries;
        return new Problem(
            ProblemKind.WrongShape,
            step.What.Place,
            $"'{stock.File}' is made from {path}: {much}. At most {most} are followed, so what this and further such steps bring is left "
                + "out and the stock counts "
            + "as not read whole. Make it from the substances themselves, or from a stock that is nearer to them.");
    }

    /// <summary>The files in an order in which every stock comes after those it draws on.</summary>
    private static List<string> BelowFirst(IReadOnlyList<StockDocument> stocks, Dictionary<string, StockDocument> byFile)
    {
        var order = new List<string>(stocks.Count);
        var seen = new HashSet<string>(StringComparer.Ordinal);
        var open = new Stack<(string File, IEnumerator<string> Below)>();
        foreach (var stock in stocks)
        {
            Enter(stock.File);
            while (open.TryPeek(out var at))
            {
                if (at.Below.MoveNext())
                {
                    Enter(at.Below.Current);
                }
                else
                {
                    at.Below.Dispose();
                    order.Add(open.Pop().File);
                }
            }
        }

        return order;

        void Enter(string file)
        {
            if (byFile.TryGetValue(file, out var stock) && seen.Add(file))
            {
                open.Push((file, stock.Steps.OfType<AliquotStep>().Select(a => a.StockFile).OfType<string>().GetEnumerator()));
            }
        }
    }

    /// <summary>What lies below a stock.</summary>
    /// <param name="Levels">Stocks one above the other, itself included.</param>
    /// <param name="Entries">Its own and those that come through others.</param>
    /// <param name="Below">Where the longest way leads on.</param>
    private sealed record Reach(int Levels, int Entries, string? Below);
}
