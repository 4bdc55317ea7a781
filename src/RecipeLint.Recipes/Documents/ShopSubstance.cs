using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Documents;

/// <summary>A substance that a shop describes in a *.substances.json file.</summary>
/// <param name="Place">The whole entry.</param>
/// <param name="Substance">As the rest of the tool sees it.</param>
public sealed record ShopSubstance(Place Place, Substance Substance)
{
    /// <summary>
    /// Volume of one drop where the shop measured it; else a drop is 0.05 mL give or take 20 % (common practice, no source).
    /// </summary>
    public Located<Volume>? Drop { get; init; }

    public Tolerance? DropTolerance { get; init; }

    /// <summary>What the certificate says, as written.</summary>
    public string? Certificate { get; init; }

    /// <summary>True when the shop states that nobody knows the composition (food colours).</summary>
    public bool UnknownComposition { get; init; }
}

/// <summary>One *.substances.json file.</summary>
/// <param name="File">Relative to the workspace root, forward slashes.</param>
public sealed record SubstanceFile(string File, IReadOnlyList<ShopSubstance> Substances)
{
    /// <summary>Ids and aliases of entries that could not be read (already reported), so that their use is not reported as well.</summary>
    public IReadOnlySet<string> UnreadNames { get; init; } = new HashSet<string>();
}
