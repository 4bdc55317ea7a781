namespace RecipeLint.Chemistry.Quantities;

/// <summary>A temperature on the Celsius scale.</summary>
/// <param name="Celsius">Degrees Celsius.</param>
public readonly record struct Temperature(double Celsius) : IComparable<Temperature>
{
    /// <summary>The triple point convention: 0 °C is 273.15 K exactly.</summary>
    public double Kelvin => Celsius + 273.15;

    public static Temperature FromFahrenheit(double fahrenheit) => new((fahrenheit - 32) / 1.8);

    public static bool operator <(Temperature left, Temperature right) => left.Celsius < right.Celsius;

    public static bool operator >(Temperature left, Temperature right) => left.Celsius > right.Celsius;

    public static bool operator <=(Temperature left, Temperature right) => left.Celsius <= right.Celsius;

    public static bool operator >=(Temperature left, Temperature right) => left.Celsius >= right.Celsius;

    public int CompareTo(Temperature other) => Celsius.CompareTo(other.Celsius);
}
