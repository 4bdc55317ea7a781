namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>Which solids may fall out when a solution is brought to equilibrium.</summary>
public sealed record MayForm
{
    private readonly Func<Solid, bool> _chosen;

    private MayForm(Func<Solid, bool> chosen) => _chosen = chosen;

    /// <summary>None: the clear, possibly supersaturated solution.</summary>
    public static MayForm Nothing { get; } = new(_ => false);

    /// <summary>Everything that forms within minutes to days.</summary>
    public static MayForm WhatFormsReadily { get; } = Of(SolidRole.FormsReadily);

    /// <summary>Every solid of the given roles.</summary>
    public static MayForm Of(params SolidRole[] roles) => new(s => roles.Contains(s.Role));

    /// <summary>Just these, in any order: the order never matters.</summary>
    public static MayForm Only(IEnumerable<Solid> solids)
    {
        var chosen = solids.ToHashSet(ReferenceEqualityComparer.Instance);
        return new MayForm(chosen.Contains);
    }

    /// <summary>Every solid the condition holds for.</summary>
    public static MayForm Where(Func<Solid, bool> condition) => new(condition);

    /// <summary>These and others.</summary>
    public MayForm And(MayForm other) => new(s => _chosen(s) || other._chosen(s));

    /// <summary>Whether a solid may form.</summary>
    public bool Allows(Solid solid) => _chosen(solid);
}
