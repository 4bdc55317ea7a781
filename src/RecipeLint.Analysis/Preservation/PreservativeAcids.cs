using RecipeLint.Analysis.Equilibria;

namespace RecipeLint.Analysis.Preservation;

/// <summary>A preservative acid of a stock.</summary>
/// <param name="Name">"benzoic acid".</param>
/// <param name="TotalMilligramsPerLitre">Acid and salt together, as acid.</param>
/// <param name="WholeMilligramsPerLitre">The undissociated acid, which alone enters the cell.</param>
/// <param name="LeastMilligramsPerLitre">What holds yeasts and moulds in this stock.</param>
/// <param name="ApparentPk">pH at which half of it is undissociated in this stock.</param>
public sealed record PreservativeAcids(
    string Name, string Component, double TotalMilligramsPerLitre, double WholeMilligramsPerLitre, double LeastMilligramsPerLitre,
    double ApparentPk)
{
    /// <summary>The components that preserve; propionate is one the solver does not know.</summary>
    public static readonly string[] Components =
    [
        Chemistry.Equilibrium.Component.Benzoate, Chemistry.Equilibrium.Component.Sorbate, Propionate,
    ];

    private const string Propionate = "inert:propionate-1";

    /// <summary>pKa of propionic acid (Robinson and Stokes, recalled); the solver knows no propionate.</summary>
    private const double PropionicPk = 4.87;

    private const double PropionicGramsPerMole = 74.08;

    /// <summary>1 and above: enough of it by itself.</summary>
    public double Strength => WholeMilligramsPerLitre / LeastMilligramsPerLitre;

    /// <summary>Undissociated acid at another pH of the same stock, mg/L.</summary>
    public double WholeAt(double ph) => TotalMilligramsPerLitre / (1 + Math.Pow(10, ph - ApparentPk));

    /// <summary>The acids of a solved state, the most effective first.</summary>
    /// <param name="propionate">mol/L, which the state does not know.</param>
    /// <param name="least">mg/L of undissociated acid by name.</param>
    public static IReadOnlyList<PreservativeAcids> In(SolutionState state, double propionate, Func<string, double> least)
    {
        var acids = state.Preservatives
            .Where(p => p.Share is > 0 and < 1)
            .Select(p => new PreservativeAcids(
                p.Acid,
                p.Component,
                p.Undissociated.GramsPerLitre * 1000 / p.Share,
                p.Undissociated.GramsPerLitre * 1000,
                least(p.Acid),
                state.Ph + Math.Log10(p.Share / (1 - p.Share))))
            .ToList();
        if (propionate * PropionicGramsPerMole * 1000 is > 0 and var total)
        {
            acids.Add(new PreservativeAcids(
                "propionic acid",
                Propionate,
                total,
                total / (1 + Math.Pow(10, state.Ph - PropionicPk)),
                least("propionic acid"),
                PropionicPk));
        }

        return [.. acids.OrderByDescending(a => a.Strength).ThenBy(a => a.Name, StringComparer.Ordinal)];
    }
}
