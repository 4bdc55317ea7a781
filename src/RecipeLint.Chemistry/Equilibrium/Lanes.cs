using System.Numerics;
using System.Runtime.InteropServices;

namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>
/// Loops over everything dissolved. What each number gives by itself is worked out several at a time; sums and exponentials go one by one,
/// so that every processor and every build comes to the same digits.
/// </summary>
internal static class Lanes
{
    private static int Width => Vector<double>.Count;

    /// <summary>Molalities from their logarithms, as <see cref="Activity.Exp"/> gives them.</summary>
    public static void Molalities(Span<double> m, ReadOnlySpan<double> ln)
    {
        for (var i = 0; i < m.Length; i++) m[i] = Activity.Exp(ln[i]);
    }

    /// <summary>target = factor * source; both of one length.</summary>
    public static void Scale(Span<double> target, ReadOnlySpan<double> source, double factor)
    {
        ref var to = ref MemoryMarshal.GetReference(target);
        ref var from = ref MemoryMarshal.GetReference(source);
        var i = 0;
        for (; i <= target.Length - Width; i += Width) (Vector.LoadUnsafe(ref from, (nuint)i) * factor).StoreUnsafe(ref to, (nuint)i);
        for (; i < target.Length; i++) target[i] = factor * source[i];
    }

    /// <summary>Keeps every value between minus and plus a bound.</summary>
    public static void Clamp(Span<double> values, double bound)
    {
        ref var to = ref MemoryMarshal.GetReference(values);
        Vector<double> least = new(-bound), most = new(bound);
        var i = 0;
        for (; i <= values.Length - Width; i += Width)
            Vector.Min(Vector.Max(Vector.LoadUnsafe(ref to, (nuint)i), least), most).StoreUnsafe(ref to, (nuint)i);
        for (; i < values.Length; i++) values[i] = Math.Clamp(values[i], -bound, bound);
    }

    public static double Sum(ReadOnlySpan<double> values)
    {
        double sum = 0;
        foreach (var value in values) sum += value;
        return sum;
    }

    /// <summary>Sum of products; the first is at least as long as the second.</summary>
    public static double Dot(ReadOnlySpan<double> first, ReadOnlySpan<double> second)
    {
        double sum = 0;
        for (var i = 0; i < second.Length; i++) sum += first[i] * second[i];
        return sum;
    }

    /// <summary>What the positive products sum up to, and the negative ones with their sign turned; both of one length.</summary>
    public static (double Positive, double Negative) Sides(ReadOnlySpan<double> first, ReadOnlySpan<double> second)
    {
        double positive = 0, negative = 0;
        for (var i = 0; i < second.Length; i++)
        {
            var product = first[i] * second[i];
            positive += Math.Max(product, 0);
            negative -= Math.Min(product, 0);
        }
        return (positive, negative);
    }
}
