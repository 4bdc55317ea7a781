using System.Globalization;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Documents;

/// <summary>Stocks that are made from each other.</summary>
internal static class ReferenceLoops
{
    /// <summary>Loops told one by one of stocks that all draw on each other: they have one for every pair.</summary>
    private const int MostTold = 100;

    /// <summary>
    /// Reports each loop once, at the step of its first file (by path) that leads into the loop, and takes that step's reference away,
    /// so that whoever follows references comes to an end.
    /// </summary>
    public static (IReadOnlyList<StockDocument> Stocks, IReadOnlyList<Problem> Problems) Break(IReadOnlyList<StockDocument> stocks)
    {
        var byFile = stocks.ToDictionary(s => s.File, StringComparer.Ordinal);
        var problems = new List<Problem>();
        foreach (var circle in Circles(byFile))
        {
            problems.AddRange(Break(circle, byFile));
        }

        return problems.Count == 0 ? (stocks, []) : ([.. stocks.Select(s => byFile[s.File])], problems);
    }

    private static List<Problem> Break(List<string> circle, Dictionary<string, StockDocument> byFile)
    {
        var problems = new List<Problem>();
        foreach (var file in circle)
        {
            while (FindLoop(file, byFile) is { } loop)
            {
                problems.Add(Describe(loop));
                byFile[file] = Without(byFile[file], loop[0]);
                if (problems.Count == MostTold)
                {
                    if (CutTheRest(circle, byFile, problems[^1].Place) is { } rest)
                    {
                        problems.Add(rest);
                    }

                    return problems;
                }
            }
        }

        return problems;
    }

    /// <summary>
    /// Takes away every reference within a circle that leads to an earlier path or to the stock itself; null when there is none.
    /// </summary>
    private static Problem? CutTheRest(List<string> circle, Dictionary<string, StockDocument> byFile, Place place)
    {
        var members = circle.ToHashSet(StringComparer.Ordinal);
        var cut = 0;
        foreach (var file in circle)
        {
            var backward = byFile[file].Steps.OfType<AliquotStep>()
                .Where(s => s.StockFile is { } to && members.Contains(to) && string.CompareOrdinal(to, file) <= 0)
                    .ToHashSet<Step>(ReferenceEqualityComparer.Instance);
            if (backward.Count > 0)
            {
                cut += backward.Count;
                byFile[file] = byFile[file] with
                {
                    Steps = [.. byFile[file].Steps.Select(s => backward.Contains(s) ? ((AliquotStep)s).LeftOut() : s)],
                    IsComplete = false,
                };
            }
        }

        return cut == 0 ? null : new Problem(
            ProblemKind.ReferenceLoop,
            place,
            $"{circle.Count.ToString(CultureInfo.InvariantCulture)} stocks draw on each other in circles. After {MostTold} of these they "
                + "are not listed one by one: "
            + $"{cut.ToString(CultureInfo.InvariantCulture)} more steps that lead back are left out. Decide which of these stocks is made "
                + "first.");
    }

    /// <summary>
    /// The files from which a way leads back to themselves, those together that reach each other (strongly connected components, after
    /// Tarjan 1972), each in the order of paths. One walk over all references.
    /// </summary>
    private static List<List<string>> Circles(Dictionary<string, StockDocument> byFile) => new CircleSearch(byFile).Run();

    private static IEnumerable<string> Below(StockDocument stock, Dictionary<string, StockDocument> byFile) =>
        stock.Steps.OfType<AliquotStep>().Select(s => s.StockFile).OfType<string>().Where(byFile.ContainsKey);

    /// <summary>A shortest way from a stock back to itself, as the steps taken; null when there is none.</summary>
    private static List<AliquotStep>? FindLoop(string start, Dictionary<string, StockDocument> byFile)
    {
        var cameBy = new Dictionary<string, AliquotStep>(StringComparer.Ordinal);
        var pending = new Queue<string>([start]);
        while (pending.TryDequeue(out var file))
        {
            foreach (var step in byFile[file].Steps
                .OfType<AliquotStep>()
                .Where(s => s.StockFile is not null && byFile.ContainsKey(s.StockFile)))
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
        Steps = [.. stock.Steps.Select(s => ReferenceEquals(s, step) ? step.LeftOut() : s)],
        IsComplete = false,
    };

    /// <summary>Stocks that reach each other (Tarjan 1972), with a stack of its own: a long chain does not end the program.</summary>
    private sealed class CircleSearch(Dictionary<string, StockDocument> byFile)
    {
        private readonly List<List<string>> _found = [];
        private readonly Dictionary<string, (int Number, int Low)> _numbers = new(StringComparer.Ordinal);
        private readonly Stack<string> _path = new();
        private readonly HashSet<string> _onPath = new(StringComparer.Ordinal);
        private readonly Stack<(string File, IEnumerator<string> Next)> _open = new();

        public List<List<string>> Run()
        {
            foreach (var start in byFile.Keys.Where(k => !_numbers.ContainsKey(k)).ToArray())
            {
                Enter(start);
                while (_open.TryPeek(out var at))
                {
                    if (at.Next.MoveNext())
                    {
                        var next = at.Next.Current;
                        if (!_numbers.TryGetValue(next, out var known))
                        {
                            Enter(next);
                        }
                        else if (_onPath.Contains(next))
                        {
                            Lower(at.File, known.Number);
                        }

                        continue;
                    }

                    at.Next.Dispose();
                    _open.Pop();
                    Leave(at.File);
                }
            }

            return _found;
        }

        private void Enter(string file)
        {
            if (_numbers.TryAdd(file, (_numbers.Count, _numbers.Count)))
            {
                _path.Push(file);
                _onPath.Add(file);
                _open.Push((file, Below(byFile[file], byFile).GetEnumerator()));
            }
        }

        private void Lower(string file, int low) => _numbers[file] = (_numbers[file].Number, Math.Min(_numbers[file].Low, low));

        private void Leave(string file)
        {
            if (_open.TryPeek(out var above))
            {
                Lower(above.File, _numbers[file].Low);
            }

            if (_numbers[file].Low != _numbers[file].Number)
            {
                return;
            }

            var members = new List<string>();
            do
            {
                members.Add(_path.Pop());
                _onPath.Remove(members[^1]);
            }
            while (members[^1] != file);
            if (members.Count > 1 || Below(byFile[file], byFile).Contains(file, StringComparer.Ordinal))
            {
                members.Sort(StringComparer.Ordinal);
                _found.Add(members);
            }
        }
    }
}
