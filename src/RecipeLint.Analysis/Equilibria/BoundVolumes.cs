using System.Collections.Concurrent;
using RecipeLint.Chemistry.Physical;

namespace RecipeLint.Analysis.Equilibria;

/// <summary>
/// Keeps the volume model by the species it was bound to: a shop asks for the same ones again and again. Past a number of choices nothing
/// more is kept; one bound twice by two threads is the same.
/// </summary>
internal sealed class BoundVolumes
{
    private const int Most = 512;

    private readonly ConcurrentDictionary<string[], SolutionVolume> _known = new(new InOrder());

    /// <param name="gramsPerMole">Always the same.</param>
    public SolutionVolume To(string[] species, IReadOnlyDictionary<string, double> gramsPerMole)
    {
        if (_known.TryGetValue(species, out var known))
        {
            return known;
        }

        var bound = SolutionVolume.For(species, gramsPerMole);
        return _known.Count < Most ? _known.GetOrAdd(species, bound) : bound;
    }

    private sealed class InOrder : IEqualityComparer<string[]>
    {
        public bool Equals(string[]? x, string[]? y) => x.AsSpan().SequenceEqual(y);

        public int GetHashCode(string[] obj)
        {
            var hash = default(HashCode);
            foreach (var name in obj)
            {
                hash.Add(name.Length);
                hash.Add(name.Length > 0 ? name[0] : 0);
                hash.Add(name.Length > 1 ? name[1] : 0);
            }

            return hash.ToHashCode();
        }
    }
}
