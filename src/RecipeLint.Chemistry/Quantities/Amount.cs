namespace RecipeLint.Chemistry.Quantities;

/// <summary>An amount of substance.</summary>
/// <param name="Moles">Moles.</param>
public readonly record struct Amount(double Moles) : IComparable<Amount>
{
    public static Amount Zero => default;

    public static Amount operator +(Amount left, Amount right) => new(left.Moles + right.Moles);

    public static Amount operator -(Amount left, Amount right) => new(left.Moles - right.Moles);

    public static Amount operator *(Amount value, double factor) => new(value.Moles * factor);

    public static Amount operator *(double factor, Amount value) => new(value.Moles * factor);

    public static double operator /(Amount left, Amount right) => left.Moles / right.Moles;

    public static Amount operator /(Amount value, double divisor) => new(value.Moles / divisor);

    public static AmountConcentration operator /(Amount amount, Volume volume) => new(amount.Moles / volume.Litres);

    public static Mass operator *(Amount amount, MolarMass molarMass) => new(amount.Moles * molarMass.GramsPerMole);

    public static bool operator <(Amount left, Amount right) => left.Moles < right.Moles;

    public static bool operator >(Amount left, Amount right) => left.Moles > right.Moles;

    public static bool operator <=(Amount left, Amount right) => left.Moles <= right.Moles;

    public static bool operator >=(Amount left, Amount right) => left.Moles >= right.Moles;

    public int CompareTo(Amount other) => Moles.CompareTo(other.Moles);
}
