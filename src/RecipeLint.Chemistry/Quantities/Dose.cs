namespace RecipeLint.Chemistry.Quantities;

/// <summary>How much of a stock goes into the final solution: 1:100 is 10 mL of stock for each litre.</summary>
/// <param name="LitresPerLitre">Litres of stock per litre of final solution.</param>
public readonly record struct Dose(double LitresPerLitre) : IComparable<Dose>
{
    public double MillilitresPerLitre => LitresPerLitre * 1000;

    /// <summary>The N of 1:N.</summary>
    public double Dilution => 1 / LitresPerLitre;

    public static Dose OneIn(double dilution) => new(1 / dilution);

    public static Dose FromMillilitresPerLitre(double millilitresPerLitre) => new(millilitresPerLitre / 1000);

    public static Volume operator *(Dose dose, Volume final) => new(dose.LitresPerLitre * final.Litres);

    public static bool operator <(Dose left, Dose right) => left.LitresPerLitre < right.LitresPerLitre;

    public static bool operator >(Dose left, Dose right) => left.LitresPerLitre > right.LitresPerLitre;

    public static bool operator <=(Dose left, Dose right) => left.LitresPerLitre <= right.LitresPerLitre;

    public static bool operator >=(Dose left, Dose right) => left.LitresPerLitre >= right.LitresPerLitre;

    public int CompareTo(Dose other) => LitresPerLitre.CompareTo(other.LitresPerLitre);
}
