using System.Collections.Immutable;
using RecipeLint.Analysis.Equilibria;

namespace RecipeLint.Analysis.Judgement;

/// <summary>From where on a deposit counts: the options of the rule that speaks of it, with the shop's values.</summary>
/// <param name="Visible">g/L from which it counts.</param>
/// <param name="NearLimit">Error of a saturation index below ionic strength 3 mol/kg, log10 units.</param>
/// <param name="MetalShare">Share of a trace metal that has to leave with it, 0 to 1; used where its owner names metals.</param>
public sealed record OwnerLimits(
    double Visible = SolidDeposit.VisibleGramsPerLitre, double NearLimit = OwnerLimits.ModelError, double MetalShare = OwnerLimits.OfMetal)
{
    /// <summary>Of the activity model, log10 units; the source stands with the option 'nearLimit' of the rules.</summary>
    internal const double ModelError = 0.2;

    /// <summary>As a fraction; the source stands with the option 'metalShare' of the rules.</summary>
    private const double OfMetal = 0.1;
}

/// <summary>The limits of every owner of solids, as one shop has set them.</summary>
public sealed class DepositLimits : IEquatable<DepositLimits>
{
    private static readonly OwnerLimits Usual = new();

    private readonly ImmutableDictionary<string, OwnerLimits> _byOwner;

    private DepositLimits(ImmutableDictionary<string, OwnerLimits> byOwner) => _byOwner = byOwner;

    /// <summary>Those of a shop that has set nothing.</summary>
    public static DepositLimits Default { get; } = new(ImmutableDictionary.Create<string, OwnerLimits>(StringComparer.Ordinal));

    /// <summary>The limits of the rule that owns a solid.</summary>
    public OwnerLimits Of(string owner) => _byOwner.GetValueOrDefault(owner, Usual);

    public bool Equals(DepositLimits? other) =>
        other is not null && _byOwner.Count == other._byOwner.Count
        && _byOwner.All(o => other._byOwner.TryGetValue(o.Key, out var limits) && limits == o.Value);

    public override bool Equals(object? obj) => Equals(obj as DepositLimits);

    public override int GetHashCode() => _byOwner.Count;

    public DepositLimits With(string owner, OwnerLimits limits) => new(_byOwner.SetItem(owner, limits));
}
