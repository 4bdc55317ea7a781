namespace RecipeLint.Chemistry.Quantities;

/// <summary>A length of time on the shelf.</summary>
/// <param name="Days">Days; a month counts 30.4375 days, a year 365.25.</param>
public readonly record struct Duration(double Days) : IComparable<Duration>
{
    public static bool operator <(Duration left, Duration right) => left.Days < right.Days;

    public static bool operator >(Duration left, Duration right) => left.Days > right.Days;

    public static bool operator <=(Duration left, Duration right) => left.Days <= right.Days;

    public static bool operator >=(Duration left, Duration right) => left.Days >= right.Days;

    public int CompareTo(Duration other) => Days.CompareTo(other.Days);
}
