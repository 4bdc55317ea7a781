using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Analysis;

/// <summary>Collects the defaults that enter one document's numbers, each once.</summary>
internal sealed class AssumptionList(Place whole)
{
    private readonly List<Assumption> _items = [];
    private readonly SortedSet<string> _undeclared = new(StringComparer.Ordinal);

    public void Add(string key, string text, Place? place)
    {
        if (!_items.Any(a => a.Key == key && a.Text == text))
        {
            _items.Add(new Assumption(key, text, place));
        }
    }

    /// <summary>A substance without an assay; one whose strength stands in a file has nothing undeclared.</summary>
    public void AddUndeclaredAssay(Substance substance)
    {
        if (!substance.StatesItsStrength)
        {
            _undeclared.Add(substance.Id);
        }
    }

    public void AddRange(IEnumerable<Assumption> others)
    {
        foreach (var other in others)
        {
            if (!_items.Any(a => a.Key == other.Key && a.Text == other.Text && a.Place == other.Place))
            {
                _items.Add(other);
            }
        }
    }

    /// <summary>All of them; the undeclared assays as one entry that names the substances.</summary>
    public IReadOnlyList<Assumption> ToList()
    {
        if (_undeclared.Count == 0)
        {
            return [.. _items];
        }

        var names = string.Join(", ", _undeclared.Select(v => $"'{v}'"));
        return [new Assumption("assay", $"No assay is declared for {names}: taken as 100 % of the nominal content.", whole), .. _items];
    }
}
