using System.Collections.Immutable;

namespace RecipeLint.Analysis.Solutions;

/// <summary>Arithmetic on moles of solution components by name.</summary>
public static class ComponentMoles
{
    public static ImmutableSortedDictionary<string, double> Empty { get; } =
        ImmutableSortedDictionary.Create<string, double>(StringComparer.Ordinal);

    public static ImmutableSortedDictionary<string, double> Of(IEnumerable<KeyValuePair<string, double>> moles)
    {
        var sum = Empty.ToBuilder();
        foreach (var (name, value) in moles)
        {
            sum[name] = sum.GetValueOrDefault(name) + value;
        }

        return sum.ToImmutable();
    }

    public static ImmutableSortedDictionary<string, double> Times(this ImmutableSortedDictionary<string, double> moles, double factor) =>
        Of(moles.Select(m => KeyValuePair.Create(m.Key, m.Value * factor)));

    /// <summary>
    /// The sum of several contributions. Each component is added up from the smallest to the largest share, so that the order of additions
    /// never shows in the last digits.
    /// </summary>
    public static ImmutableSortedDictionary<string, double> Sum(IEnumerable<ImmutableSortedDictionary<string, double>> parts)
    {
        var shares = new Dictionary<string, List<double>>(StringComparer.Ordinal);
        foreach (var part in parts)
        {
            foreach (var (name, value) in part)
            {
                if (!shares.TryGetValue(name, out var known))
                {
                    shares.Add(name, known = []);
                }

                known.Add(value);
            }
        }

        var sum = Empty.ToBuilder();
        foreach (var (name, values) in shares)
        {
            values.Sort(BySize);
            var total = 0.0;
            foreach (var value in values)
            {
                total += value;
            }

            sum.Add(name, total);
        }

        return sum.ToImmutable();
    }

    private static int BySize(double a, double b) =>
        Math.Abs(a).CompareTo(Math.Abs(b)) is var bySize && bySize != 0 ? bySize : a.CompareTo(b);
}
