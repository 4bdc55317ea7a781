namespace RecipeLint.Chemistry.Quantities;

/// <summary>A mass.</summary>
/// <param name="Grams">Grams.</param>
public readonly record struct Mass(double Grams) : IComparable<Mass>
{
    public static Mass Zero => default;

    public static Mass operator +(Mass left, Mass right) => new(left.Grams + right.Grams);

    public static Mass operator -(Mass left, Mass right) => new(left.Grams - right.Grams);

    public static Mass operator *(Mass value, double factor) => new(value.Grams * factor);

    public static Mass operator *(double factor, Mass value) => new(value.Grams * factor);

    public static double operator /(Mass left, Mass right) => left.Grams / right.Grams;

    public static Mass operator /(Mass value, double divisor) => new(value.Grams / divisor);

    public double Milligrams => Grams * 1000;

    public static Mass FromMilligrams(double milligrams) => new(milligrams / 1000);

    public static MassConcentration operator /(Mass mass, Volume volume) => new(mass.Grams / volume.Litres);

    public static Amount operator /(Mass mass, MolarMass molarMass) => new(mass.Grams / molarMass.GramsPerMole);

    public static Volume operator /(Mass mass, Density density) => Volume.FromMillilitres(mass.Grams / density.GramsPerMillilitre);

    public static Mass operator *(Mass mass, MassFraction fraction) => new(mass.Grams * fraction.Value);

    public static bool operator <(Mass left, Mass right) => left.Grams < right.Grams;

    public static bool operator >(Mass left, Mass right) => left.Grams > right.Grams;

    public static bool operator <=(Mass left, Mass right) => left.Grams <= right.Grams;

    public static bool operator >=(Mass left, Mass right) => left.Grams >= right.Grams;

    public int CompareTo(Mass other) => Grams.CompareTo(other.Grams);
}
