namespace RecipeLint.Chemistry.Quantities;

/// <summary>A molar mass.</summary>
/// <param name="GramsPerMole">Grams per mole.</param>
public readonly record struct MolarMass(double GramsPerMole) : IComparable<MolarMass>
{
    public static bool operator <(MolarMass left, MolarMass right) => left.GramsPerMole < right.GramsPerMole;

    public static bool operator >(MolarMass left, MolarMass right) => left.GramsPerMole > right.GramsPerMole;

    public static bool operator <=(MolarMass left, MolarMass right) => left.GramsPerMole <= right.GramsPerMole;

    public static bool operator >=(MolarMass left, MolarMass right) => left.GramsPerMole >= right.GramsPerMole;

    public int CompareTo(MolarMass other) => GramsPerMole.CompareTo(other.GramsPerMole);
}
