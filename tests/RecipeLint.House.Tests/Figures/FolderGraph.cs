using RecipeLint.House.Tests.Reading;

namespace RecipeLint.House.Tests.Figures;

/// <summary>Which folders (namespaces) of one project use which, and the groups of them that use each other in a circle.</summary>
internal sealed class FolderGraph
{
    private readonly Dictionary<string, SortedDictionary<string, List<Reference>>> _uses = new(StringComparer.Ordinal);

    public FolderGraph(string project, IEnumerable<Reference> references)
    {
        Project = project;
        foreach (var reference in references.Where(r => r.Project == project && r.TypeProject == project && r.From != r.To))
        {
            if (!_uses.TryGetValue(reference.From, out var targets)) _uses[reference.From] = targets = new(StringComparer.Ordinal);
            if (!targets.TryGetValue(reference.To, out var places)) targets[reference.To] = places = [];
            places.Add(reference);
        }

        Circles = [.. FindCircles()];
    }

    public string Project { get; }

    /// <summary>Groups of folders that reach each other both ways.</summary>
    public IReadOnlyList<IReadOnlyList<string>> Circles { get; }

    public int FoldersInCircles => Circles.Sum(c => c.Count);

    /// <summary>Every edge inside a circle with the first places that make it, the weakest first: those are the ones to turn round.</summary>
    public IEnumerable<string> Offences()
    {
        foreach (var circle in Circles)
        {
            var edges = circle.SelectMany(a => circle.Where(b => _uses.GetValueOrDefault(a)?.ContainsKey(b) == true).Select(b => (a, b, Uses: _uses[a][b])))
                .OrderBy(e => e.Uses.Count).ThenBy(e => e.a, StringComparer.Ordinal).ThenBy(e => e.b, StringComparer.Ordinal);
            foreach (var (a, b, uses) in edges)
            {
                var shown = uses.GroupBy(u => (u.Type, File: u.Where.Split(':')[0])).Take(4)
                    .Select(g => $"{g.First().Where} {g.Key.Type[(g.Key.Type.LastIndexOf('.') + 1)..]}");
                yield return $"{Short(a)} -> {Short(b)} ({uses.Count} uses): {string.Join("; ", shown)}";
            }
        }
    }

    private string Short(string space) => space.Length <= Project.Length ? space : space[(Project.Length + 1)..];

    private IEnumerable<IReadOnlyList<string>> FindCircles()
    {
        var reach = _uses.Keys.ToDictionary(k => k, Reach, StringComparer.Ordinal);
        var left = new SortedSet<string>(_uses.Keys, StringComparer.Ordinal);
        while (left.Count > 0)
        {
            var first = left.Min!;
            var group = left.Where(o => o == first || (reach[first].Contains(o) && reach[o].Contains(first))).ToList();
            left.ExceptWith(group);
            if (group.Count > 1) yield return group;
        }
    }

    private HashSet<string> Reach(string from)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        var open = new Stack<string>([from]);
        while (open.TryPop(out var at))
        {
            foreach (var next in _uses.GetValueOrDefault(at)?.Keys ?? Enumerable.Empty<string>())
            {
                if (seen.Add(next)) open.Push(next);
            }
        }

        return seen;
    }
}
