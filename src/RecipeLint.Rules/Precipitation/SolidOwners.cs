using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Rules.Precipitation;

/// <summary>A solid a rule may speak of.</summary>
/// <param name="Solid">Name in the constant set.</param>
/// <param name="Rule">The one rule that owns it.</param>
/// <param name="Called">What a grower calls it.</param>
/// <param name="Spread">
/// How far the published constants lie apart, on the scale of the saturation index of the formula as written; 0 when the activity model is
/// the larger doubt.
/// </param>
/// <param name="StartsAt">Saturation index it usually needs to start without seeds; 0 when it starts on its own.</param>
internal sealed record OwnedSolid(string Solid, string Rule, string Called, double Spread, double StartsAt);

/// <summary>
/// Which rule owns which solid: one deposit gives one finding. Read from the rows of the solids, where one that forms readily cannot be
/// without an owner. Solids the constants mark as excluded or as too weak have none; of those that form slowly only some give a remark
/// about storage: the others ripen out of a solid that is judged already, or indicate deposits in stocks known to stay clear.
/// </summary>
internal static class SolidOwners
{
    public const string Generic = "any-other-solid";

    /// <summary>The solids that have an owner, each once.</summary>
    public static IReadOnlyList<OwnedSolid> Listed { get; } = [.. ConstantSet.Product.Solids.Select(Of).OfType<OwnedSolid>()];

    /// <summary>Who owns a solid; null when no finding may rest on it.</summary>
    public static OwnedSolid? Of(Solid solid) =>
        solid.Owner is { } rule ? new OwnedSolid(solid.Name, rule, solid.Called, solid.Spread, solid.StartsInStorage) : null;
}
