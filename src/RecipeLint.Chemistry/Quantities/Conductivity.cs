namespace RecipeLint.Chemistry.Quantities;

/// <summary>An electrical conductivity (EC).</summary>
/// <param name="MillisiemensPerCentimetre">mS/cm (the same number as dS/m), referred to 25 °C.</param>
public readonly record struct Conductivity(double MillisiemensPerCentimetre) : IComparable<Conductivity>
{
    public static bool operator <(Conductivity left, Conductivity right) =>
        left.MillisiemensPerCentimetre < right.MillisiemensPerCentimetre;

    public static bool operator >(Conductivity left, Conductivity right) =>
        left.MillisiemensPerCentimetre > right.MillisiemensPerCentimetre;

    public static bool operator <=(Conductivity left, Conductivity right) =>
        left.MillisiemensPerCentimetre <= right.MillisiemensPerCentimetre;

    public static bool operator >=(Conductivity left, Conductivity right) =>
        left.MillisiemensPerCentimetre >= right.MillisiemensPerCentimetre;

    public int CompareTo(Conductivity other) => MillisiemensPerCentimetre.CompareTo(other.MillisiemensPerCentimetre);
}
