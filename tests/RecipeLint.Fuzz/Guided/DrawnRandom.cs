namespace RecipeLint.Fuzz.Guided;

/// <summary>
/// Numbers as an input draws them: first those that were kept, each brought into the range that is asked for, then fresh ones. An input is
/// what its draws make of it, so a change of one number is a change of a value, a name or a member, and never of a byte in the middle of one.
/// </summary>
internal sealed class DrawnRandom(IReadOnlyList<int> kept, Random fresh) : Random(0)
{
    /// <summary>Inputs that draw more are remembered as far as this; what follows is the same for all of them.</summary>
    public const int MostKept = 20_000;

    private readonly List<int> _drawn = [];
    private readonly Random _rest = new(1);

    /// <summary>Every number drawn so far, from nothing upwards.</summary>
    public IReadOnlyList<int> Drawn => _drawn;

    public override int Next() => Next(0, int.MaxValue);

    public override int Next(int maxValue) => Next(0, maxValue);

    public override int Next(int minValue, int maxValue)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThan(minValue, maxValue);
        var range = (long)maxValue - minValue;
        if (_drawn.Count >= MostKept)
        {
            return _rest.Next(minValue, maxValue);
        }

        var value = range == 0 ? 0 : _drawn.Count < kept.Count ? kept[_drawn.Count] % range : fresh.NextInt64(range);
        value = Math.Min(value, int.MaxValue);
        _drawn.Add((int)value);
        return (int)(minValue + value);
    }

    public override double NextDouble() => Next(0, int.MaxValue) / (double)int.MaxValue;

    protected override double Sample() => NextDouble();

    public override void NextBytes(byte[] buffer) => NextBytes(buffer.AsSpan());

    public override void NextBytes(Span<byte> buffer)
    {
        foreach (ref var one in buffer)
        {
            one = (byte)Next(0, 256);
        }
    }

    public override long NextInt64(long minValue, long maxValue) => throw new NotSupportedException("Draw numbers of 32 bits.");
}
