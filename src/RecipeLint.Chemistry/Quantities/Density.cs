namespace RecipeLint.Chemistry.Quantities;

/// <summary>A density.</summary>
/// <param name="GramsPerMillilitre">Grams per millilitre (kg/L).</param>
public readonly record struct Density(double GramsPerMillilitre) : IComparable<Density>
{
    public static bool operator <(Density left, Density right) => left.GramsPerMillilitre < right.GramsPerMillilitre;

    public static bool operator >(Density left, Density right) => left.GramsPerMillilitre > right.GramsPerMillilitre;

    public static bool operator <=(Density left, Density right) => left.GramsPerMillilitre <= right.GramsPerMillilitre;

    public static bool operator >=(Density left, Density right) => left.GramsPerMillilitre >= right.GramsPerMillilitre;

    public int CompareTo(Density other) => GramsPerMillilitre.CompareTo(other.GramsPerMillilitre);
}
