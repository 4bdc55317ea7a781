namespace RecipeLint.Chemistry.Physical;

/// <summary>Coefficients of Laliberté 2009 for the density of one solute; used as a ratio between two temperatures.</summary>
internal sealed record TemperatureCurve(
    double C0, double C1, double C2, double C3, double C4, double MinC, double MaxC, double MassPercentUpTo)
{
    internal double Density(double massFraction, double t)
    {
        var apparent = ((C0 * massFraction) + C1) * Math.Exp(1e-6 * (t + C4) * (t + C4)) / (massFraction + C2 + (C3 * t)) / 1000;
        return 1 / (((1 - massFraction) / Water.Density(t)) + (massFraction / apparent));
    }
}
