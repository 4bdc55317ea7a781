namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>
/// The share of a component that still has its protons, as of phosphate what is not HPO4-2 or PO4-3, and how often it counts in the
/// product of totals of a salt.
/// </summary>
internal sealed class ProtonShare
{
    /// <summary>What the saturated solutions of pure salts keep at least of their protons (MKP, pH 4.2: 0.99).</summary>
    public const double KeptByPureSalts = 0.95;

    private const double Least = 1e-12;

    private readonly Stoichiometry _s;
    private readonly int _component;
    private readonly double _powers;

    /// <summary>Complexes that are the component without protons.</summary>
    private readonly int[] _lost;

    private ProtonShare(Stoichiometry s, int component, double powers, int[] lost) =>
        (_s, _component, _powers, _lost) = (s, component, powers, lost);

    /// <summary>Null where the component cannot lose protons.</summary>
    public static ProtonShare? Of(Stoichiometry s, int component, double powers) =>
        s.WithoutProtons(component) is { Length: > 0 } lost ? new ProtonShare(s, component, powers, lost) : null;

    /// <summary>ln of the share over what pure salts keep, as often as it counts: 0 where a twentieth at most is lost.</summary>
    /// <param name="molality">Of everything dissolved, mol/kg.</param>
    public double Ln(double[] molality)
    {
        var kept = Kept(molality, out _);
        return kept >= KeptByPureSalts ? 0 : _powers * Math.Log(Math.Max(kept / KeptByPureSalts, Least));
    }

    /// <summary>
    /// Adds the derivatives of <see cref="Ln"/> by ln m of everything dissolved, so many times; false where it stands still.
    /// </summary>
    public bool Slopes(double[] molality, double times, Span<double> slopes)
    {
        var kept = Kept(molality, out var sum);
        if (kept is >= KeptByPureSalts or < Least) return false;
        double ofKept = times * _powers / (kept * sum), ofAll = times * _powers / sum;
        slopes[_component] += molality[_component] * (ofKept - ofAll);
        for (var q = _s.IncidenceStart[_component]; q < _s.IncidenceStart[_component + 1]; q++)
        {
            var species = _s.ComponentCount + _s.Incidence[q];
            slopes[species] += _s.IncidenceCoefficient[q] * molality[species] * (ofKept - ofAll);
        }

        foreach (var i in _lost) slopes[_s.ComponentCount + i] -= molality[_s.ComponentCount + i] * ofKept;
        return true;
    }

    private double Kept(double[] molality, out double sum)
    {
        double lost = 0;
        foreach (var i in _lost) lost += molality[_s.ComponentCount + i];
        sum = _s.Sum(_component, molality);
        return 1 - lost / sum;
    }
}
