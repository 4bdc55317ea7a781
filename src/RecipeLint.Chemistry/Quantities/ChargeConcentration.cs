namespace RecipeLint.Chemistry.Quantities;

/// <summary>A concentration of ionic charge; meq/L in the trade.</summary>
/// <param name="EquivalentsPerLitre">Equivalents (moles of charge) per litre of solution.</param>
public readonly record struct ChargeConcentration(double EquivalentsPerLitre) : IComparable<ChargeConcentration>
{
    public static ChargeConcentration Zero => default;

    public static ChargeConcentration operator +(ChargeConcentration left, ChargeConcentration right) =>
        new(left.EquivalentsPerLitre + right.EquivalentsPerLitre);

    public static ChargeConcentration operator -(ChargeConcentration left, ChargeConcentration right) =>
        new(left.EquivalentsPerLitre - right.EquivalentsPerLitre);

    public static ChargeConcentration operator *(ChargeConcentration value, double factor) => new(value.EquivalentsPerLitre * factor);

    public static ChargeConcentration operator *(double factor, ChargeConcentration value) => new(value.EquivalentsPerLitre * factor);

    public static double operator /(ChargeConcentration left, ChargeConcentration right) =>
        left.EquivalentsPerLitre / right.EquivalentsPerLitre;

    public static ChargeConcentration operator /(ChargeConcentration value, double divisor) => new(value.EquivalentsPerLitre / divisor);

    public double MilliequivalentsPerLitre => EquivalentsPerLitre * 1000;

    public static bool operator <(ChargeConcentration left, ChargeConcentration right) =>
        left.EquivalentsPerLitre < right.EquivalentsPerLitre;

    public static bool operator >(ChargeConcentration left, ChargeConcentration right) =>
        left.EquivalentsPerLitre > right.EquivalentsPerLitre;

    public static bool operator <=(ChargeConcentration left, ChargeConcentration right) =>
        left.EquivalentsPerLitre <= right.EquivalentsPerLitre;

    public static bool operator >=(ChargeConcentration left, ChargeConcentration right) =>
        left.EquivalentsPerLitre >= right.EquivalentsPerLitre;

    public int CompareTo(ChargeConcentration other) => EquivalentsPerLitre.CompareTo(other.EquivalentsPerLitre);
}
