namespace RecipeLint.Chemistry.Composition;

/// <summary>A chemical element by its symbol ("Ca"). Equality and order are those of the symbol.</summary>
public readonly record struct Element(string Symbol) : IComparable<Element>
{
    public static readonly Element N = new("N");
    public static readonly Element P = new("P");
    public static readonly Element K = new("K");
    public static readonly Element Ca = new("Ca");
    public static readonly Element Mg = new("Mg");
    public static readonly Element S = new("S");
    public static readonly Element Fe = new("Fe");
    public static readonly Element Mn = new("Mn");
    public static readonly Element Zn = new("Zn");
    public static readonly Element Cu = new("Cu");
    public static readonly Element B = new("B");
    public static readonly Element Mo = new("Mo");
    public static readonly Element Cl = new("Cl");
    public static readonly Element Na = new("Na");
    public static readonly Element Si = new("Si");
    public static readonly Element C = new("C");

    public static bool operator <(Element left, Element right) => left.CompareTo(right) < 0;

    public static bool operator >(Element left, Element right) => left.CompareTo(right) > 0;

    public static bool operator <=(Element left, Element right) => left.CompareTo(right) <= 0;

    public static bool operator >=(Element left, Element right) => left.CompareTo(right) >= 0;

    public int CompareTo(Element other) => string.CompareOrdinal(Symbol, other.Symbol);

    public override string ToString() => Symbol;
}
