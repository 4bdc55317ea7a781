using System.Collections;
using System.Diagnostics.CodeAnalysis;

namespace RecipeLint.Analysis.Solutions;

/// <summary>
/// Moles of solution components by name, in ordinal order of the names. Immutable. There are few components and very many of these, so
/// names and amounts lie in two arrays, and the same mix in another amount shares its names.
/// </summary>
[SuppressMessage("Naming", "CA1710", Justification = "It is an amount first and only then a list.")]
public sealed class ComponentMoles : IReadOnlyDictionary<string, double>
{
    private readonly string[] _names;
    private readonly double[] _moles;

    private ComponentMoles(string[] names, double[] moles) => (_names, _moles) = (names, moles);

    public static ComponentMoles Empty { get; } = new([], []);

    public int Count => _names.Length;

    public bool IsEmpty => _names.Length == 0;

    public IEnumerable<string> Keys => Array.AsReadOnly(_names);

    public IEnumerable<double> Values => Array.AsReadOnly(_moles);

    /// <exception cref="KeyNotFoundException">There is no such component.</exception>
    public double this[string key] =>
        IndexOf(key) is >= 0 and var at ? _moles[at] : throw new KeyNotFoundException($"There is no '{key}' among the components.");

    /// <summary>Names that occur twice add up, in the order given.</summary>
    public static ComponentMoles Of(IEnumerable<KeyValuePair<string, double>> moles)
    {
        var sums = new Sums();
        foreach (var (name, value) in moles)
        {
            sums.Add(name, value);
        }

        return sums.Done();
    }

    /// <summary>
    /// The sum of several contributions. Each component is added up from the smallest to the largest share, so that the order of additions
    /// never shows in the last digits.
    /// </summary>
    public static ComponentMoles Sum(IEnumerable<ComponentMoles> parts)
    {
        var shares = new List<Share>();
        foreach (var part in parts)
        {
            for (var i = 0; i < part._names.Length; i++)
            {
                shares.Add(new Share(part._names[i], part._moles[i], shares.Count));
            }
        }

        shares.Sort(Share.Order);
        var sums = new Sums();
        foreach (var share in shares)
        {
            sums.Add(share.Name, share.Moles);
        }

        return sums.Done();
    }

    /// <summary>The moles of a component; 0 where there is none.</summary>
    public double GetValueOrDefault(string name) => IndexOf(name) is >= 0 and var at ? _moles[at] : 0;

    public bool ContainsKey(string key) => IndexOf(key) >= 0;

    public bool TryGetValue(string key, out double value)
    {
        var at = IndexOf(key);
        value = at >= 0 ? _moles[at] : 0;
        return at >= 0;
    }

    /// <summary>Every amount multiplied.</summary>
    public ComponentMoles Times(double factor)
    {
        var moles = new double[_moles.Length];
        for (var i = 0; i < moles.Length; i++)
        {
            // A zero has no sign here.
            moles[i] = 0.0 + (_moles[i] * factor);
        }

        return new ComponentMoles(_names, moles);
    }

    /// <summary>Every amount divided.</summary>
    public ComponentMoles Over(double divisor)
    {
        var moles = new double[_moles.Length];
        for (var i = 0; i < moles.Length; i++)
        {
            moles[i] = 0.0 + (_moles[i] / divisor);
        }

        return new ComponentMoles(_names, moles);
    }

    /// <summary>The same with the amount of one component set.</summary>
    public ComponentMoles With(string name, double moles)
    {
        var at = IndexOf(name);
        if (at >= 0)
        {
            var changed = (double[])_moles.Clone();
            changed[at] = moles;
            return new ComponentMoles(_names, changed);
        }

        at = ~at;
        return new ComponentMoles(
            [.. _names.AsSpan(0, at), name, .. _names.AsSpan(at)], [.. _moles.AsSpan(0, at), moles, .. _moles.AsSpan(at)]);
    }

    public Enumerator GetEnumerator() => new(this);

    IEnumerator<KeyValuePair<string, double>> IEnumerable<KeyValuePair<string, double>>.GetEnumerator() => GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    private int IndexOf(string name) => Find(_names, name);

    /// <summary>Where a name stands; the complement of where it would stand when it is not there.</summary>
    private static int Find(ReadOnlySpan<string> names, string name) => names.BinarySearch(name, StringComparer.Ordinal);

    /// <summary>The components in order.</summary>
    public struct Enumerator : IEnumerator<KeyValuePair<string, double>>
    {
        private readonly ComponentMoles _of;
        private int _at;

        internal Enumerator(ComponentMoles of) => (_of, _at) = (of, -1);

        public readonly KeyValuePair<string, double> Current => new(_of._names[_at], _of._moles[_at]);

        readonly object IEnumerator.Current => Current;

        public bool MoveNext() => ++_at < _of._names.Length;

        public void Reset() => _at = -1;

        public readonly void Dispose()
        {
        }
    }

    /// <summary>Amounts while they are added up.</summary>
    private struct Sums()
    {
        private string[] _names = new string[8];
        private double[] _moles = new double[8];
        private int _count;

        public void Add(string name, double moles)
        {
            var at = Find(_names.AsSpan(0, _count), name);
            if (at >= 0)
            {
                _moles[at] += moles;
                return;
            }

            at = ~at;
            if (_count == _names.Length)
            {
                Array.Resize(ref _names, 2 * _count);
                Array.Resize(ref _moles, 2 * _count);
            }

            Array.Copy(_names, at, _names, at + 1, _count - at);
            Array.Copy(_moles, at, _moles, at + 1, _count - at);
            _names[at] = name;
            _moles[at] = 0.0 + moles;
            _count++;
        }

        public readonly ComponentMoles Done() =>
            _count == 0 ? Empty : new ComponentMoles(_names.AsSpan(0, _count).ToArray(), _moles.AsSpan(0, _count).ToArray());
    }

    /// <param name="Number">In the order given, which decides between equal amounts.</param>
    private readonly record struct Share(string Name, double Moles, int Number)
    {
        public static readonly Comparison<Share> Order = static (a, b) =>
            Math.Abs(a.Moles).CompareTo(Math.Abs(b.Moles)) is not 0 and var size ? size
            : a.Moles.CompareTo(b.Moles) is not 0 and var signed ? signed
            : a.Number.CompareTo(b.Number);
    }
}
