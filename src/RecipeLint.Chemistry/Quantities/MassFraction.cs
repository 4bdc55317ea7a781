namespace RecipeLint.Chemistry.Quantities;

/// <summary>A mass fraction (% w/w divided by 100).</summary>
/// <param name="Value">Grams per gram, 0 to 1.</param>
public readonly record struct MassFraction(double Value) : IComparable<MassFraction>
{
    public static MassFraction One => new(1);

    public double Percent => Value * 100;

    public static MassFraction FromPercent(double percent) => new(percent / 100);

    public static bool operator <(MassFraction left, MassFraction right) => left.Value < right.Value;

    public static bool operator >(MassFraction left, MassFraction right) => left.Value > right.Value;

    public static bool operator <=(MassFraction left, MassFraction right) => left.Value <= right.Value;

    public static bool operator >=(MassFraction left, MassFraction right) => left.Value >= right.Value;

    public int CompareTo(MassFraction other) => Value.CompareTo(other.Value);
}
