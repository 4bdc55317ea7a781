using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Analysis.Judgement;

/// <summary>
/// How the solids of one rule are judged: one deposit gives one finding. Which rule owns a solid stands in its row of the constants.
/// </summary>
/// <param name="Name">Of the rule.</param>
/// <param name="EachSolidApart">True when each of its solids is a deposit of its own; else all of them together are one.</param>
/// <param name="IsOfSalts">True for soluble salts, which are judged by two measures and may come close without crystallising.</param>
/// <param name="Metals">Metals of which a share has to leave before the deposit counts; empty when its weight alone decides.</param>
public sealed record DepositOwner(string Name, bool EachSolidApart = false, bool IsOfSalts = false, params IReadOnlyList<string> Metals)
{
    private static readonly DepositOwner[] Special =
    [
        new(SolidOwner.PhosphateInTraceStock, Metals: [Component.Zinc, Component.Copper]),
        new(SolidOwner.IronWithPhosphate, Metals: [Component.FerrousIron, Component.FerricIron]),
        new(SolidOwner.MetalHydroxide, Metals: [
            Component.FerrousIron, Component.FerricIron, Component.Manganese, Component.Zinc, Component.Copper, Component.Nickel,
            Component.Cobalt,
        ]),
        new(SolidOwner.SaltPastItsSolubility, EachSolidApart: true, IsOfSalts: true),
        new(SolidOwner.DoubleSalt, EachSolidApart: true, IsOfSalts: true),
        new(SolidOwner.PreservativeDropsOut, EachSolidApart: true),
        new(SolidOwner.AnyOtherSolid, EachSolidApart: true),
    ];

    private static readonly Dictionary<string, DepositOwner> All = ConstantSet.Product.Solids.Select(s => s.Owner).OfType<string>()
        .Distinct(StringComparer.Ordinal)
        .ToDictionary(name => name, name => Special.FirstOrDefault(s => s.Name == name) ?? new DepositOwner(name), StringComparer.Ordinal);

    /// <summary>Every owner, by name.</summary>
    public static IReadOnlyList<DepositOwner> Listed { get; } = [.. All.Values.OrderBy(o => o.Name, StringComparer.Ordinal)];

    /// <exception cref="KeyNotFoundException">No solid has an owner of that name.</exception>
    public static DepositOwner Named(string rule) => All[rule];
}
