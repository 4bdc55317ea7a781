namespace RecipeLint.Chemistry.Physical;

/// <summary>λ(t, I) of one ion in S cm²/mol: Lambda25·shape(t)/shape(25) − A(t)·√I/(1 + B·√I).</summary>
internal readonly record struct IonCurve(
    string Ion, double Lambda25, double S0, double S1, double S2, double A0, double A1, double A2, double B)
{
    internal double At(double t, double rootI)
    {
        var shape = ((((S0 * t) + S1) * t) + S2) / ((((S0 * 25) + S1) * 25) + S2);
        return (Lambda25 * shape) - (((((A2 * t) + A1) * t) + A0) * rootI / (1 + (B * rootI)));
    }
}

/// <summary>An ion without a curve of its own: its limiting conductivity times what its analog keeps of its own.</summary>
internal readonly record struct IonAnalog(string Ion, double Lambda25, short Curve);

internal readonly record struct PairConductivity(string Pair, double Lambda);

internal readonly record struct ChargeConductivity(sbyte Charge, double Lambda25, short Curve);
