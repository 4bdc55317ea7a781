using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>
/// Loops over everything dissolved, several numbers at a time. Every processor and every build comes to the same digits: sums run in four
/// lanes whatever the width of the machine's vectors, and nothing is rounded once where another machine rounds twice. Two at a time, which
/// every processor has, because only such code can be compiled ahead; exponentials alone take as many as this one can, and are compiled
/// whole at their first call: in the runtime's first, quick code a short run spent more time here than a long one.
/// </summary>
internal static class Lanes
{
    /// <summary>Bits of the fraction of a double.</summary>
    private const int MantissaBits = 52;

    /// <summary>What the exponent of a double is stored with.</summary>
    private const long Bias = 1023;

    /// <summary>1.5 times two to the power of the fraction's bits: a sum with it has its whole number in the low ones.</summary>
    private const double Shifter = 6755399441055744.0;

    /// <summary>1 / ln 2, and ln 2 in two parts of which the first has so few digits that its multiples are exact.</summary>
    private const double OverLn2 = 1.4426950408889634, Ln2High = 6.93147180369123816490e-01, Ln2Low = 1.90821492927058770002e-10;

    private const int Two = 2, Four = 4;

    /// <summary>Molalities from their logarithms: none below <see cref="Activity.LnNothing"/>, and bounded above.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static void Molalities(Span<double> m, ReadOnlySpan<double> ln)
    {
        ref var to = ref MemoryMarshal.GetReference(m);
        ref var from = ref MemoryMarshal.GetReference(ln);
        var i = 0;
        for (; i <= m.Length - Vector<double>.Count; i += Vector<double>.Count)
            Molality(Vector.LoadUnsafe(ref from, (nuint)i)).StoreUnsafe(ref to, (nuint)i);
        for (; i < m.Length; i++) m[i] = Molality(new Vector<double>(ln[i]))[0];
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector<double> Molality(Vector<double> ln)
    {
        var some = Exp(Vector.Min(ln, new Vector<double>(Iterate.LargestLnMolality)));
        return Vector.ConditionalSelect(Vector.LessThan(ln, new Vector<double>(Activity.LnNothing)), Vector<double>.Zero, some);
    }

    /// <summary>
    /// e to the power of each, between -700 and 700: by the power of two nearest to it and the series of what is left, which is under
    /// ln 2 / 2; the term of the fourteenth power is under 4e-18 of the sum. The library's has another last digit on another machine.
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector<double> Exp(Vector<double> x)
    {
        var shifted = (x * OverLn2) + new Vector<double>(Shifter);
        var powers = shifted - new Vector<double>(Shifter);
        var rest = x - (powers * Ln2High) - (powers * Ln2Low);

        // 1/13! to 1/0!.
        var sum = new Vector<double>(1 / 6227020800.0);
        sum = (sum * rest) + new Vector<double>(1 / 479001600.0);
        sum = (sum * rest) + new Vector<double>(1 / 39916800.0);
        sum = (sum * rest) + new Vector<double>(1 / 3628800.0);
        sum = (sum * rest) + new Vector<double>(1 / 362880.0);
        sum = (sum * rest) + new Vector<double>(1 / 40320.0);
        sum = (sum * rest) + new Vector<double>(1 / 5040.0);
        sum = (sum * rest) + new Vector<double>(1 / 720.0);
        sum = (sum * rest) + new Vector<double>(1 / 120.0);
        sum = (sum * rest) + new Vector<double>(1 / 24.0);
        sum = (sum * rest) + new Vector<double>(1 / 6.0);
        sum = (sum * rest) + new Vector<double>(1 / 2.0);
        sum = (sum * rest) + Vector<double>.One;
        sum = (sum * rest) + Vector<double>.One;

        // The whole number stands in the low bits of what was shifted; as an exponent it is the power of two.
        var two = Vector.AsVectorDouble(Vector.ShiftLeft(Vector.AsVectorInt64(shifted) + new Vector<long>(Bias), MantissaBits));
        return sum * two;
    }

    /// <summary>target = factor * source; both of one length.</summary>
    public static void Scale(Span<double> target, ReadOnlySpan<double> source, double factor)
    {
        ref var to = ref MemoryMarshal.GetReference(target);
        ref var from = ref MemoryMarshal.GetReference(source);
        var i = 0;
        for (; i <= target.Length - Two; i += Two) (Vector128.LoadUnsafe(ref from, (nuint)i) * factor).StoreUnsafe(ref to, (nuint)i);
        for (; i < target.Length; i++) target[i] = factor * source[i];
    }

    /// <summary>Keeps every value between minus and plus a bound.</summary>
    public static void Clamp(Span<double> values, double bound)
    {
        ref var to = ref MemoryMarshal.GetReference(values);
        Vector128<double> least = Vector128.Create(-bound), most = Vector128.Create(bound);
        var i = 0;
        for (; i <= values.Length - Two; i += Two)
            Vector128.Min(Vector128.Max(Vector128.LoadUnsafe(ref to, (nuint)i), least), most).StoreUnsafe(ref to, (nuint)i);
        for (; i < values.Length; i++) values[i] = Math.Clamp(values[i], -bound, bound);
    }

    public static double Sum(ReadOnlySpan<double> values)
    {
        ref var from = ref MemoryMarshal.GetReference(values);
        Vector128<double> first = default, second = default;
        var i = 0;
        for (; i <= values.Length - Four; i += Four)
        {
            first += Vector128.LoadUnsafe(ref from, (nuint)i);
            second += Vector128.LoadUnsafe(ref from, (nuint)i + 2);
        }

        var sum = Together(first, second);
        for (; i < values.Length; i++) sum += values[i];
        return sum;
    }

    /// <summary>Sum of products; the first is at least as long as the second.</summary>
    public static double Dot(ReadOnlySpan<double> first, ReadOnlySpan<double> second)
    {
        ref var a = ref MemoryMarshal.GetReference(first);
        ref var b = ref MemoryMarshal.GetReference(second);
        Vector128<double> some = default, others = default;
        var i = 0;
        for (; i <= second.Length - Four; i += Four)
        {
            some += Vector128.LoadUnsafe(ref a, (nuint)i) * Vector128.LoadUnsafe(ref b, (nuint)i);
            others += Vector128.LoadUnsafe(ref a, (nuint)i + 2) * Vector128.LoadUnsafe(ref b, (nuint)i + 2);
        }

        var sum = Together(some, others);
        for (; i < second.Length; i++) sum += first[i] * second[i];
        return sum;
    }

    /// <summary>What the positive products sum up to, and the negative ones with their sign turned; both of one length.</summary>
    public static (double Positive, double Negative) Sides(ReadOnlySpan<double> first, ReadOnlySpan<double> second)
    {
        ref var a = ref MemoryMarshal.GetReference(first);
        ref var b = ref MemoryMarshal.GetReference(second);
        Vector128<double> above = default, above2 = default, below = default, below2 = default;
        var i = 0;
        for (; i <= second.Length - Four; i += Four)
        {
            var product = Vector128.LoadUnsafe(ref a, (nuint)i) * Vector128.LoadUnsafe(ref b, (nuint)i);
            var product2 = Vector128.LoadUnsafe(ref a, (nuint)i + 2) * Vector128.LoadUnsafe(ref b, (nuint)i + 2);
            above += Vector128.Max(product, Vector128<double>.Zero);
            above2 += Vector128.Max(product2, Vector128<double>.Zero);
            below -= Vector128.Min(product, Vector128<double>.Zero);
            below2 -= Vector128.Min(product2, Vector128<double>.Zero);
        }

        double positive = Together(above, above2), negative = Together(below, below2);
        for (; i < second.Length; i++)
        {
            var product = first[i] * second[i];
            positive += Math.Max(product, 0);
            negative -= Math.Min(product, 0);
        }
        return (positive, negative);
    }

    private static double Together(Vector128<double> first, Vector128<double> second)
    {
        var lanes = first + second;
        return lanes[0] + lanes[1];
    }
}
