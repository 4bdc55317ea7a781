using System.Runtime.InteropServices;
using SharpFuzz.Common;

namespace RecipeLint.Fuzz.Guided;

/// <summary>What an execution went through, as counts by edge.</summary>
internal interface IEdges
{
    /// <summary>Counts of the execution since <see cref="Clear"/>; they wrap round at 256.</summary>
    ReadOnlySpan<byte> Counts { get; }

    void Clear();
}

/// <summary>
/// The counters that instrumented assemblies write to. Without instrumentation all stay at nothing. An edge is a pair of places hashed to 16
/// bits, so that two may share a counter: what is found new is new, but some that is new is missed.
/// </summary>
internal sealed unsafe class Edges : IEdges
{
    private const int Size = 1 << 16;
    private readonly byte* _counters = (byte*)NativeMemory.AllocZeroed(Size);

    private Edges() => Trace.SharedMem = _counters;

    /// <summary>Made before anything instrumented runs: that writes through the pointer without looking.</summary>
    public static Edges Instance { get; } = new();

    public ReadOnlySpan<byte> Counts => new(_counters, Size);

    public void Clear()
    {
        new Span<byte>(_counters, Size).Clear();
        Trace.PrevLocation = 0;
    }
}

/// <summary>The edges met so far, each with how often an execution passed it: once, some times, often, very often.</summary>
internal sealed class SeenEdges
{
    private readonly byte[] _seen = new byte[1 << 16];

    /// <summary>Edges that some execution passed.</summary>
    public int Count { get; private set; }

    /// <summary>How many edges, or numbers of passes, the counts hold that no execution before them had.</summary>
    public int Add(ReadOnlySpan<byte> counts)
    {
        var fresh = 0;
        int next;
        for (var at = 0; at < counts.Length && (next = counts[at..].IndexOfAnyExcept((byte)0)) >= 0; at++)
        {
            at += next;
            var bit = Bucket(counts[at]);
            if ((_seen[at] & bit) == 0)
            {
                Count += _seen[at] == 0 ? 1 : 0;
                _seen[at] |= bit;
                fresh++;
            }
        }

        return fresh;
    }

    /// <summary>
    /// Coarse, because nearly every shop has another number of something: finer ones would keep nearly every input.
    /// </summary>
    private static byte Bucket(byte passes) => passes switch
    {
        1 => 1,
        < 8 => 2,
        < 64 => 4,
        _ => 8,
    };
}
