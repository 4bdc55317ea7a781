namespace RecipeLint.Chemistry.Quantities;

/// <summary>An amount concentration (molarity).</summary>
/// <param name="MolesPerLitre">Moles of solute per litre of solution.</param>
public readonly record struct AmountConcentration(double MolesPerLitre) : IComparable<AmountConcentration>
{
    public static AmountConcentration Zero => default;

    public static AmountConcentration operator +(AmountConcentration left, AmountConcentration right) =>
        new(left.MolesPerLitre + right.MolesPerLitre);

    public static AmountConcentration operator -(AmountConcentration left, AmountConcentration right) =>
        new(left.MolesPerLitre - right.MolesPerLitre);

    public static AmountConcentration operator *(AmountConcentration value, double factor) => new(value.MolesPerLitre * factor);

    public static AmountConcentration operator *(double factor, AmountConcentration value) => new(value.MolesPerLitre * factor);

    public static double operator /(AmountConcentration left, AmountConcentration right) => left.MolesPerLitre / right.MolesPerLitre;

    public static AmountConcentration operator /(AmountConcentration value, double divisor) => new(value.MolesPerLitre / divisor);

    public double MillimolesPerLitre => MolesPerLitre * 1000;

    public static AmountConcentration FromMillimolesPerLitre(double millimolesPerLitre) => new(millimolesPerLitre / 1000);

    public static Amount operator *(AmountConcentration concentration, Volume volume) => new(concentration.MolesPerLitre * volume.Litres);

    public static MassConcentration operator *(AmountConcentration concentration, MolarMass molarMass) =>
        new(concentration.MolesPerLitre * molarMass.GramsPerMole);

    public static bool operator <(AmountConcentration left, AmountConcentration right) => left.MolesPerLitre < right.MolesPerLitre;

    public static bool operator >(AmountConcentration left, AmountConcentration right) => left.MolesPerLitre > right.MolesPerLitre;

    public static bool operator <=(AmountConcentration left, AmountConcentration right) => left.MolesPerLitre <= right.MolesPerLitre;

    public static bool operator >=(AmountConcentration left, AmountConcentration right) => left.MolesPerLitre >= right.MolesPerLitre;

    public int CompareTo(AmountConcentration other) => MolesPerLitre.CompareTo(other.MolesPerLitre);
}
