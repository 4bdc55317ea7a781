namespace RecipeLint.Chemistry.Quantities;

/// <summary>A temperature on the Celsius scale.</summary>
/// <param name="Celsius">Degrees Celsius.</param>
public readonly record struct Temperature(double Celsius) : IComparable<Temperature>
{
    public static bool operator <(Temperature left, Temperature right) => left.Celsius < right.Celsius;

    public static bool operator >(Temperature left, Temperature right) => left.Celsius > right.Celsius;

    public static bool operator <=(Temperature left, Temperature right) => left.Celsius <= right.Celsius;

    public static bool operator >=(Temperature left, Temperature right) => left.Celsius >= right.Celsius;

    public int CompareTo(Temperature other) => Celsius.CompareTo(other.Celsius);
}
