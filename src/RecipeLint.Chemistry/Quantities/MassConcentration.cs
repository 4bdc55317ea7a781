namespace RecipeLint.Chemistry.Quantities;

/// <summary>A mass concentration; mg/L is what growers call ppm.</summary>
/// <param name="GramsPerLitre">Grams of solute per litre of solution.</param>
public readonly record struct MassConcentration(double GramsPerLitre) : IComparable<MassConcentration>
{
    public static MassConcentration Zero => default;

    public static MassConcentration operator +(MassConcentration left, MassConcentration right) =>
        new(left.GramsPerLitre + right.GramsPerLitre);

    public static MassConcentration operator -(MassConcentration left, MassConcentration right) =>
        new(left.GramsPerLitre - right.GramsPerLitre);

    public static MassConcentration operator *(MassConcentration value, double factor) => new(value.GramsPerLitre * factor);

    public static MassConcentration operator *(double factor, MassConcentration value) => new(value.GramsPerLitre * factor);

    public static double operator /(MassConcentration left, MassConcentration right) => left.GramsPerLitre / right.GramsPerLitre;

    public static MassConcentration operator /(MassConcentration value, double divisor) => new(value.GramsPerLitre / divisor);

    public double MilligramsPerLitre => GramsPerLitre * 1000;

    public static Mass operator *(MassConcentration concentration, Volume volume) => new(concentration.GramsPerLitre * volume.Litres);

    public static AmountConcentration operator /(MassConcentration concentration, MolarMass molarMass) =>
        new(concentration.GramsPerLitre / molarMass.GramsPerMole);

    public static bool operator <(MassConcentration left, MassConcentration right) => left.GramsPerLitre < right.GramsPerLitre;

    public static bool operator >(MassConcentration left, MassConcentration right) => left.GramsPerLitre > right.GramsPerLitre;

    public static bool operator <=(MassConcentration left, MassConcentration right) => left.GramsPerLitre <= right.GramsPerLitre;

    public static bool operator >=(MassConcentration left, MassConcentration right) => left.GramsPerLitre >= right.GramsPerLitre;

    public int CompareTo(MassConcentration other) => GramsPerLitre.CompareTo(other.GramsPerLitre);
}
