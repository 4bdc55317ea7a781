namespace RecipeLint.Analysis.Equilibria;

/// <summary>
/// Where a computed pH says nothing: bleach is sold with lye that keeps it, of which its label tells nothing, so that it stands at pH 11 to
/// 13 (common practice, no source) where its salts alone would be neutral.
/// </summary>
public static class PhDoubt
{
    /// <summary>What is said instead of a figure, to finish "pH ...".</summary>
    public const string NotKnown = "not known: bleach holds lye that its label does not tell";

    /// <summary>
    /// Hypochlorite from which its lye counts, mol/L: 10 mg/L of available chlorine, from which the hazard gate counts it.
    /// </summary>
    private const double LeastHypochlorite = 1.4e-4;

    private const string Hypochlorite = "inert:ClO-1";

    /// <summary>True when the pH of a solution cannot be told.</summary>
    public static bool In(SolutionMix mix) => mix.MolesPerLitre.GetValueOrDefault(Hypochlorite) >= LeastHypochlorite;

    /// <summary>True when the pH of a vessel with these additions cannot be told.</summary>
    /// <param name="litres">Volume of the contents, above 0.</param>
    public static bool In(IEnumerable<AdditionFacts> additions, double litres) =>
        additions.Sum(a => a.ComponentMoles.GetValueOrDefault(Hypochlorite)) / litres >= LeastHypochlorite;
}
