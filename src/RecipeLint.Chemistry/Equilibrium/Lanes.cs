using System.Numerics;
using System.Runtime.InteropServices;

namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>
/// Loops over everything dissolved, several numbers at a time where the processor can; the rest of a length goes one by one. Exponentials
/// are good to a few units of the last place either way, far below what a solve is asked for.
/// </summary>
internal static class Lanes
{
    private static int Width => Vector<double>.Count;

    /// <summary>Molalities from their logarithms, as <see cref="Activity.Exp"/> gives them.</summary>
    public static void Molalities(Span<double> m, ReadOnlySpan<double> ln)
    {
        ref var to = ref MemoryMarshal.GetReference(m);
        ref var from = ref MemoryMarshal.GetReference(ln);
        var i = 0;
        if (Vector.IsHardwareAccelerated)
        {
            Vector<double> nothing = new(Activity.LnNothing), largest = new(Iterate.LargestLnMolality);
            for (; i <= m.Length - Width; i += Width)
            {
                var v = Vector.LoadUnsafe(ref from, (nuint)i);
                var some = Vector.Exp(Vector.Min(v, largest));
                Vector.ConditionalSelect(Vector.LessThan(v, nothing), Vector<double>.Zero, some).StoreUnsafe(ref to, (nuint)i);
            }
        }
        for (; i < m.Length; i++) m[i] = Activity.Exp(ln[i]);
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
        ref var from = ref MemoryMarshal.GetReference(values);
        var sums = Vector<double>.Zero;
        var i = 0;
        for (; i <= values.Length - Width; i += Width) sums += Vector.LoadUnsafe(ref from, (nuint)i);
        var sum = Vector.Sum(sums);
        for (; i < values.Length; i++) sum += values[i];
        return sum;
    }

    /// <summary>Sum of products; the first is at least as long as the second.</summary>
    public static double Dot(ReadOnlySpan<double> first, ReadOnlySpan<double> second)
    {
        ref var a = ref MemoryMarshal.GetReference(first);
        ref var b = ref MemoryMarshal.GetReference(second);
        var sums = Vector<double>.Zero;
        var i = 0;
        for (; i <= second.Length - Width; i += Width) sums += Vector.LoadUnsafe(ref a, (nuint)i) * Vector.LoadUnsafe(ref b, (nuint)i);
        var sum = Vector.Sum(sums);
        for (; i < second.Length; i++) sum += first[i] * second[i];
        return sum;
    }

    /// <summary>What the positive products sum up to, and the negative ones with their sign turned; both of one length.</summary>
    public static (double Positive, double Negative) Sides(ReadOnlySpan<double> first, ReadOnlySpan<double> second)
    {
        ref var a = ref MemoryMarshal.GetReference(first);
        ref var b = ref MemoryMarshal.GetReference(second);
        Vector<double> above = Vector<double>.Zero, below = Vector<double>.Zero;
        var i = 0;
        for (; i <= second.Length - Width; i += Width)
        {
            var product = Vector.LoadUnsafe(ref a, (nuint)i) * Vector.LoadUnsafe(ref b, (nuint)i);
            above += Vector.Max(product, Vector<double>.Zero);
            below -= Vector.Min(product, Vector<double>.Zero);
        }
        double positive = Vector.Sum(above), negative = Vector.Sum(below);
        for (; i < second.Length; i++)
        {
            var product = first[i] * second[i];
            positive += Math.Max(product, 0);
            negative -= Math.Min(product, 0);
        }
        return (positive, negative);
    }
}
