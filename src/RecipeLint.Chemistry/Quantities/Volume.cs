namespace RecipeLint.Chemistry.Quantities;

/// <summary>A volume.</summary>
/// <param name="Litres">Litres.</param>
public readonly record struct Volume(double Litres) : IComparable<Volume>
{
    public static Volume Zero => default;

    public static Volume operator +(Volume left, Volume right) => new(left.Litres + right.Litres);

    public static Volume operator -(Volume left, Volume right) => new(left.Litres - right.Litres);

    public static Volume operator *(Volume value, double factor) => new(value.Litres * factor);

    public static Volume operator *(double factor, Volume value) => new(value.Litres * factor);

    public static double operator /(Volume left, Volume right) => left.Litres / right.Litres;

    public static Volume operator /(Volume value, double divisor) => new(value.Litres / divisor);

    public double Millilitres => Litres * 1000;

    public static Volume FromMillilitres(double millilitres) => new(millilitres / 1000);

    public static Mass operator *(Volume volume, Density density) => new(volume.Millilitres * density.GramsPerMillilitre);

    public static bool operator <(Volume left, Volume right) => left.Litres < right.Litres;

    public static bool operator >(Volume left, Volume right) => left.Litres > right.Litres;

    public static bool operator <=(Volume left, Volume right) => left.Litres <= right.Litres;

    public static bool operator >=(Volume left, Volume right) => left.Litres >= right.Litres;

    public int CompareTo(Volume other) => Litres.CompareTo(other.Litres);
}
