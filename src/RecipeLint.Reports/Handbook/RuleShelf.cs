using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.Handbook;

/// <summary>Every example of every rule with its findings, and which rules are met together.</summary>
internal sealed class RuleShelf
{
    private readonly Dictionary<string, IReadOnlyList<JudgedFolder>> _examples;
    private readonly Dictionary<string, SortedSet<string>> _metWith = new(StringComparer.Ordinal);

    private RuleShelf(Dictionary<string, IReadOnlyList<JudgedFolder>> examples)
    {
        _examples = examples;
        foreach (var (rule, folders) in examples)
        {
            foreach (var other in folders.Where(f => f.Folder.IsFailing)
                .SelectMany(f => f.Findings)
                .Select(f => f.Finding.Rule.Name)
                .Where(n => n != rule))
            {
                Meet(rule, other);
                Meet(other, rule);
            }
        }
    }

    public IReadOnlyList<JudgedFolder> Examples(RuleDescriptor rule) => _examples[rule.Name];

    /// <summary>
    /// Rules that speak together with this one in a failing example of either, and rules that the same sign may point to.
    /// </summary>
    public IReadOnlyList<string> Related(RuleDescriptor rule)
    {
        var sameSign = Sign.All.Where(s => s.Rules.Contains(rule.Name)).SelectMany(s => s.Rules);
        return [.. _metWith.GetValueOrDefault(rule.Name, [])
            .Concat(sameSign)
            .Where(n => n != rule.Name)
            .Distinct()
            .Order(StringComparer.Ordinal)];
    }

    public static RuleShelf Judge(IReadOnlyList<RuleDescriptor> rules)
    {
        // Three hundred folders, each solved by itself: worth all the cores there are.
        var judged = rules
            .SelectMany(r => ShelfFolder.Below($"examples/{r.Family}/{r.Name}/").Select(f => (r.Name, Folder: f)))
            .AsParallel().AsOrdered()
            .Select(e => (e.Name, Judged: e.Folder.Judge()))
            .ToList();
        return new RuleShelf(rules.ToDictionary(
            r => r.Name,
            r => (IReadOnlyList<JudgedFolder>)[.. judged.Where(j => j.Name == r.Name).Select(j => j.Judged)],
            StringComparer.Ordinal));
    }

    private void Meet(string one, string other)
    {
        if (!_metWith.TryGetValue(one, out var others))
        {
            _metWith[one] = others = new SortedSet<string>(StringComparer.Ordinal);
        }

        others.Add(other);
    }
}
