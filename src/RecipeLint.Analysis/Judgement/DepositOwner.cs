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
    /// <summary>The rule on two salts that crystallise together.</summary>
    public const string DoubleSalt = "double-salt";

    private static readonly DepositOwner[] Special =
    [
        new("phosphate-in-trace-stock", Metals: [Component.Zinc, Component.Copper]),
        new("iron-with-phosphate", Metals: [Component.FerrousIron, Component.FerricIron]),
        new("metal-hydroxide", Metals: [
            Component.FerrousIron, Component.FerricIron, Component.Manganese, Component.Zinc, Component.Copper, Component.Nickel, Component.Cobalt,
        ]),
        new("salt-past-its-solubility", EachSolidApart: true, IsOfSalts: true),
        new(DoubleSalt, EachSolidApart: true, IsOfSalts: true),
        new("preservative-drops-out", EachSolidApart: true),
        new("any-other-solid", EachSolidApart: true),
    ];

    private static readonly Dictionary<string, DepositOwner> All = ConstantSet.Product.Solids.Select(s => s.Owner).OfType<string>()
        .Distinct(StringComparer.Ordinal)
        .ToDictionary(name => name, name => Special.FirstOrDefault(s => s.Name == name) ?? new DepositOwner(name), StringComparer.Ordinal);

    /// <summary>Every owner, by name.</summary>
    public static IReadOnlyList<DepositOwner> Listed { get; } = [.. All.Values.OrderBy(o => o.Name, StringComparer.Ordinal)];

    /// <exception cref="KeyNotFoundException">No solid has an owner of that name.</exception>
    public static DepositOwner Named(string rule) => All[rule];
}
