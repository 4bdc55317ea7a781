namespace RecipeLint.Chemistry.Quantities;

/// <summary>A volume fraction (% v/v divided by 100).</summary>
/// <param name="Value">Litres per litre, 0 to 1.</param>
internal readonly record struct VolumeFraction(double Value) : IComparable<VolumeFraction>
{
    public double Percent => Value * 100;

    public static VolumeFraction FromPercent(double percent) => new(percent / 100);

    public static bool operator <(VolumeFraction left, VolumeFraction right) => left.Value < right.Value;

    public static bool operator >(VolumeFraction left, VolumeFraction right) => left.Value > right.Value;

    public static bool operator <=(VolumeFraction left, VolumeFraction right) => left.Value <= right.Value;

    public static bool operator >=(VolumeFraction left, VolumeFraction right) => left.Value >= right.Value;

    public int CompareTo(VolumeFraction other) => Value.CompareTo(other.Value);
}
